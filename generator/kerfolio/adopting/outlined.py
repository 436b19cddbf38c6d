"""The body of a part as it is stated, and how its places move while sheets grow."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import dist

from kerfolio.adopting.corners import Corner, upright
from kerfolio.adopting.edge_key import EdgeKey, edge_key, is_same_edge
from kerfolio.adopting.finger_rows import FingerRow
from kerfolio.adopting.following import Following, moved_corners
from kerfolio.adopting.linear import Linear
from kerfolio.adopting.recognised import across
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.turnings import Turning, turnings_of
from kerfolio.geometry.boolean import union
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds

_NEAR = 0.2
_SAME = 0.02
_MIDDLE = 0.5

Shift = tuple[Fraction, Fraction]
_STILL: Shift = (Fraction(0), Fraction(0))


@dataclass(frozen=True, eq=False)
class Outlined:
    """A part's body in its own frame, and by sheet what moves there (``Following``)."""

    part: PartPlan
    number: int
    follows: Mapping[str, Following]

    @cached_property
    def body(self) -> Contour:
        """The outline without tabs, notches and fingers."""
        found = self.part.made.body
        boxes = [_row_box(row) for row in self.part.made.fingers]
        return union(Region(found), boxes).outer if boxes else found

    @cached_property
    def turnings(self) -> tuple[Turning, ...] | None:
        """What lies between its straight edges, None where it has to be drawn."""
        return turnings_of(self.body)

    @cached_property
    def corners(self) -> tuple[Corner, ...] | None:
        """The corners of the body, by its turnings; None where it is no polygon."""
        found = [each.corner for each in self.turnings or ()]
        known = tuple(each for each in found if each is not None)
        return known if len(known) == len(found) > 2 else None

    @cached_property
    def outs(self) -> tuple[Point, ...]:
        """The way out at each straight edge of the body, the first from turning 0 to turning 1."""
        turnings = self.turnings or ()
        found = []
        for index, turning in enumerate(turnings):
            after = turnings[(index + 1) % len(turnings)].start
            size = dist(turning.end, after)
            dx, dy = (after[0] - turning.end[0]) / size, (after[1] - turning.end[1]) / size
            found.append((dy + 0.0, 0.0 - dx))
        return tuple(found)

    @cached_property
    def moves(self) -> Mapping[str, tuple[Shift, ...]]:
        """How each turning moves with each sheet, before the part is moved back to its 0,0."""
        made: dict[str, tuple[Shift, ...]] = {}
        for sheet, found in self.follows.items():
            edges = {key: by for (part, key), by in found.edges.items() if part == self.number}
            turnings = self.turnings or ()
            if not edges or not turnings:
                made[sheet] = (_STILL,) * len(turnings)
                continue
            by = [
                _moved(edges, out, turning.end)
                for out, turning in zip(self.outs, turnings, strict=True)
            ]
            ends = list(moved_corners(self.outs, by))
            made[sheet] = self._kept_near(tuple(ends[-1:] + ends[:-1]), by)
        return made

    @property
    def is_moved(self) -> bool:
        """Tell whether any of it moves with a sheet."""
        return any(move != _STILL for moves in self.moves.values() for move in moves)

    def _kept_near(self, moves: tuple[Shift, ...], by: Sequence[Fraction]) -> tuple[Shift, ...]:
        """Return moves in which turnings keep their distance from the nearer of two sides.

        Not where an edge would change its direction.
        """
        sides = _side_moves(self._spots, moves)
        near = tuple(
            move if by[i - 1] or by[i] else sides.of(spot)
            for i, (spot, move) in enumerate(zip(self._spots, moves, strict=True))
        )
        for index, (x, y) in enumerate(near):
            other = near[(index + 1) % len(near)]
            ox, oy = self.outs[index]
            if abs(ox * float(other[0] - x) + oy * float(other[1] - y)) > 1e-9:
                return moves
        return near

    @cached_property
    def _sides_of(self) -> Mapping[str, _SideMoves]:
        return {sheet: _side_moves(self._spots, moves) for sheet, moves in self.moves.items()}

    @cached_property
    def _spots(self) -> tuple[Point, ...]:
        """Where its turnings lie: a corner where its sides meet."""
        return tuple(each.corner.at if each.corner else each.start for each in self.turnings or ())

    def free(self, at: Point) -> tuple[Linear, Linear]:
        """Return a point that no joint holds: it stays as far from the nearer of two sides."""
        found = {sheet: sides.of(at) for sheet, sides in self._sides_of.items()}
        return (
            self.x(at[0], {sheet: shift[0] for sheet, shift in found.items()}),
            self.y(at[1], {sheet: shift[1] for sheet, shift in found.items()}),
        )

    @cached_property
    def origin(self) -> Point:
        """Where the part's 0,0 lies in the frame that it was recognised in."""
        box = bounds(self.body)
        return box.x0, box.y0

    @cached_property
    def origin_moves(self) -> Mapping[str, Shift]:
        """How the 0,0 moves with each sheet."""
        spots = self._spots
        if not spots:
            return dict.fromkeys(self.follows, _STILL)
        left = min(range(len(spots)), key=lambda i: spots[i][0])
        low = min(range(len(spots)), key=lambda i: spots[i][1])
        return {sheet: (moves[left][0], moves[low][1]) for sheet, moves in self.moves.items()}

    def x(self, value: float, moves: Mapping[str, Fraction] | None = None) -> Linear:
        """Return an x of the frame as the part states it; ``moves`` is how it moves by sheet."""
        return self._place(0, value, moves)

    def y(self, value: float, moves: Mapping[str, Fraction] | None = None) -> Linear:
        """Return a y of the frame as the part states it."""
        return self._place(1, value, moves)

    def _place(self, axis: int, value: float, moves: Mapping[str, Fraction] | None) -> Linear:
        per = {
            sheet: (moves or {}).get(sheet, Fraction(0)) - shift[axis]
            for sheet, shift in self.origin_moves.items()
        }
        return Linear(drawn=value - self.origin[axis], per=per)

    def slot_spot(self, at: Point, slot: int) -> tuple[Linear, Linear]:
        """Return where a slot lies that no tab meets: as a wedge's does, else as what is free."""
        held = any((self.number, slot) in found.slots for found in self.follows.values())
        return self.spot(at, slot) if held else self.free(at)

    def spot(self, at: Point, slot: int | None = None) -> tuple[Linear, Linear]:
        """Return a point as the part states it; that of a slot moves as the slot does."""
        shifts = {
            sheet: found.slots.get((self.number, slot), _STILL) if slot is not None else _STILL
            for sheet, found in self.follows.items()
        }
        return (
            self.x(at[0], {sheet: shift[0] for sheet, shift in shifts.items()}),
            self.y(at[1], {sheet: shift[1] for sheet, shift in shifts.items()}),
        )

    def corner(self, index: int) -> tuple[Linear, Linear]:
        """Return a corner of the body as the part states it."""
        return self.at_turning(index, self._spots[index])

    def at_turning(self, index: int, at: Point) -> tuple[Linear, Linear]:
        """Return a point as the part states it that moves as a turning does."""
        moves = {sheet: found[index] for sheet, found in self.moves.items()}
        return (
            self.x(at[0], {sheet: shift[0] for sheet, shift in moves.items()}),
            self.y(at[1], {sheet: shift[1] for sheet, shift in moves.items()}),
        )

    def edge_at(
        self, out: Point, at: Point
    ) -> tuple[tuple[Linear, Linear], tuple[Linear, Linear]] | None:
        """Return where the straight edge that a point lies on begins and ends."""
        turnings = self.turnings or ()
        for index, turning in enumerate(turnings):
            there = self.outs[index]
            if there[0] * out[0] + there[1] * out[1] < 1 - 1e-4:
                continue
            following = (index + 1) % len(turnings)
            after = turnings[following]
            start = turning.corner.at if turning.corner else turning.end
            end = after.corner.at if after.corner else after.start
            level = (at[0] - start[0]) * there[0] + (at[1] - start[1]) * there[1]
            size = dist(start, end)
            along = ((end[0] - start[0]) / size, (end[1] - start[1]) / size)
            run = (at[0] - start[0]) * along[0] + (at[1] - start[1]) * along[1]
            if abs(level) <= _NEAR and -_NEAR <= run <= size + _NEAR:
                return self.at_turning(index, start), self.at_turning(following, end)
        return None

    @property
    def box(self) -> tuple[Linear, Linear, float] | None:
        """The sides and the rounding of a body that is a rectangle."""
        corners = self.corners
        found = upright(corners) if corners else None
        if found is None or corners is None:
            return None
        right = max(range(4), key=lambda i: corners[i].at[0])
        top = max(range(4), key=lambda i: corners[i].at[1])
        return self.corner(right)[0], self.corner(top)[1], found.radius

    def sides(self) -> Mapping[str, float]:
        """Return how far out each side of the body's box lies, in the frame."""
        box = bounds(self.body)
        return {"left": box.x0, "right": box.x1, "bottom": box.y0, "top": box.y1}


@dataclass(frozen=True, slots=True)
class _SideMoves:
    """Where the sides of a body's box lie along each axis, and how each moves along it."""

    low: Point
    high: Point
    low_moves: Shift
    high_moves: Shift

    def of(self, at: Point) -> Shift:
        """Return how a point moves: with the nearer side, in the middle half as far as both."""
        moves = []
        for axis in (0, 1):
            below, above = at[axis] - self.low[axis], self.high[axis] - at[axis]
            low, high = self.low_moves[axis], self.high_moves[axis]
            if abs(below - above) <= _MIDDLE:
                moves.append((low + high) / 2)
            else:
                moves.append(low if below < above else high)
        return moves[0], moves[1]


def _side_moves(corners: Sequence[Point], moves: Sequence[Shift]) -> _SideMoves:
    if not corners:
        return _SideMoves((0.0, 0.0), (0.0, 0.0), _STILL, _STILL)
    spots = [[corner[axis] for corner in corners] for axis in (0, 1)]
    low = [each.index(min(each)) for each in spots]
    high = [each.index(max(each)) for each in spots]
    return _SideMoves(
        (corners[low[0]][0], corners[low[1]][1]),
        (corners[high[0]][0], corners[high[1]][1]),
        (moves[low[0]][0], moves[low[1]][1]),
        (moves[high[0]][0], moves[high[1]][1]),
    )


def is_drawn(part: PartPlan) -> bool:
    """Tell whether a part's body has to be drawn, so that no edge of it can follow a sheet."""
    return Outlined(part, 0, {}).turnings is None


def _row_box(row: FingerRow) -> Contour:
    return across(row.middle, row.out, dist(row.start, row.end), -row.depth - _SAME, 0.0)


def _moved(edges: Mapping[EdgeKey, Fraction], out: Point, at: Point) -> Fraction:
    """Return how far the edge moves that a point lies on."""
    mine = edge_key(out, at)
    for key, by in edges.items():
        if is_same_edge(key, mine):
            return by
    return Fraction(0)
