"""Chords that were a curve: runs of short straight edges on one circle, made one arc again."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.canonical import arc_vertices
from kerfolio.geometry.contour import Contour, Point, Vertex

_LEAST = 4
"""A run has at least so many chords: a chamfered corner is none."""

_TURN = math.radians(40)
"""No chord of a curve turns further than that against the one before; an octagon's do."""


def with_arcs(contour: Contour) -> Contour:
    """Return a closed contour in which each run of chords of one circle is an arc.

    A chord's ends lie within 0.004 mm of the circle and 0.03 % of its radius, since one of four
    Bezier curves strays from a true one by 0.027 %; but never further than 0.015 mm.
    """
    walls = list(edges(contour))
    if not contour.closed or len(walls) <= _LEAST:
        return contour
    start = _first_break(walls)
    walls = walls[start:] + walls[:start]
    vertices: list[Vertex] = []
    index = 0
    while index < len(walls):
        count, circle = _run(walls, index)
        if circle is None:
            vertices.append((*walls[index].start, walls[index].bulge))
            index += 1
            continue
        vertices += _arc(walls[index : index + count], circle)
        index += count
    return Contour(tuple(vertices))


def _first_break(walls: Sequence[Edge]) -> int:
    """Return an edge that goes on no curve of the one before it, 0 where each does."""
    for index, wall in enumerate(walls):
        if wall.bulge or walls[index - 1].bulge or abs(_turn(walls[index - 1], wall)) > _TURN:
            return index
    longest = max(range(len(walls)), key=lambda i: math.dist(walls[i].start, walls[i].end))
    return (longest + 1) % len(walls)


_NEAR = 0.004
_SHARE = 3e-4
_MOST = 0.015
_COARSE = 0.1
"""Chords stray no further, mm, from the curve that they are drawn for."""

_Circle = tuple[Point, float]


def _run(walls: Sequence[Edge], first: int) -> tuple[int, _Circle | None]:
    """Return how many chords from one on lie on one circle, and that circle."""
    count, found = 1, None
    while first + count < len(walls) and _goes_on(walls, first + count - 1, first):
        count += 1
        if count >= _LEAST:
            circle = _circle(walls[first : first + count])
            if circle is None or not _fits(walls[first : first + count], circle):
                return (count - 1, found) if found else (1, None)
            found = circle
    return (count, found) if found else (1, None)


def _goes_on(walls: Sequence[Edge], last: int, first: int) -> bool:
    """Tell whether the next edge bends the way a run does, no further than a curve's chord."""
    here, after = walls[last], walls[last + 1]
    if here.bulge or after.bulge:
        return False
    turn = _turn(here, after)
    alike = last == first or (_turn(walls[first], walls[first + 1]) > 0) == (turn > 0)
    return alike and 1e-4 < abs(turn) <= _TURN


def _turn(one: Edge, other: Edge) -> float:
    (ax, ay), (bx, by) = _along(one), _along(other)
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _along(edge: Edge) -> Point:
    return (edge.end[0] - edge.start[0], edge.end[1] - edge.start[1])


def _circle(run: Sequence[Edge]) -> _Circle | None:
    """Return the circle through the first, the middle and the last point of a run.

    Of a run that comes back to its start the points at each third are taken.
    """
    points = [each.start for each in run] + [run[-1].end]
    round_about = math.dist(points[0], points[-1]) < 1e-6
    parts = 3 if round_about else 2
    a, b = points[0], points[len(points) // parts]
    c = points[2 * len(points) // 3] if round_about else points[-1]
    ax, ay, bx, by = b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]
    cross = 2 * (ax * by - ay * bx)
    if abs(cross) < 1e-9:
        return None
    p, q = ax * ax + ay * ay, bx * bx + by * by
    x, y = (by * p - ay * q) / cross, (ax * q - bx * p) / cross
    return (a[0] + x, a[1] + y), math.hypot(x, y)


def _fits(run: Sequence[Edge], circle: _Circle) -> bool:
    centre, radius = circle
    within = min(_NEAR + _SHARE * radius, _MOST)
    for edge in run:
        half = math.dist(edge.start, edge.end) / 2
        if half >= radius or abs(math.dist(edge.start, centre) - radius) > within:
            return False
        if radius - math.sqrt(radius * radius - half * half) > _COARSE:
            return False  # the chords are too coarse to have been this curve
    return abs(math.dist(run[-1].end, centre) - radius) <= within


def _arc(run: Sequence[Edge], circle: _Circle) -> list[Vertex]:
    centre, _ = circle
    begin, finish = run[0].start, run[-1].end
    sign = 1.0 if _turn(run[0], run[1]) > 0 else -1.0
    start, end = (math.atan2(p[1] - centre[1], p[0] - centre[0]) for p in (begin, finish))
    sweep = (sign * (end - start)) % math.tau
    if math.dist(begin, finish) < 1e-6:
        sweep = math.tau
    return arc_vertices(begin, sign * sweep, centre)
