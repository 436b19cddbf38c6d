"""Putting arcs back into a flattened ring, from the record of where its chords came from."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.geometry.arc import Arc
from kerfolio.geometry.canonical import arc_vertices
from kerfolio.geometry.contour import Contour, Point, Vertex
from kerfolio.geometry.noding import Circles

Tag = tuple[int, int] | None
"""The circle an edge lies on and its turn (1 ccw, -1 cw); None for a straight edge."""


def recovered(ring: Sequence[Point], circles: Circles) -> Contour:
    """Return a closed contour in which each run of chords of one circle is one arc again."""
    points = list(ring)
    tags = [circles.tag(p, q) for p, q in _pairs(points)]
    points = [circles.settled(p, tags[i - 1], tags[i]) for i, p in enumerate(points)]
    start = _first_change(tags)
    points, tags = points[start:] + points[:start], tags[start:] + tags[:start]
    vertices: list[Vertex] = []
    index = 0
    while index < len(points):
        last = index
        while tags[index] and last + 1 < len(points) and tags[last + 1] == tags[index]:
            last += 1
        vertices.extend(_run(points, index, last, tags[index], circles))
        index = last + 1
    return Contour(tuple(vertices))


def _pairs(points: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(zip(points, [*points[1:], points[0]], strict=True))


def _first_change(tags: Sequence[Tag]) -> int:
    """Return a position where a run begins, so that none is split by the ring's start."""
    return next((i for i in range(len(tags)) if tags[i] != tags[i - 1] or not tags[i]), 0)


def _run(
    points: Sequence[Point], first: int, last: int, tag: Tag, circles: Circles
) -> list[Vertex]:
    """Return the vertices of the edges ``first`` to ``last``, which share a tag."""
    if tag is None:
        return [(*points[first], 0.0)]
    centre, radius = circles.known[tag[0]]
    begin, finish = points[first], points[(last + 1) % len(points)]
    arc = Arc(centre, radius, math.atan2(begin[1] - centre[1], begin[0] - centre[0]), tag[1])
    sweep = arc.travel(finish)
    if last - first + 1 == len(points):
        sweep = math.tau
    return arc_vertices(begin, tag[1] * sweep, centre)
