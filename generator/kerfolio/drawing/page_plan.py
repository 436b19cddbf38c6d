"""Where the picture and the blocks beside it go on the room they have."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist, inf, log

from kerfolio.drawing.balloons import crossing
from kerfolio.drawing.callout import Block
from kerfolio.drawing.extent import apart, contains, middle_of, padded, union
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.geometry.contour import Point
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.view import View

RIM = 8.5
"""Room around a picture for balloons, mm."""
_GAP, _STRIDE = 2.5, 2.0
_PER_CROSSED, _PER_FAR, _CROSSING = 1.0, 0.05, 60.0
"""What a mm of a line over the picture, a mm of its length, and its crossing another, cost in per
cent of the scale."""

Nears = Sequence[Sequence[Point]]
"""For each of the first blocks the spots of the view's plane that a line may lead from."""


@dataclass(frozen=True, slots=True)
class PagePlan:
    """The picture's seat, the boxes of the blocks in order, and to which spots lines lead."""

    seat: PaperSeat
    boxes: tuple[Box, ...]
    spots: tuple[int, ...] = ()

    def fits(self, room: Box) -> bool:
        """Tell whether all blocks stand within the room."""
        return all(contains(padded(room, 1e-6), each) for each in self.boxes)


def page_seat(view: View, box: Box, room: Box) -> PaperSeat:
    """Return the seat of a picture by itself in a room, with what its balloons take round it."""
    return fitted(view, box, padded(room, -RIM))


def page_plan(
    view: View,
    box: Box,
    room: Box,
    blocks: Sequence[Block],
    areas: Sequence[Flat],
    nears: Nears = (),
) -> PagePlan:
    """Return where the picture and the blocks beside it go.

    ``box`` is the picture's extent and ``areas`` what it covers, in the view's plane; ``room`` is
    the paper, mm. The blocks stand in free corners, in a column beside the picture or a row below
    it, whichever leaves it largest; the first blocks are kept near the spots of ``nears``, and
    lines from there to them cross little of the picture and not one another.
    """
    if not blocks:
        return PagePlan(page_seat(view, box, room), ())
    drawn = Occupied(Flat(each.outer, ()) for each in areas)
    corners = _in_corners(view, box, room, blocks, drawn, nears)
    plans = [
        *([corners] if corners else []),
        *_in_rows(view, box, room, blocks, nears),
        *(
            _in_column(view, box, room, blocks, order, right=right)
            for right in (True, False)
            for order in _orders(blocks, nears)
        ),
        *_on_both_sides(view, box, room, blocks),
    ]
    fitting = [each for each in plans if each.fits(room)]
    led = [_led(each, drawn, nears) for each in fitting or plans]
    return min(led, key=lambda each: each[0])[1]


def drawn_in(
    plan: PagePlan, box: Box, room: Box, areas: Sequence[Flat], taken: Sequence[Box]
) -> PagePlan:
    """Return a plan whose blocks come in to the picture where that leaves less of the page empty.

    ``box`` and ``areas`` are those of ``page_plan``; ``taken`` is what else lies over the picture,
    on paper. A block goes where the box round the picture and all blocks is smallest, and no
    further than it must for that.
    """
    drawn, seat = Occupied(Flat(each.outer, ()) for each in areas), plan.seat
    picture = (*seat.flat(box[:2]), *seat.flat(box[2:]))
    boxes = [*plan.boxes]
    for number, old in enumerate(boxes):
        others = [each for place, each in enumerate(boxes) if place != number]
        clear = [*taken, *others]
        boxes[number] = next(
            spot
            for spot in _nearing(old, union((picture, *others)), room)
            if spot == old
            or (
                all(apart(padded(spot, _GAP), each) for each in clear)
                and drawn.free(_box_back(padded(spot, _GAP), seat))
            )
        )
    return replace(plan, boxes=tuple(boxes))


def _nearing(old: Box, rest: Box, room: Box) -> list[Box]:
    """Return where a block may go in a room, what leaves the smallest box with the rest first."""
    wide, high = old[2] - old[0], old[3] - old[1]
    across = range(int((room[2] - room[0] - wide) / _STRIDE) + 1)
    up = range(int((room[3] - room[1] - high) / _STRIDE) + 1)
    corners = ((room[0] + _STRIDE * i, room[1] + _STRIDE * j) for i in across for j in up)
    spots = [old, *((x, y, x + wide, y + high) for x, y in corners)]
    order = {spot: (round(_area(union((rest, spot)))), round(dist(spot, old), 3)) for spot in spots}
    return sorted(order, key=lambda spot: order[spot])


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _orders(blocks: Sequence[Block], nears: Nears) -> list[list[int]]:
    """Return the orders that blocks may have in a column: those with lines may change places."""
    count, rest = len(nears), [*range(len(nears), len(blocks))]
    return [[*range(count), *rest], *([[*range(count)][::-1] + rest] if count > 1 else [])]


def _led(plan: PagePlan, drawn: Occupied, nears: Nears) -> tuple[float, PagePlan]:
    """Return what is lost in scale and by lines over the picture, and the plan with its spots.

    ``drawn`` lies in the view's plane. A plan without room for the picture costs the most.
    """
    if plan.seat.scale <= 0:
        return inf, plan
    lost, lines, spots = -100.0 * log(plan.seat.scale), list[tuple[Point, Point]](), list[int]()
    for box, near in zip(plan.boxes, nears, strict=False):
        block = _back(middle_of(box), plan.seat)
        ways = [(spot, block) for spot in near]
        costs = [
            plan.seat.scale * (_PER_CROSSED * over + _PER_FAR * dist(*way))
            + _CROSSING * sum(crossing(way, other) for other in lines)
            for way, over in zip(ways, drawn.along(ways), strict=True)
        ]
        best = min(range(len(ways)), key=lambda each: round(costs[each], 3))
        spots.append(best)
        lines.append(ways[best])
        lost += costs[best]
    return round(lost, 3), replace(plan, spots=tuple(spots))


def _back(spot: Point, seat: PaperSeat) -> Point:
    """Return the point of the view's plane that lies at a spot on paper."""
    return (spot[0] - seat.x) / seat.scale, (spot[1] - seat.y) / seat.scale


def _in_corners(
    view: View,
    box: Box,
    room: Box,
    blocks: Sequence[Block],
    drawn: Occupied,
    nears: Nears,
) -> PagePlan | None:
    seat = page_seat(view, box, room)
    boxes: list[Box] = []
    for number, block in enumerate(blocks):
        near = nears[number] if number < len(nears) else nears[0] if nears else ()
        spot = seat.flat(near[0]) if near else (room[2], room[3])
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
    view: View, box: Box, room: Box, blocks: Sequence[Block], order: Sequence[int], *, right: bool
) -> PagePlan:
    seat = _beside(view, box, room, blocks, right=right)
    boxes = _stacked(box, room, blocks, order, seat, right=right)
    return PagePlan(seat, tuple(boxes[number] for number in range(len(blocks))))


def _stacked(
    box: Box,
    room: Box,
    blocks: Sequence[Block],
    order: Sequence[int],
    seat: PaperSeat,
    *,
    right: bool,
) -> dict[int, Box]:
    """Return the boxes of some blocks, one under another at a side of the room."""
    high = math.fsum(blocks[number].height + _GAP for number in order) - _GAP
    middle = (seat.flat((box[0], box[1]))[1] + seat.flat((box[2], box[3]))[1]) / 2
    top = min(room[3], max(room[1] + high, middle + high / 2))
    boxes: dict[int, Box] = {}
    for number in order:
        block = blocks[number]
        left = room[2] - block.width if right else room[0]
        boxes[number] = (left, top - block.height, left + block.width, top)
        top -= block.height + _GAP
    return boxes


def _on_both_sides(view: View, box: Box, room: Box, blocks: Sequence[Block]) -> Iterator[PagePlan]:
    """Yield plans with one of the first two blocks at either side, the rest under the one."""
    if len(blocks) < 2:
        return
    for one in (0, 1):
        rest = [number for number in range(len(blocks)) if number != one]
        if math.fsum(blocks[number].height + _GAP for number in rest) - _GAP > room[3] - room[1]:
            continue
        wide = max(blocks[number].width for number in rest)
        for right in (True, False):
            left, end = blocks[one].width + _GAP, wide + _GAP
            if not right:
                left, end = end, left
            seat = page_seat(view, box, (room[0] + left, room[1], room[2] - end, room[3]))
            boxes = _stacked(box, room, blocks, rest, seat, right=right)
            boxes |= _stacked(box, room, blocks, [one], seat, right=not right)
            yield PagePlan(seat, tuple(boxes[number] for number in range(len(blocks))))


def _in_rows(
    view: View, box: Box, room: Box, blocks: Sequence[Block], nears: Nears
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
        wanted = seat.flat(nears[0][0])[0] - blocks[0].width / 2 if nears else left
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
