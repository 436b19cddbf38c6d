"""Plans put together, and their orders, for the pictures of steps."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from kerfolio.assembly.assembled import Assembled, BuildOrder, PosedPiece
from kerfolio.assembly.fastened import posed_fastenings
from kerfolio.assembly.fitting import Fitting, fittings_of
from kerfolio.assembly.lying import Shown, shown_steps
from kerfolio.assembly.order import verify
from kerfolio.assembly.poses import put_together
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.view import View
from tests.assembly.hand_made import crate, stool
from tests.assembly.scenes import NAMES, settled

SAMPLE = NAMES
ORDERS = {
    "stool": [["side.left", "rail"], ["side.right"], ["seat"]],
    "crate": [["low.1", "low.2"], ["high.1", "high.2", "high.3"]],
}
HAND_MADE = {"stool": stool, "crate": crate}

LINES = {Ink.INK, Ink.NEW_LINE}
WIDTHS = {0.35, 0.18, 0.25, 0.13}
NEW = {Ink.NEW_LIGHT, Ink.NEW_MID, Ink.NEW_DARK}
STANDING = {Ink.FACE_LIGHT, Ink.FACE_MID, Ink.FACE_DARK}


@cache
def built(name: str) -> tuple[Assembled, BuildOrder]:
    """A sample plan as the program puts it together, or one made by hand."""
    if name in HAND_MADE:
        whole, steps = _with_places(HAND_MADE[name]()), ORDERS[name]
    else:
        plan = settled(name)
        together = put_together(plan)
        assert together is not None
        whole = together.assembled
        steps = [[each.name for each in step.add] for step in plan.plan.steps]
    order, blocked = verify(whole, steps)
    assert not blocked
    return whole, order


def _with_places(whole: Assembled) -> Assembled:
    """Put each joint where the boxes of its pieces overlap."""
    joints = []
    for joint in whole.joints:
        one, other = _box(whole.piece(joint.a)), _box(whole.piece(joint.b))
        x, y, z = ((max(a, c) + min(b, d)) / 2 for (a, b), (c, d) in zip(one, other, strict=True))
        frame = joint.frame
        joints.append(replace(joint, frame=Rigid((x, y, z), frame.x, frame.y, frame.z)))
    return replace(whole, joints=tuple(joints))


def _box(piece: PosedPiece) -> list[tuple[float, float]]:
    corners = [
        piece.pose.point((x, y, z))
        for x, y in piece.panel.shape.outer
        for z in (0.0, piece.panel.thickness)
    ]
    return [(min(axis), max(axis)) for axis in zip(*corners, strict=True)]


@cache
def shown(name: str) -> tuple[Shown, ...]:
    """The steps as they are shown: those of the samples as their plans say that they lie."""
    whole, order = built(name)
    if name in HAND_MADE:
        return shown_steps(whole, order, ())
    return shown_steps(whole, order, settled(name).plan.steps, fittings(name))


@cache
def fittings(name: str) -> tuple[Fitting, ...]:
    """The hardware of a sample's fastenings, at home."""
    whole, order = built(name)
    return fittings_of(posed_fastenings(settled(name), whole), order)


@cache
def views(name: str) -> tuple[View, ...]:
    return chosen_views(shown(name))


def edges_of(drawing: Drawing) -> list[Stroke]:
    """The strokes that are edges of pieces."""
    return [
        each
        for each in drawing.items
        if isinstance(each, Stroke)
        and each.ink in LINES
        and each.width in WIDTHS
        and each.fill is None
        and not each.dash
    ]


def areas_of(drawing: Drawing, inks: set[Ink]) -> list[Stroke]:
    return [each for each in drawing.items if isinstance(each, Stroke) and each.fill in inks]


def path_of(contour: Contour) -> list[tuple[float, float]]:
    ring = points(contour)
    return [*ring, ring[0]] if contour.closed else ring
