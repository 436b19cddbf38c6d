"""Work that is turned between two pictures: as it lay, and an arrow about the axis of the turn."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from math import atan2, cos, hypot, sin

from kerfolio.assembly.extent import box_around
from kerfolio.assembly.lying import Shown
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.callout import Block
from kerfolio.drawing.extent import extent
from kerfolio.drawing.lettering import CAPITAL, text_width
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.drawing.scene import HOME, Scene
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.rigid import HERE, Rigid, Vector, added, cross, dot, length, scaled
from kerfolio.geometry.view import View

_ROOM = (30.0, 24.0)
"""How large the work as it lay is drawn, mm."""
_TEXT = 3.0
_GAP = 2.2
_LEVEL = 0.7
"""An axis with less than this share upwards (cosine) is level."""
_QUARTER = math.radians(135)
"""Turns of less than this are quarter turns."""
_ARC, _STEPS = math.radians(150), 24
"""How far an arrow runs round, and its stretches."""
_WIDE, _HALO = 0.9, 1.9
_HEAD = (3.4, 1.9)
"""How long the arrow's head is, and half as wide, mm."""
_SHARE = 0.62
"""The radius of the arrow's way, of the work's longest reach across the axis."""


def turn_block(shown: Shown, look: View, reader: Reader) -> Block:
    """Return what stands as it lay in the picture before, with the turn as an arrow and in words.

    The step must be turned.
    """
    assert shown.lay is not None, "only work that is turned"
    turn = shown.turn.after(shown.lay.inverse)
    back = turn.inverse
    labels = {*shown.step.standing}
    pieces = tuple(
        replace(each, pose=back.after(each.pose))
        for each in shown.assembled.pieces
        if each.label in labels
    )
    scene = Scene(shown.assembled, pieces, dict.fromkeys(labels, HOME), frozenset())
    solids = scene.solids()
    seat = fitted(look, extent_of(solids, look), (0.0, 0.0, *_ROOM))
    found = seen(solids, look, apart=APART / seat.scale)
    low, high = box_around(pieces)
    middle = scaled(added(low, high), 0.5)
    arrow = _arrow(turn, middle, _reach(turn, scene, middle), seat)
    drawn: tuple[Item, ...] = (*solid_strokes(found, seat, ()), *arrow)
    words = say(reader, f"drawing-turn-{_called(turn, shown.turn)}")
    left, bottom, right, top = extent(drawn)
    width = max(right - left, text_width(words, _TEXT))
    below = _TEXT * CAPITAL + _GAP

    def items(at: Point) -> tuple[Item, ...]:
        move = Seat(x=at[0] + (width - (right - left)) / 2 - left, y=at[1] + below - bottom)
        text = Label(text=words, at=(at[0] + width / 2, at[1]), height=_TEXT, anchor=Anchor.MIDDLE)
        return (*(_moved(each, move) for each in drawn), text)

    return Block(width, top - bottom + below, items)


def _moved(item: Item, seat: Seat) -> Item:
    assert isinstance(item, Stroke), "strokes alone"
    holes = tuple(map(seat.contour, item.holes))
    return replace(item, contour=seat.contour(item.contour), holes=holes)


def turn_of(turn: Rigid) -> tuple[Vector, float]:
    """Return the axis (unit) and the angle (radians, 0 to pi) of a rotation.

    The axis is the eigenvector of 1, read off the matrix (Shepperd's quaternion, 1978).
    """
    (xx, yx, zx), (xy, yy, zy), (xz, yz, zz) = turn.x, turn.y, turn.z
    squares = (1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz)
    rows = (
        (squares[0], zy - yz, xz - zx, yx - xy),
        (zy - yz, squares[1], xy + yx, xz + zx),
        (xz - zx, xy + yx, squares[2], yz + zy),
        (yx - xy, xz + zx, yz + zy, squares[3]),
    )
    w, x, y, z = rows[max(range(4), key=lambda row: (squares[row], -row))]
    size = hypot(x, y, z)
    if size == 0:
        return (0.0, 0.0, 1.0), 0.0
    angle = 2 * atan2(size, abs(w))
    return scaled((x, y, z), (1.0 if w >= 0 else -1.0) / size), angle


def _called(turn: Rigid, now: Rigid) -> str:
    axis, angle = turn_of(turn)
    if abs(axis[2]) > _LEVEL:
        return "round"
    if angle > _QUARTER:
        return "over"
    return "up" if now == HERE or turn_of(now)[1] < 1e-6 else "side"


def _reach(turn: Rigid, scene: Scene, middle: Vector) -> float:
    axis, _ = turn_of(turn)
    reaches = []
    for at in scene.corners():
        gap = added(at, scaled(middle, -1.0))
        reaches.append(length(added(gap, scaled(axis, -dot(gap, axis)))))
    return max(reaches)


def _arrow(turn: Rigid, middle: Vector, reach: float, seat: PaperSeat) -> Sequence[Stroke]:
    """Return an arc about the axis of the turn, over the top or round the front, with its head."""
    axis, angle = turn_of(turn)
    view = seat.view
    level = abs(axis[2]) < _LEVEL
    upward = (0.0, 0.0, 1.0) if level else view.to_viewer
    raw = added(upward, scaled(axis, -dot(upward, axis)))
    top = scaled(raw, 1 / length(raw))
    ahead = cross(axis, top)
    if angle > _QUARTER and dot(ahead, view.to_viewer) < 0:
        ahead = scaled(ahead, -1.0)  # half a turn is the same either way: towards the reader
    spots = []
    for step in range(_STEPS + 1):
        at = _ARC * (step / _STEPS - 0.5)
        way = added(scaled(top, cos(at)), scaled(ahead, sin(at)))
        spots.append(seat.spot(added(middle, scaled(way, _SHARE * reach))))
    return _bent(spots)


def _bent(spots: Sequence[Point]) -> Sequence[Stroke]:
    (bx, by), (tx, ty) = spots[-4], spots[-1]
    size = hypot(tx - bx, ty - by) or 1.0
    ux, uy = (tx - bx) / size, (ty - by) / size
    long, half = _HEAD
    neck = (tx - long * ux, ty - long * uy)
    shaft = [each for each in spots if (each[0] - neck[0]) * ux + (each[1] - neck[1]) * uy <= 0]
    path = open_path(*shaft, neck)
    head = Contour(
        (
            (tx, ty, 0.0),
            (neck[0] - half * uy, neck[1] + half * ux, 0.0),
            (neck[0] + half * uy, neck[1] - half * ux, 0.0),
        )
    )
    return (
        Stroke(contour=path, ink=Ink.PAPER, width=_HALO),
        Stroke(contour=head, ink=Ink.PAPER, width=0.5, fill=Ink.ACCENT),
        Stroke(contour=path, ink=Ink.ACCENT, width=_WIDE),
    )
