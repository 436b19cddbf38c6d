"""Hardware in the picture of a scene: what is new drawn out of its place, what is there at home."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import Fitting, Shape
from kerfolio.drawing.hardware_solid import hardware_solid
from kerfolio.drawing.scene import Scene, ShownFitting
from kerfolio.geometry.facing import Posed, PosedPanel, PosedPlated, PosedTurned
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import HERE, Rigid, Vector, added, scaled
from kerfolio.geometry.turned import Turned
from kerfolio.geometry.view import View
from kerfolio.model.stock import HardwareStock

_ROUND = ((0.5, 6), (1.2, 8), (4.0, 16), (float("inf"), 32))
"""Up to which radius on paper, mm, how many facets a turn has."""
_THREAD, _SOCKET = 0.4, 0.5
"""Lines of a thread nearer together than this on paper, mm, and sockets of less radius, are left
out: they would fill to black."""

_PINHOLE = 0.25
"""Holes of less radius than this on paper, mm, are left out of brackets."""

_SPECK = 0.5
"""What was there before and has less radius than this on paper, mm, is left out."""


AT_HOME = -1
"""Instead of a step: none is new, all of it is in its place."""


def mounted(
    scene: Scene, fittings: Sequence[Fitting], step: int | None, look: View, scale: float
) -> Scene:
    """Return a scene with its hardware, that of the step drawn out; ``scale`` is that on paper.

    Where no step is given all of it is drawn out. Of what was there before only what may be seen
    is shown: heads and nuts, if they are no specks.
    """
    found = (
        shown
        for each in fittings
        for shown in _shown(scene, each, step in (None, each.step), look, scale)
    )
    return replace(scene, fittings=tuple(found))


def _shown(
    scene: Scene, fitting: Fitting, new: bool, look: View, scale: float
) -> Iterator[ShownFitting]:
    away = scene.away.get(fitting.follows, HERE.origin)
    if fitting.shape is not None:
        yield _shaped(fitting.shape, fitting, away, new, look, scale)
        return
    solid = plain_solid(fitting, scale)
    if solid is None:
        return
    if not new and (fitting.role is Role.WASHER or solid.radius * scale < _SPECK):
        return
    if not new:
        head = (
            solid
            if fitting.role is not Role.SHANK
            else Turned(solid.frusta[:1], solid.well, facets=solid.facets)
        )
        yield ShownFitting(PosedTurned(head, fitting.frame.moved(away)), new=False)
        return
    pose = fitting.frame.moved(fitting.drawn_out(away, look.to_viewer))
    guide = _guide(solid, pose.origin, added(fitting.mouth, away), fitting)
    yield ShownFitting(PosedTurned(solid, pose), new=True, guide=guide)


def _shaped(
    shape: Shape,
    fitting: Fitting,
    away: Vector,
    new: bool,
    look: View,
    scale: float,
) -> ShownFitting:
    """Return what has a shape of its own: at home once it is there, else drawn out with a line to
    where it lies.
    """
    if not new:
        return ShownFitting(_posed(shape, fitting.frame.moved(away), scale), new=False)
    pose = fitting.frame.moved(fitting.drawn_out(away, look.to_viewer))
    guide = pose.origin, added(fitting.mouth, away)
    return ShownFitting(_posed(shape, pose, scale), new=True, guide=guide)


def _posed(shape: Shape, pose: Rigid, scale: float) -> Posed:
    if isinstance(shape, Panel):
        return PosedPanel(shape, pose)
    if isinstance(shape, Turned):
        return PosedTurned(replace(shape, facets=_facets(shape.radius * scale)), pose)
    radius = max((each.radius for each in shape.holes), default=0.0) * scale
    holes = shape.holes if radius > _PINHOLE else ()
    return PosedPlated(replace(shape, holes=holes, facets=_facets(radius)), pose)


def _guide(solid: Turned, origin: Vector, mouth: Vector, fitting: Fitting) -> tuple[Vector, Vector]:
    """Return the line from the end of a piece that goes in first to where it enters."""
    if fitting.role is not Role.SHANK:
        return origin, mouth
    return added(origin, scaled(fitting.frame.z, solid.high)), mouth


def _facets(radius: float) -> int:
    """Return how many facets a turn has whose radius on paper is that, mm."""
    return next(count for most, count in _ROUND if radius <= most)


def is_drawn(fitting: Fitting) -> bool:
    """Tell whether enough is known of a fitting to draw it."""
    return fitting.shape is not None or plain_solid(fitting, 1.0) is not None


def plain_solid(fitting: Fitting, scale: float) -> Turned | None:
    """Return the solid of a fitting with as much of it as paper shows at a scale."""
    whole = hardware_solid(fitting.item) if isinstance(fitting.item, HardwareStock) else None
    if whole is None:
        return None
    solid = replace(whole, facets=_facets(whole.radius * scale))
    if solid.thread and solid.thread.pitch * scale < _THREAD:
        solid = replace(solid, thread=None)
    if solid.well and solid.well.sides and solid.well.radius * scale < _SOCKET:
        solid = replace(solid, well=None)
    return solid
