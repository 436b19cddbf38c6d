"""When two contours are one: vertex by vertex, arc by arc, in one place."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import atan, hypot, sqrt

from kerfolio.geometry.arc import arc_of, bulge_of
from kerfolio.geometry.contour import Contour
from kerfolio.writing.circle import circle_of

NEAR = 0.002
"""Places agree within this, mm: above the rounding of the files, far below any router."""

Piece = tuple[float, float, float, float, float]
"""Where an edge starts, where it ends, and its bulge."""


def same(meant: Contour, found: Contour) -> bool:
    """Tell whether a contour was found where and as it was meant, within ``NEAR``.

    A file may part an arc into equal ones, and leave out or keep edges shorter than ``NEAR``. A
    circle is one wherever it begins.
    """
    if meant.closed != found.closed or not meant.vertices or not found.vertices:
        return False
    (x, y, _), (u, v, _) = meant.vertices[0], found.vertices[0]
    starts = abs(x - u) <= NEAR and abs(y - v) <= NEAR
    if starts and (_vertex_by_vertex(meant, found) or _parted(meant, found)):
        return True
    return found.closed and len(found.vertices) == 2 and _one_circle(meant, found)


def _vertex_by_vertex(meant: Contour, found: Contour) -> bool:
    if len(meant.vertices) != len(found.vertices):
        return False
    straight = True
    for (x, y, bulge), (u, v, bent) in zip(meant.vertices, found.vertices, strict=True):
        if abs(x - u) > NEAR or abs(y - v) > NEAR:
            return False
        straight = straight and bulge == bent == 0.0
    return straight or all(map(_fits, _pieces(meant), _pieces(found)))


def _pieces(contour: Contour) -> Iterator[Piece]:
    vertices = contour.vertices
    ends = (*vertices[1:], vertices[0]) if contour.closed else vertices[1:]
    for (x, y, bulge), (u, v, _) in zip(vertices, ends, strict=False):
        yield x, y, u, v, bulge


def _rise(piece: Piece) -> float:
    """Return how far an edge's middle stands off its chord, mm."""
    return piece[4] * hypot(piece[2] - piece[0], piece[3] - piece[1]) / 2


def _fits(meant: Piece, found: Piece) -> bool:
    (a, b, c, d, _), (e, f, g, h, _) = meant, found
    near = abs(a - e) <= NEAR and abs(b - f) <= NEAR and abs(c - g) <= NEAR and abs(d - h) <= NEAR
    return near and abs(_rise(meant) - _rise(found)) <= NEAR


def _short(piece: Piece) -> bool:
    return hypot(piece[2] - piece[0], piece[3] - piece[1]) + abs(_rise(piece)) < NEAR


def _parted(meant: Contour, found: Contour) -> bool:
    left, at = list(_pieces(found)), 0
    for edge in _pieces(meant):
        while at < len(left) and _short(left[at]) and not _short(edge):
            at += 1
        parts = _in_parts(edge, left[at]) if at < len(left) else (edge,)
        if all(map(_fits, parts, left[at : at + len(parts)])) and at + len(parts) <= len(left):
            at += len(parts)
        elif not _short(edge):
            return False
    return all(map(_short, left[at:]))


def _in_parts(edge: Piece, first: Piece) -> tuple[Piece, ...]:
    """Return an arc in as many equal parts as a file has it, judged by the first of them."""
    x, y, u, v, bulge = edge
    if bulge * first[4] <= 0:
        return (edge,)
    count = max(1, int(atan(bulge) / atan(first[4]) + 0.5))
    if count == 1 or (x, y) == (u, v):
        return (edge,)
    arc = arc_of((x, y), (u, v), bulge)
    spots = [arc.point(arc.start + arc.sweep * n / count) for n in range(1, count)]
    stops = ((x, y), *spots, (u, v))
    bent = bulge_of(arc.sweep / count)
    return tuple((*a, *b, bent) for a, b in pairwise(stops))


def _one_circle(meant: Contour, found: Contour) -> bool:
    one, other = circle_of(meant), circle_of(found)
    if not one or not other:
        return False
    (x, y), radius = one
    (u, v), size = other
    return abs(x - u) <= NEAR and abs(y - v) <= NEAR and abs(radius - size) * sqrt(2) <= NEAR
