"""The one form a contour is kept in: no idle vertices, a fixed start, a fixed orientation."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from functools import lru_cache

from kerfolio.geometry.arc import Arc, arc_of, bulge_of, reversed_contour
from kerfolio.geometry.contour import Contour, Point, Region, Vertex
from kerfolio.geometry.measure import signed_area
from kerfolio.geometry.shape_error import ShapeError

SAME = 1e-6
"""Points closer than this, mm, are one point."""


def region(outer: Contour, openings: Iterable[Contour] = ()) -> Region:
    """Return a region of closed contours in canonical form, openings in a fixed order.

    Raises ShapeError when a contour is open or encloses nothing.
    """
    rings = sorted((tidy(each, clockwise=True) for each in openings), key=lambda c: c.vertices)
    return Region(tidy(outer), tuple(rings))


@lru_cache(maxsize=16384)
def tidy(contour: Contour, *, clockwise: bool = False) -> Contour:
    """Return a closed contour oriented as asked, without idle vertices, from its least vertex.

    Arcs of one circle that follow each other are one arc, a whole circle is two half turns from
    its leftmost point. Raises ShapeError when the contour is open or encloses nothing.
    """
    if not contour.closed:
        raise ShapeError("the contour is open")
    once = Contour(_without_doubles(contour.vertices))
    enclosed = signed_area(once)
    if abs(enclosed) < SAME:
        raise ShapeError("the contour encloses no area")
    if (enclosed < 0) != clockwise:
        once = reversed_contour(once)
    # The least vertex is a corner of the hull: it never lies in the middle of a straight side.
    plain = _merged_arcs(_without_idle(_from_least(once.vertices)))
    return Contour(tuple(_rounded(vertex) for vertex in _from_least(plain)))


def _from_least(vertices: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    keys = [(round(x, 6) + 0.0, round(y, 6) + 0.0) for x, y, _ in vertices]
    first = keys.index(min(keys))
    return vertices[first:] + vertices[:first]


def _rounded(vertex: Vertex) -> Vertex:
    """Return a vertex free of the last digits' noise: a billionth of a mm, 1e-12 of a bulge."""
    x, y, bulge = vertex
    return (round(x, 9) + 0.0, round(y, 9) + 0.0, round(bulge, 12) + 0.0)


def _without_doubles(vertices: Sequence[Vertex]) -> tuple[Vertex, ...]:
    kept: list[Vertex] = []
    for vertex in vertices:
        if kept and math.dist(kept[-1][:2], vertex[:2]) < SAME:
            kept[-1] = (*kept[-1][:2], vertex[2])
        else:
            kept.append(vertex)
    while len(kept) > 1 and math.dist(kept[-1][:2], kept[0][:2]) < SAME:
        kept.pop()
    return tuple(kept)


def _without_idle(vertices: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    """Drop the vertices in the middle of straight sides; the first vertex always stays.

    Every vertex dropped lies within 1e-6 mm of the side that replaces it, so a fine curve is not
    worn away one vertex at a time.
    """
    kept, idle = [vertices[0]], list[Vertex]()
    for vertex in (*vertices[1:], vertices[0]):
        before = idle[-1] if idle else kept[-1]
        straight = not before[2] and not (kept[-1][2])
        start, end = kept[-1][:2], vertex[:2]
        if idle and not (straight and all(off_line(p[:2], start, end) < SAME for p in idle)):
            kept.append(idle[-1])
            idle.clear()
        idle.append(vertex)
    return tuple(kept)


def _merged_arcs(vertices: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    """Join neighbouring arcs of one circle."""
    count = len(vertices)
    ends = [vertices[(i + 1) % count][:2] for i in range(count)]
    arcs = [
        arc_of(v[:2], end, v[2]) if v[2] else None for v, end in zip(vertices, ends, strict=True)
    ]
    joins = [_is_one(arcs[i - 1], arcs[i]) for i in range(count)]
    if all(joins):
        return _whole_circle(_longest(arcs))
    first = joins.index(False)
    result: list[Vertex] = []
    for index in [*range(first, count), *range(first)]:
        if joins[index]:
            continue
        run = [arcs[index]]
        while joins[(index + len(run)) % count]:
            run.append(arcs[(index + len(run)) % count])
        if len(run) == 1:
            result.append(vertices[index])
        else:
            sweep = math.fsum(arc.sweep for arc in run if arc)
            result.extend(arc_vertices(vertices[index][:2], sweep, _longest(run).centre))
    return tuple(result)


def _is_one(before: Arc | None, after: Arc | None) -> bool:
    """Tell whether an arc goes on along the circle of the one before, the same way round."""
    if before is None or after is None or (before.sweep > 0) != (after.sweep > 0):
        return False
    off = math.dist(before.centre, after.centre)
    return off < SAME and abs(before.radius - after.radius) < SAME


def _longest(arcs: Sequence[Arc | None]) -> Arc:
    """Return the arc of the greatest turn, whose centre is known best."""
    return max((arc for arc in arcs if arc), key=lambda arc: abs(arc.sweep))


def _whole_circle(arc: Arc) -> tuple[Vertex, ...]:
    (x, y), radius, bulge = arc.centre, arc.radius, math.copysign(1.0, arc.sweep)
    return ((x - radius, y, bulge), (x + radius, y, bulge))


def off_line(point: Point, start: Point, end: Point) -> float:
    """Return a point's distance from the segment between two points, mm."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    if square == 0:
        return math.dist(point, start)
    along = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / square
    along = min(1.0, max(0.0, along))
    return math.hypot(point[0] - start[0] - along * dx, point[1] - start[1] - along * dy)


def arc_vertices(start: Point, sweep: float, centre: Point) -> list[Vertex]:
    """Return the start vertices of an arc: one, or two halves when it turns over 3/4 of a circle.

    Bulges grow without bound towards a full turn, hence the halves.
    """
    if abs(sweep) <= 1.5 * math.pi:
        return [(*start, bulge_of(sweep))]
    cos, sin = math.cos(sweep / 2), math.sin(sweep / 2)
    dx, dy = start[0] - centre[0], start[1] - centre[1]
    middle = (centre[0] + dx * cos - dy * sin, centre[1] + dx * sin + dy * cos)
    return [(*start, bulge_of(sweep / 2)), (*middle, bulge_of(sweep / 2))]
