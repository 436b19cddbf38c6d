"""Where the picture and the blocks beside it go on the room they have."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from kerfolio.drawing.callout import Block
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.geometry.contour import Point
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.view import View

RIM = 8.5
"""Room around a picture for balloons, mm."""
_GAP = 2.5


@dataclass(frozen=True, slots=True)
class PagePlan:
    """The picture's seat and the room for it, and the boxes of the blocks in order."""

    seat: PaperSeat
    boxes: tuple[Box, ...]


def page_plan(
    view: View,
    box: Box,
    room: Box,
    blocks: Sequence[Block],
    areas: Sequence[Flat],
    near: Point | None = None,
) -> PagePlan:
    """Return where the picture and the blocks beside it go.

    ``box`` is the picture's extent and ``areas`` what it covers, in the view's plane; ``room`` is
    the paper, mm. The picture is as large as it can be with the blocks in free corners; where
    these are not free, in a column beside it or a row below it, whichever leaves it larger. The
    first block is kept near the spot ``near`` of the view's plane.
    """
    if not blocks:
        return PagePlan(fitted(view, box, _inner(room)), ())
    right = near is None or near[0] >= (box[0] + box[2]) / 2
    return (
        _in_corners(view, box, room, blocks, areas, near)
        or _in_row(view, box, room, blocks, _beside(view, box, room, blocks, right=right))
        or _in_column(view, box, room, blocks, right=right)
    )


def _in_corners(
    view: View,
    box: Box,
    room: Box,
    blocks: Sequence[Block],
    areas: Sequence[Flat],
    near: Point | None,
) -> PagePlan | None:
    seat = fitted(view, box, _inner(room))
    drawn = Occupied(Flat(tuple(seat.flat(spot) for spot in each.outer)) for each in areas)
    spot = seat.flat(near) if near else (room[2], room[3])
    boxes: list[Box] = []
    for block in blocks:
        free = [
            corner
            for corner in _corners(room, block)
            if drawn.free(_grown(corner)) and all(_apart(corner, one) for one in boxes)
        ]
        if not free:
            return None
        boxes.append(min(free, key=lambda corner: round(_from(spot, corner), 3)))
    return PagePlan(seat, tuple(boxes))


def _beside(view: View, box: Box, room: Box, blocks: Sequence[Block], *, right: bool) -> PaperSeat:
    wide = max(block.width for block in blocks) + _GAP
    left, end = (room[0], room[2] - wide) if right else (room[0] + wide, room[2])
    return fitted(view, box, _inner((left, room[1], end, room[3])))


def _in_column(
    view: View, box: Box, room: Box, blocks: Sequence[Block], *, right: bool
) -> PagePlan:
    seat = _beside(view, box, room, blocks, right=right)
    high = math.fsum(block.height + _GAP for block in blocks) - _GAP
    middle = (seat.flat((box[0], box[1]))[1] + seat.flat((box[2], box[3]))[1]) / 2
    top = min(room[3], max(room[1] + high, middle + high / 2))
    boxes: list[Box] = []
    for block in blocks:
        left = room[2] - block.width if right else room[0]
        boxes.append((left, top - block.height, left + block.width, top))
        top -= block.height + _GAP
    return PagePlan(seat, tuple(boxes))


def _in_row(
    view: View, box: Box, room: Box, blocks: Sequence[Block], beside: PaperSeat
) -> PagePlan | None:
    """Return a plan with the blocks below the picture, None if it is larger ``beside`` them."""
    high = max(block.height for block in blocks) + _GAP
    row = math.fsum(block.width + _GAP for block in blocks) - _GAP
    seat = fitted(view, box, _inner((room[0], room[1] + high, room[2], room[3])))
    if seat.scale <= beside.scale or row > room[2] - room[0]:
        return None
    top = seat.flat((box[0], box[1]))[1] - RIM
    left, boxes = room[0], []
    for block in blocks:
        boxes.append((left, top - block.height, left + block.width, top))
        left += block.width + _GAP
    return PagePlan(seat, tuple(boxes))


def _inner(room: Box) -> Box:
    return room[0] + RIM, room[1] + RIM, room[2] - RIM, room[3] - RIM


def _corners(room: Box, block: Block) -> list[Box]:
    left, bottom, right, top = room
    wide, high = block.width, block.height
    return [
        (right - wide, top - high, right, top),
        (left, top - high, left + wide, top),
        (right - wide, bottom, right, bottom + high),
        (left, bottom, left + wide, bottom + high),
    ]


def _from(spot: Point, box: Box) -> float:
    return hypot(spot[0] - (box[0] + box[2]) / 2, spot[1] - (box[1] + box[3]) / 2)


def _grown(box: Box) -> Box:
    return box[0] - _GAP, box[1] - _GAP, box[2] + _GAP, box[3] + _GAP


def _apart(one: Box, other: Box) -> bool:
    a = _grown(one)
    return a[2] <= other[0] or other[2] <= a[0] or a[3] <= other[1] or other[3] <= a[1]
