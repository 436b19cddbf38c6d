"""Where the picture and the blocks beside it go on the room they have."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist, inf, log

from kerfolio.drawing.callout import Block
from kerfolio.drawing.extent import apart, middle_of, padded
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.geometry.contour import Point
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.view import View

RIM = 8.5
"""Room around a picture for balloons, mm."""
_GAP = 2.5
_PER_CROSSED, _PER_FAR = 1.0, 0.05
"""What a mm of a line over the picture, and a mm of its length, cost in per cent of the scale."""


@dataclass(frozen=True, slots=True)
class PagePlan:
    """The picture's seat and the room for it, and the boxes of the blocks in order."""

    seat: PaperSeat
    boxes: tuple[Box, ...]


def page_seat(view: View, box: Box, room: Box) -> PaperSeat:
    """Return the seat of a picture by itself in a room, with what its balloons take round it."""
    return fitted(view, box, padded(room, -RIM))


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
    the paper, mm. The blocks stand in free corners, in a column beside the picture or a row below
    it, whichever leaves it largest; the first block is kept near the spot ``near`` of the view's
    plane, and a line from there to it crosses little.
    """
    if not blocks:
        return PagePlan(page_seat(view, box, room), ())
    drawn = Occupied(Flat(each.outer, ()) for each in areas)
    corners = _in_corners(view, box, room, blocks, drawn, near)
    plans = [
        *([corners] if corners else []),
        *_in_rows(view, box, room, blocks, near),
        *(_in_column(view, box, room, blocks, right=right) for right in (True, False)),
    ]
    return min(plans, key=lambda each: _cost(each, drawn, near))


def _cost(plan: PagePlan, drawn: Occupied, near: Point | None) -> float:
    """Return what is lost in scale, and by a line to the first block that crosses the picture.

    ``drawn`` lies in the view's plane. A plan without room for the picture costs the most.
    """
    if plan.seat.scale <= 0:
        return inf
    lost = -100.0 * log(plan.seat.scale)
    if near is None:
        return round(lost, 3)
    block = _back(middle_of(plan.boxes[0]), plan.seat)
    (over,) = drawn.along([(near, block)])
    reach = _PER_CROSSED * over + _PER_FAR * dist(near, block)
    return round(lost + plan.seat.scale * reach, 3)


def _back(spot: Point, seat: PaperSeat) -> Point:
    """Return the point of the view's plane that lies at a spot on paper."""
    return (spot[0] - seat.x) / seat.scale, (spot[1] - seat.y) / seat.scale


def _in_corners(
    view: View,
    box: Box,
    room: Box,
    blocks: Sequence[Block],
    drawn: Occupied,
    near: Point | None,
) -> PagePlan | None:
    seat = page_seat(view, box, room)
    spot = seat.flat(near) if near else (room[2], room[3])
    boxes: list[Box] = []
    for block in blocks:
        free = [
            corner
            for corner in _corners(room, block)
            if drawn.free(_box_back(padded(corner, _GAP), seat))
            and all(apart(padded(corner, _GAP), one) for one in boxes)
        ]
        if not free:
            return None
        boxes.append(min(free, key=lambda corner: round(dist(spot, middle_of(corner)), 3)))
    return PagePlan(seat, tuple(boxes))


def _box_back(box: Box, seat: PaperSeat) -> Box:
    return (*_back(box[:2], seat), *_back(box[2:], seat))


def _beside(view: View, box: Box, room: Box, blocks: Sequence[Block], *, right: bool) -> PaperSeat:
    wide = max(block.width for block in blocks) + _GAP
    left, end = (room[0], room[2] - wide) if right else (room[0] + wide, room[2])
    return page_seat(view, box, (left, room[1], end, room[3]))


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


def _in_rows(
    view: View, box: Box, room: Box, blocks: Sequence[Block], near: Point | None
) -> Iterator[PagePlan]:
    """Yield plans with the blocks in a row below the picture and above it, if they go in one."""
    high = max(block.height for block in blocks) + _GAP
    row = math.fsum(block.width + _GAP for block in blocks) - _GAP
    if row > room[2] - room[0]:
        return
    for above in (False, True):
        left, bottom, right, top = room
        inner = (left, bottom, right, top - high) if above else (left, bottom + high, right, top)
        seat = page_seat(view, box, inner)
        wanted = seat.flat(near)[0] - blocks[0].width / 2 if near else left
        start = min(max(left, wanted), right - row)
        low, up = seat.flat((box[0], box[1]))[1] - RIM, seat.flat((box[2], box[3]))[1] + RIM
        edge = up if above else low
        boxes = []
        for block in blocks:
            foot = edge if above else edge - block.height
            boxes.append((start, foot, start + block.width, foot + block.height))
            start += block.width + _GAP
        yield PagePlan(seat, tuple(boxes))


def _corners(room: Box, block: Block) -> list[Box]:
    left, bottom, right, top = room
    wide, high = block.width, block.height
    return [
        (right - wide, top - high, right, top),
        (left, top - high, left + wide, top),
        (right - wide, bottom, right, bottom + high),
        (left, bottom, left + wide, bottom + high),
    ]
