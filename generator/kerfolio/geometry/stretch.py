"""Notches and tabs within an outline: two walls side by side, with a straight end across."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import dist

from kerfolio.geometry.arc import Edge, edges, heading
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point, Vertex

_AHEAD = 4
"""A corner has fewer edges than that between its two sides, dog-bone and rounding included."""

_EAR = 8.0
"""A dog-bone or fillet reaches no further, mm, from its corner (common practice, no source)."""

_ROUNDED = 20.0
"""Nor does the rounding of a tab's end, mm."""

_SQUARE = 1e-3
_LEVEL = 0.01
_STEEP = 0.9
_STRAIGHT = 1e-7


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A notch or a tab of an outline.

    ``start`` and ``end`` are its open corners as the outline passes them, counter-clockwise:
    where a notch opens, where a tab stands on its shoulders. ``outward`` is a unit vector out of
    the part. ``tip`` are the vertices of its end as drawn, from wall to wall. ``level`` tells
    whether its open corners lie on one straight edge, so that it can be made anew. ``walls``,
    ``kept`` and ``put`` say which edges and vertices of the tidy outline are its own.
    """

    tab: bool
    start: Point
    end: Point
    outward: Point
    depth: float
    tip: tuple[Vertex, ...]
    level: bool
    walls: tuple[int, int]
    kept: tuple[int, int]
    put: tuple[Vertex, ...]

    @property
    def along(self) -> Point:
        """The unit vector across, with the part below it: from left to right."""
        return (self.outward[1], 0.0 - self.outward[0])

    @property
    def width(self) -> float:
        """How far its walls are apart, mm."""
        return abs(_dot(_between(self.start, self.end), self.along))

    @property
    def shoulders(self) -> tuple[int, int]:
        """The edges that it opens into."""
        first, last = self.kept
        return (first, last if len(self.put) == 1 else last - 1)

    @property
    def middle(self) -> Point:
        """The middle between its open corners."""
        return ((self.start[0] + self.end[0]) / 2, (self.start[1] + self.end[1]) / 2)


def stretches(outline: Contour) -> tuple[Stretch, ...]:
    """Return the notches and tabs of a closed outline, in order along its tidy form."""
    walls = list(edges(tidy(outline)))
    found = (_at(walls, index) for index in range(len(walls)))
    return tuple(each for each in found if each is not None)


def in_a_row(found: Sequence[Stretch]) -> frozenset[Stretch]:
    """Return those that share a wall with another one, as fingers do."""
    shared = Counter(wall for each in found for wall in each.walls)
    return frozenset(each for each in found if max(shared[wall] for wall in each.walls) > 1)


def steps(outline: Contour, known: Iterable[Stretch]) -> Iterator[tuple[float, Point]]:
    """Yield length and middle of the straight edges between a corner that stands out and one in.

    Walls of stretches that are ``known``, and the shoulders of tabs, are none.
    """
    walls = list(edges(tidy(outline)))
    mine = {wall for each in known for wall in (*each.walls, *(each.shoulders if each.tab else ()))}
    for index, wall in enumerate(walls):
        after = (index + 1) % len(walls)
        turns = _turn(walls, index, index - 1, -1), _turn(walls, index, after, 1)
        if index not in mine and not wall.arc and min(turns) < -_STEEP and max(turns) > _STEEP:
            (ax, ay), (bx, by) = wall.start, wall.end
            yield dist(wall.start, wall.end), ((ax + bx) / 2, (ay + by) / 2)


def without(outline: Contour, left_out: Iterable[Stretch]) -> Contour:
    """Return an outline in its tidy form with straight edges in place of some of its stretches.

    They must be level ones of that outline that share no wall.
    """
    vertices = tidy(outline).vertices
    count = len(vertices)
    put: dict[int, tuple[Vertex, ...]] = {}
    gone: set[int] = set()
    for each in left_out:
        first, last = each.kept
        put[(first + 1) % count] = each.put
        gone.update((first + step) % count for step in range(1, (last - first) % count))
    made: list[Vertex] = []
    for index, vertex in enumerate(vertices):
        made += put.get(index, ())
        if index not in gone:
            made.append(vertex)
    return tidy(Contour(_straightened(made)))


def _straightened(vertices: Sequence[Vertex]) -> tuple[Vertex, ...]:
    """Return vertices without those in the middle of a straight edge, of which many may follow."""
    kept: list[Vertex] = []
    for vertex in vertices:
        while len(kept) > 1 and not kept[-1][2] and not kept[-2][2]:
            first, second = kept[-2][:2], kept[-1][:2]
            before, after = _between(first, second), _between(second, vertex[:2])
            if abs(_cross(before, after)) > _STRAIGHT or _dot(before, after) <= 0:
                break
            kept.pop()
        kept.append(vertex)
    return tuple(kept)


def _at(walls: Sequence[Edge], index: int) -> Stretch | None:
    """Return the stretch whose first wall is that edge, if there is one."""
    if walls[index].arc:
        return None
    d = heading(walls[index])
    for across in _ahead(walls, index):
        side = _cross(d, heading(walls[across]))
        room = _ROUNDED if side > 0 else _EAR
        if walls[across].arc or abs(abs(side) - 1) > _SQUARE:
            continue
        if not _is_corner(walls, index, across, room):
            continue
        for last in _ahead(walls, across):
            back = not walls[last].arc and _dot(d, heading(walls[last])) < _SQUARE - 1
            if back and last != index and _is_corner(walls, across, last, room):
                found = _made(walls, (index, across, last), tab=side > 0)
                if found is not None:
                    return found
    return None


def _made(walls: Sequence[Edge], row: tuple[int, int, int], *, tab: bool) -> Stretch | None:
    first, across, last = row
    count, d = len(walls), heading(walls[first])
    before, after = _opening(walls, first, -1, tab=tab), _opening(walls, last, 1, tab=tab)
    if before is None or after is None:
        return None
    (start, kept_first), (end, kept_last) = before, after
    tips = _meeting(walls[first], walls[across]), _meeting(walls[across], walls[last])
    deep = [abs(_dot(_between(*each), d)) for each in zip((start, end), tips, strict=True)]
    if _dot(_between(*tips), heading(walls[across])) <= 0 or min(deep) <= 0:
        return None
    ends_anew = kept_last != (last + 1) % count
    tip = [walls[(first + step) % count] for step in range(1, (last - first) % count + 1)]
    level = abs(deep[0] - deep[1]) < _LEVEL
    return Stretch(
        tab=tab,
        start=start,
        end=end,
        outward=d if tab else (0.0 - d[0], 0.0 - d[1]),
        depth=(deep[0] + deep[1]) / 2,
        tip=tuple((*each.start, each.bulge if each is not tip[-1] else 0.0) for each in tip),
        level=level or (not tab and _on_one_edge(walls, first, last)),
        walls=(first, last),
        kept=(kept_first, kept_last),
        put=((*start, 0.0), (*end, 0.0)) if ends_anew else ((*start, 0.0),),
    )


def _opening(walls: Sequence[Edge], wall: int, step: int, *, tab: bool) -> tuple[Point, int] | None:
    """Return where a wall begins (``step`` -1) or ends (1), and the nearest vertex to keep there.

    None where it opens into no edge of the part: a notch has corners that stand out, a tab has
    shoulders. A shoulder may be reached past a dog-bone.
    """
    count = len(walls)
    near = (wall + step) % count
    at = walls[wall].start if step < 0 else walls[wall].end
    turn = _turn(walls, wall, near, step)
    if not tab:
        rounded = bool(walls[near].arc) and walls[near].bulge > 0 and abs(turn) < _SQUARE
        return (at, near) if turn > _SQUARE or rounded else None
    long_arc = walls[near].arc and dist(walls[near].start, walls[near].end) > 2 * _EAR
    if (turn < _SQUARE - 1 and not walls[near].arc) or (long_arc and turn < -_SQUARE):
        return at, near
    for away in range(2, _AHEAD + 1):
        shoulder = (wall + step * away) % count
        if walls[shoulder].arc or _turn(walls, wall, shoulder, step) > _SQUARE - 1:
            continue
        row = (shoulder, wall) if step < 0 else (wall, shoulder)
        if _is_corner(walls, *row, _EAR):
            kept = shoulder if step < 0 else (shoulder + 1) % count
            return _meeting(walls[wall], walls[shoulder]), kept
    return None


def _turn(walls: Sequence[Edge], wall: int, other: int, step: int) -> float:
    """Return the sine of the turn between a wall and an edge beside it, above 0 to the left."""
    if step < 0:
        return _cross(heading(walls[other], at_end=True), heading(walls[wall]))
    return _cross(heading(walls[wall]), heading(walls[other]))


def _on_one_edge(walls: Sequence[Edge], first: int, last: int) -> bool:
    """Tell whether a notch opens in the middle of one slanting or curved edge."""
    mouth = _unit(_between(walls[first].start, walls[last].end))
    for wall, near, step in ((first, first - 1, -1), (last, (last + 1) % len(walls), 1)):
        curved = walls[near].arc and abs(_turn(walls, wall, near, step)) > _SQUARE
        if not curved and abs(_cross(mouth, heading(walls[near]))) > _SQUARE:
            return False
    return True


def _ahead(walls: Sequence[Edge], index: int) -> Iterator[int]:
    return ((index + step) % len(walls) for step in range(1, min(_AHEAD, len(walls) - 1) + 1))


def _is_corner(walls: Sequence[Edge], one: int, other: int, room: float) -> bool:
    """Tell whether all between two edges lies within ``room`` mm of where their lines meet."""
    corner, count = _meeting(walls[one], walls[other]), len(walls)
    between = ((one + step) % count for step in range((other - one) % count))
    return all(dist(walls[each].end, corner) <= room for each in between)


def _meeting(one: Edge, other: Edge) -> Point:
    """Return where the lines of two straight edges at right angles meet."""
    d, e = heading(one), heading(other)
    reach = _cross(_between(one.end, other.start), e) / _cross(d, e)
    return (one.end[0] + reach * d[0], one.end[1] + reach * d[1])


def _between(a: Point, b: Point) -> Point:
    return (b[0] - a[0], b[1] - a[1])


def _unit(vector: Point) -> Point:
    size = dist(vector, (0.0, 0.0))
    return (vector[0] / size, vector[1] / size)


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _cross(a: Point, b: Point) -> float:
    return a[0] * b[1] - a[1] * b[0]
