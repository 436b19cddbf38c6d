"""What two panels share in space, described for a person: how much, where, how deep."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import manifold3d
import shapely

from kerfolio.geometry.panel_overlap import SQUARE, overlap_volumes, shared_solid
from kerfolio.geometry.panel_solid import PanelSolid, Posed, moved, slab
from kerfolio.geometry.rigid import Rigid, Vector, cross, length, scaled

_SKIN = 1e-4
"""So much, mm, is taken off all round one panel before what it shares is described: what only
touches, or is rounding, goes; what stays is measured this much too small."""

_HERE: Vector = (0.0, 0.0, 0.0)
_NORMAL: Vector = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Shared:
    """What two panels share.

    ``volume`` in mm3. ``at`` is the middle of its largest piece and ``box`` (least, greatest)
    reaches round all of it, in the world, mm. ``depth`` is how far one is in the other: the volume
    divided by the contact area, which is the greatest area it shows when seen along the line in
    which the panels cross, along the first's normal, or square to both. ``length`` is how much of
    that line it takes up, mm; panels that lie parallel cross in no line: there it is the longer
    extent in the plane.
    """

    volume: float
    at: Vector
    box: tuple[Vector, Vector]
    depth: float
    length: float


def shared(one: Posed, other: Posed) -> Shared | None:
    """Return what two panels share, None when they at most touch."""
    pieces = shared_solid(Posed(_skinned(one.solid), one.pose), other).decompose()
    if not pieces:
        return None
    line = cross(_NORMAL, one.pose.inverse.vector(other.pose.z))
    crosses = length(line) > SQUARE
    views = _views(scaled(line, 1 / length(line)) if crosses else (1.0, 0.0, 0.0))
    volume = float(overlap_volumes([(one, other)])[0])
    whole = manifold3d.Manifold.batch_boolean(pieces, manifold3d.OpType.Add)
    boxes = [moved(each, views[0].inverse).bounding_box() for each in pieces]
    largest = boxes[max(range(len(pieces)), key=lambda number: pieces[number].volume())]
    middle = [(low + high) / 2 for low, high in zip(largest[:3], largest[3:], strict=True)]
    around = moved(whole, one.pose).bounding_box()
    takes = [_covered((box[axis], box[axis + 3]) for box in boxes) for axis in (0, 1)]
    return Shared(
        volume=volume,
        at=one.pose.after(views[0]).point((middle[0], middle[1], middle[2])),
        box=(around[:3], around[3:]),
        depth=volume / max(_shown(whole, each) for each in views),
        length=takes[0] if crosses else max(takes),
    )


def _skinned(solid: PanelSolid) -> PanelSolid:
    """Return a panel with a thin skin taken off; its slabs still stand on each other."""
    slabs = [
        slab(each.low + (_SKIN if number == 0 else -_SKIN), each.high - _SKIN, area)
        for number, each in enumerate(solid.slabs)
        if not (area := shapely.buffer(each.area, -_SKIN, join_style="mitre")).is_empty
    ]
    return PanelSolid(tuple(slabs))


def _views(line: Vector) -> Sequence[Rigid]:
    """Return three frames in the first panel's, each looking along another of three axes.

    The first has its x along the line and looks along the normal.
    """
    across = cross(_NORMAL, line)
    return (
        Rigid(_HERE, line, across, _NORMAL),
        Rigid(_HERE, across, _NORMAL, line),
        Rigid(_HERE, _NORMAL, line, across),
    )


def _shown(solid: Any, view: Rigid) -> float:
    return float(moved(solid, view.inverse).project().area())


def _covered(stretches: Iterable[tuple[float, float]]) -> float:
    """Return the length that stretches of a line cover together."""
    total, reach = 0.0, -float("inf")
    for low, high in sorted(stretches):
        total += max(0.0, high - max(low, reach))
        reach = max(reach, high)
    return total
