"""Balloons: the marks of pieces in circles, each on a line from the piece it names.

A piece that somebody holds has a hand in one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, dist, hypot, radians, sin

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.cheapest import cheapest
from kerfolio.drawing.extent import middle_of
from kerfolio.drawing.hand import HAND, RADIUS, hand_strokes
from kerfolio.drawing.lettering import CAPITAL, Box, text_width
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.shapes import circle

Line = tuple[Point, Point]

_LETTER = 3.3
_LEAST_RADIUS = 3.1
_RIM = 0.9
"""Air between a mark and its circle, mm."""
_AIR = 0.8
"""Air between a circle and what is not to be touched, mm."""
_APART, _ASIDE = 2.4, 1.3
"""How far other balloons and other leaders keep from a balloon's centre, in radii."""
_RADII = tuple(2.4 + 1.2 * step for step in range(9))
_ANGLES = tuple(15.0 * step for step in range(24))
_GRID = 5.0
_PER_OVER, _PER_STRANGE, _PER_GUIDE = 25.0, 1.6, 3.0
"""What a balloon's place costs, in mm of its leader: a radius over the picture, a mm of the leader
over other pieces, a thin line that it crosses."""
_PLAIN = 3.0
"""A leader that runs over other pieces for less than this, mm, is not tried from another spot."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A mark and the spot on its piece at which its leader ends.

    ``others`` are further spots of the piece, tried where the leader from the first would run over
    other pieces or through what it must not touch; ``own`` is what is seen of the piece on paper.
    """

    mark: str
    anchor: Point
    others: tuple[Point, ...] = ()
    own: tuple[Flat, ...] = ()


@dataclass(frozen=True, slots=True)
class Balloon:
    """A balloon in its place: centre and radius, and the spot it names."""

    mark: str
    centre: Point
    radius: float
    anchor: Point

    @property
    def items(self) -> tuple[Item, ...]:
        """The leader with its dot, the circle and the mark."""
        (x, y), reach = self.centre, dist(self.centre, self.anchor)
        foot = (
            x + (self.anchor[0] - x) * self.radius / reach,
            y + (self.anchor[1] - y) * self.radius / reach,
        )
        rim = circle(self.centre, 2 * self.radius)
        if self.mark == HAND:
            inside: tuple[Item, ...] = tuple(hand_strokes(self.centre))
        else:
            inside = (
                Label(
                    text=self.mark,
                    at=(x, y - _LETTER * CAPITAL / 2),
                    height=_LETTER,
                    anchor=Anchor.MIDDLE,
                    strong=True,
                ),
            )
        return (
            Stroke(contour=open_path(foot, self.anchor), ink=Ink.INK, width=0.25),
            Stroke(contour=circle(self.anchor, 1.1), width=None, fill=Ink.INK),
            Stroke(contour=rim, ink=Ink.INK, width=0.35, fill=Ink.PAPER),
            *inside,
        )


@dataclass(frozen=True, slots=True)
class Around:
    """What balloons have to do with: the room they stand in and what is in it, mm on paper.

    They and their leaders keep out of the boxes ``kept_clear`` and touch none of the ``lines``; of
    the thin lines ``guides`` as few as can be. Into the boxes ``shown`` leaders alone may run.
    """

    room: Box
    taken: Occupied
    kept_clear: Sequence[Box] = ()
    lines: Sequence[Line] = ()
    guides: Sequence[Line] = ()
    shown: Sequence[Box] = ()


def balloons(
    wanted: Sequence[Wanted],
    room: Box,
    taken: Occupied,
    kept_clear: Sequence[Box] = (),
    lines: Sequence[Line] = (),
    guides: Sequence[Line] = (),
    shown: Sequence[Box] = (),
) -> tuple[Balloon, ...]:
    """Return a balloon for each mark, none over another, over a leader or outside the room.

    Each takes the place that is nearest, covers least of what is ``taken``, whose leader runs
    least over pieces that it does not name, and that lies outward; the outermost are placed first.
    Boxes ``kept_clear`` and ``lines`` are not touched, and ``guides`` crossed as little as can be;
    no balloon stands in boxes ``shown``.
    Where the room is too small for all, the rest stand where they disturb least.
    """
    around = Around(room, taken, kept_clear, lines, guides, shown)
    middle = middle_of(room)
    order = sorted(wanted, key=lambda each: (-dist(each.anchor, middle), each.mark, each.anchor))
    best: tuple[Balloon, ...] = ()
    for turn in range(max(1, min(len(order), 4))):
        placed: list[Balloon] = []
        for each in order[turn:] + order[:turn]:
            found = _place(each, placed, around)
            if found:
                placed.append(found)
        if len(placed) > len(best):
            best = tuple(placed)
        if len(best) == len(order):
            break
    there = {each.mark for each in best}
    for each in order:
        if each.mark not in there:
            best = (*best, _anywhere(each, best, around))
    return tuple(sorted(best, key=lambda each: (each.mark, each.anchor)))


def radius_of(mark: str) -> float:
    """Return the radius of a mark's circle, mm."""
    if mark == HAND:
        return RADIUS
    return max(_LEAST_RADIUS, text_width(mark, _LETTER, strong=True) / 2 + _RIM)


def _place(wanted: Wanted, placed: Sequence[Balloon], around: Around) -> Balloon | None:
    """Return the balloon in the best of its free places, None where it has none.

    Places near the first spot of the piece are tried before those near its others, and these
    before all that the room has.
    """
    found: list[tuple[float, Balloon]] = []
    for anchor in (wanted.anchor, *wanted.others):
        found += _best_free(wanted, anchor, placed, around, nearby=True)
        if found and found[0][0] < _PLAIN:
            return found[0][1]
    for anchor in () if found else (wanted.anchor, *wanted.others):
        found = _best_free(wanted, anchor, placed, around, nearby=False)
        if found:
            break
    return min(found, key=lambda each: each[0])[1] if found else None


def _best_free(
    wanted: Wanted, anchor: Point, placed: Sequence[Balloon], around: Around, *, nearby: bool
) -> list[tuple[float, Balloon]]:
    """Return the best free place with its leader at an anchor, and what is bad about it."""
    radius = radius_of(wanted.mark)
    spots = _around(anchor, radius) if nearby else _everywhere(around.room, radius)
    free = [
        spot
        for spot in spots
        if _inside(spot, radius, around.room)
        and dist(spot, anchor) > radius
        and all(_off_box(spot, radius, box) for box in around.shown)
        and all(_clear_of_box(spot, anchor, radius, box) for box in around.kept_clear)
        and all(_clear_of(spot, anchor, radius, other) for other in placed)
        and all(_clear_of_line(spot, anchor, radius, line) for line in around.lines)
    ]
    if not free:
        return []
    spot, fault = _best(free, wanted, anchor, radius, around)
    return [(fault, Balloon(wanted.mark, spot, radius, anchor))]


def _anywhere(wanted: Wanted, placed: Sequence[Balloon], around: Around) -> Balloon:
    """Return a balloon that has no free place: it keeps off other balloons and lines alone."""
    radius = radius_of(wanted.mark)
    spots = [
        spot for spot in _everywhere(around.room, radius) if dist(spot, wanted.anchor) > radius
    ]
    apart = [
        spot
        for spot in spots
        if all(dist(spot, each.centre) > radius + each.radius for each in placed)
        and all(_clear_of_line(spot, wanted.anchor, radius, line) for line in around.lines)
    ]
    spot, _ = _best(apart or spots, wanted, wanted.anchor, radius, around)
    return Balloon(wanted.mark, spot, radius, wanted.anchor)


def _around(anchor: Point, radius: float) -> Iterator[Point]:
    for far in _RADII:
        for angle in _ANGLES:
            turn = radians(angle)
            yield anchor[0] + far * radius * cos(turn), anchor[1] + far * radius * sin(turn)


def _everywhere(room: Box, radius: float) -> Iterator[Point]:
    """Yield a grid of places that reaches all four edges of the room."""
    left, bottom, right, top = (
        room[0] + radius,
        room[1] + radius,
        room[2] - radius,
        room[3] - radius,
    )
    across, up = (max(1, round(side / _GRID)) for side in (right - left, top - bottom))
    for row in range(up + 1):
        for column in range(across + 1):
            yield left + (right - left) * column / across, bottom + (top - bottom) * row / up


def _inside(spot: Point, radius: float, room: Box) -> bool:
    x, y = spot
    rim = radius - 1e-6
    return room[0] <= x - rim and x + rim <= room[2] and room[1] <= y - rim and y + rim <= room[3]


def _clear_of(spot: Point, anchor: Point, radius: float, other: Balloon) -> bool:
    apart = _APART / 2 * (radius + other.radius)
    return (
        dist(spot, other.centre) >= apart
        and _to_line(spot, other.centre, other.anchor) >= _ASIDE * radius
        and _to_line(other.centre, spot, anchor) >= _ASIDE * other.radius
        and not crossing((spot, anchor), (other.centre, other.anchor))
    )


def _clear_of_line(spot: Point, anchor: Point, radius: float, line: Line) -> bool:
    return _to_line(spot, *line) >= radius + _AIR and not crossing((spot, anchor), line)


def _off_box(spot: Point, radius: float, box: Box) -> bool:
    x, y = spot
    aside = max(box[0] - x, x - box[2], 0.0), max(box[1] - y, y - box[3], 0.0)
    return hypot(*aside) >= radius + _AIR


def _clear_of_box(spot: Point, anchor: Point, radius: float, box: Box) -> bool:
    """Tell whether a balloon keeps off a box; its leader may not run across it either."""
    if not _off_box(spot, radius, box):
        return False
    corners = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    return not any(crossing((spot, anchor), side) for side in sides)


def _best(
    spots: Sequence[Point], wanted: Wanted, anchor: Point, radius: float, around: Around
) -> tuple[Point, float]:
    """Return the spot that costs least, and its cost without the leader's own length."""
    room = around.room
    middle = middle_of(room)
    outward = (anchor[0] - middle[0], anchor[1] - middle[1])
    size = hypot(*outward) or 1.0
    wrong, costs = [], []
    for spot, clear in zip(spots, around.taken.clearances(spots), strict=True):
        reach = dist(spot, anchor)
        along = (spot[0] - anchor[0]) * outward[0] + (spot[1] - anchor[1]) * outward[1]
        crossed = sum(crossing((spot, anchor), line) for line in around.guides)
        over = _PER_OVER * max(0.0, radius + 1.0 - clear) / radius
        wrong.append(over + _PER_GUIDE * crossed)
        costs.append(reach + wrong[-1] - 4 * along / (size * reach))

    def strange(some: Sequence[int]) -> list[float]:
        found = _strange([spots[each] for each in some], wanted, anchor, around)
        return [_PER_STRANGE * each for each in found]

    best = cheapest(costs, strange)
    return spots[best], wrong[best] + strange([best])[0]


def _strange(
    spots: Sequence[Point], wanted: Wanted, anchor: Point, around: Around
) -> Sequence[float]:
    """Return how far each leader runs over pieces that it does not name, mm."""
    if not wanted.own:
        return [0.0] * len(spots)
    leaders = [(spot, anchor) for spot in spots]
    every, own = around.taken.along(leaders), Occupied(wanted.own).along(leaders)
    return [max(0.0, whole - mine) for whole, mine in zip(every, own, strict=True)]


def crossing(one: Line, other: Line) -> bool:
    """Tell whether two straight lines cross."""
    (a, b), (c, d) = one, other
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def _side(a: Point, b: Point, at: Point) -> float:
    return (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])


def _to_line(spot: Point, a: Point, b: Point) -> float:
    along = (b[0] - a[0], b[1] - a[1])
    square = along[0] ** 2 + along[1] ** 2
    share = ((spot[0] - a[0]) * along[0] + (spot[1] - a[1]) * along[1]) / square if square else 0.0
    share = min(1.0, max(0.0, share))
    return dist(spot, (a[0] + share * along[0], a[1] + share * along[1]))
