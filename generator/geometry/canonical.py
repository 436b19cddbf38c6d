"""The one form a contour is kept in: no idle vertices, a fixed start, a fixed orientation."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from generator.geometry.arc import arc_of, bulge_of, reversed_contour
from generator.geometry.contour import Contour, Point, Region, Vertex
from generator.geometry.measure import signed_area
from generator.geometry.shape_error import ShapeError

SAME = 1e-6
"""Points closer than this, mm, are one point."""

FULL = 1e-9


def region(outer: Contour, openings: Iterable[Contour] = ()) -> Region:
    """Return a region of closed contours in canonical form, openings in a fixed order.

    Raises ShapeError when a contour is open or encloses nothing.
    """
    rings = sorted((tidy(each, clockwise=True) for each in openings), key=lambda c: c.vertices)
    return Region(tidy(outer), tuple(rings))


def tidy(contour: Contour, *, clockwise: bool = False) -> Contour:
    """Return a closed contour oriented as asked, without idle vertices, from its least vertex.

    Raises ShapeError when it is open or encloses nothing.
    """
    if not contour.closed:
        raise ShapeError("the contour is open")
    vertices = _without_idle(contour.vertices)
    if len(vertices) < 2 or abs(signed_area(Contour(vertices))) < SAME:
        raise ShapeError("the contour encloses no area")
    if (signed_area(Contour(vertices)) < 0) != clockwise:
        vertices = reversed_contour(Contour(vertices)).vertices
    return Contour(_from_least(_plain_circle(vertices)))


def _plain_circle(vertices: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    """Return a full circle as two half turns from its leftmost point; others unchanged."""
    if (
        len(vertices) != 2
        or abs(abs(vertices[0][2]) - 1) > FULL
        or (abs(vertices[0][2] - vertices[1][2]) > FULL)
    ):
        return vertices
    arc = arc_of(vertices[0][:2], vertices[1][:2], vertices[0][2])
    (x, y), radius, bulge = arc.centre, arc.radius, math.copysign(1.0, arc.sweep)
    return ((x - radius, y, bulge), (x + radius, y, bulge))


def _from_least(vertices: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    keys = [(round(x, 6) + 0.0, round(y, 6) + 0.0) for x, y, _ in vertices]
    first = keys.index(min(keys))
    return tuple(_rounded(vertex) for vertex in vertices[first:] + vertices[:first])


def _rounded(vertex: Vertex) -> Vertex:
    """Return a vertex free of the last digits' noise: a billionth of a mm, 1e-12 of a bulge."""
    x, y, bulge = vertex
    return (round(x, 9) + 0.0, round(y, 9) + 0.0, round(bulge, 12) + 0.0)


def _without_idle(vertices: Sequence[Vertex]) -> tuple[Vertex, ...]:
    """Drop doubled vertices, and vertices in the middle of a straight line, until none is left."""
    kept = _without_doubles(vertices)
    while True:
        count = len(kept)
        fewer = [kept[i] for i in range(count) if not _is_idle(kept, i)]
        if len(fewer) == count or len(fewer) < 2:
            return tuple(kept)
        # Neighbours judged together may both lean on each other: judge again after each pass.
        kept = _without_doubles(fewer)


def _without_doubles(vertices: Sequence[Vertex]) -> list[Vertex]:
    kept: list[Vertex] = []
    for vertex in vertices:
        if kept and math.dist(kept[-1][:2], vertex[:2]) < SAME:
            kept[-1] = (*kept[-1][:2], vertex[2])
        else:
            kept.append(vertex)
    while len(kept) > 1 and math.dist(kept[-1][:2], kept[0][:2]) < SAME:
        kept.pop()
    return kept


def _is_idle(vertices: Sequence[Vertex], index: int) -> bool:
    before, here, after = (
        vertices[index - 1],
        vertices[index],
        vertices[(index + 1) % len(vertices)],
    )
    if before[2] or here[2]:
        return False
    return off_line(here[:2], before[:2], after[:2]) < SAME


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
