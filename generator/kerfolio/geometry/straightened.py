"""Stray nodes of a drawn line taken away: on a straight line, on an arc, and doubled ones."""

from __future__ import annotations

from math import dist, pi

from kerfolio.geometry.arc import arc_of, bulge_of
from kerfolio.geometry.canonical import off_line
from kerfolio.geometry.contour import Contour, Vertex

_CIRCLE = 0.01
"""Arcs go on along one circle where centres and radii differ by no more, mm."""

_MOST = 1.5 * pi
"""An arc turns no further: bulges grow without bound towards a full turn."""


def straightened(contour: Contour, within: float = 0.004) -> Contour:
    """Return a closed contour without nodes that it does not need.

    A node is left out where the line from the last one kept to the next passes all that were left
    out ``within`` so many mm, and where two arcs go on along one circle.
    """
    return _arcs_joined(_lines_joined(contour, within))


def _lines_joined(contour: Contour, within: float) -> Contour:
    vertices = contour.vertices
    kept: list[Vertex] = [vertices[0]]
    idle: list[Vertex] = []
    for vertex in (*vertices[1:], vertices[0]):
        if dist(vertex[:2], (idle[-1] if idle else kept[-1])[:2]) < within and vertex[2] == 0:
            continue
        straight = kept[-1][2] == 0 and all(each[2] == 0 for each in idle)
        if idle and not (
            straight and all(off_line(p[:2], kept[-1][:2], vertex[:2]) < within for p in idle)
        ):
            kept.append(idle[-1])
            idle.clear()
        idle.append(vertex)
    return Contour(tuple(kept))


def _arcs_joined(contour: Contour) -> Contour:
    vertices = contour.vertices
    count = len(vertices)
    if count < 4:
        return contour
    first = next((i for i in range(count) if not _is_one(vertices, i - 1)), 0)
    kept: list[Vertex] = []
    for step in range(count):
        index = (first + step) % count
        if step and _is_one(vertices, index - 1):
            x, y, bulge = kept[-1]
            after = vertices[(index + 1) % count]
            turn = arc_of((x, y), vertices[index][:2], bulge).sweep
            turn += arc_of(vertices[index][:2], after[:2], vertices[index][2]).sweep
            if abs(turn) <= _MOST:
                kept[-1] = (x, y, bulge_of(turn))
                continue
        kept.append(vertices[index])
    return Contour(tuple(kept))


def _is_one(vertices: tuple[Vertex, ...], index: int) -> bool:
    """Tell whether the arc from a vertex goes on, after the next one, along its circle."""
    count = len(vertices)
    a, b, c = (vertices[(index + step) % count] for step in range(3))
    if not a[2] or not b[2] or (a[2] > 0) != (b[2] > 0) or a[:2] == b[:2] or b[:2] == c[:2]:
        return False
    one, other = arc_of(a[:2], b[:2], a[2]), arc_of(b[:2], c[:2], b[2])
    near = abs(one.radius - other.radius) <= _CIRCLE
    return near and dist(one.centre, other.centre) <= _CIRCLE
