"""SVG path data as contours."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

import svgelements

from kerfolio.geometry import path_grammar
from kerfolio.geometry.affine import IDENTITY, Affine
from kerfolio.geometry.contour import Contour, Point, Vertex
from kerfolio.geometry.curve import TOLERANCE, Bezier, EllipseArc, Piece
from kerfolio.geometry.shape_error import ShapeError

CLOSES = 0.01
"""Ends this close, mm, are one: a path drawn back to its start is closed without a Z."""

_FARTHEST = 1e9
"""What a curve may state beside its points, mm: the radius of a flat arc is far larger than it."""


def contours(
    d: str, affine: Affine = IDENTITY, tolerance: float = TOLERANCE
) -> tuple[Contour, ...]:
    """Return the contours of path data, one for each part begun by a move.

    Numbers are mm with y as given, mapped by ``affine``. Circular arcs stay arcs, other curves
    become chords within ``tolerance`` mm. A part is closed by Z or by ending within 0.01 mm of its
    start. Raises ShapeError when the data breaks the grammar or holds a number too large.
    """
    path_grammar.check(d)
    found = []
    for pieces, closed in _parts(d):
        contour = contour_of([piece.mapped(affine) for piece in pieces], closed, tolerance)
        if contour.vertices:
            found.append(contour)
    return tuple(found)


def contour_of(
    pieces: Sequence[Piece], closed: bool, tolerance: float = TOLERANCE, closes: float = CLOSES
) -> Contour:
    """Return the contour of curves that follow each other, closed where its ends meet.

    Ends meet within ``closes``.

    Raises ShapeError when a coordinate is not a finite number or beyond 100 m.
    """
    vertices: list[Vertex] = []
    for piece in pieces:
        if not all(abs(number) <= _FARTHEST for number in piece.numbers):
            raise _too_large(piece.start)
        for vertex in piece.vertices(tolerance):
            _append(vertices, vertex)
    if not pieces:
        return Contour((), closed)
    _append(vertices, (*pieces[-1].end, 0.0))
    for x, y, _ in vertices:
        if not (abs(x) < 1e5 and abs(y) < 1e5):
            raise _too_large((x, y))
    meets = math.dist(vertices[0][:2], vertices[-1][:2]) <= closes
    if (closed or meets) and len(vertices) > 1 and meets:
        vertices.pop()
        closed = True
    return Contour(tuple(vertices), closed)


def _too_large(at: Point) -> ShapeError:
    return ShapeError("a coordinate is too large (beyond 100 m)", at=at)


def _append(vertices: list[Vertex], vertex: Vertex) -> None:
    """Add a vertex; in the place of the last one when it is the same point."""
    if vertices and math.dist(vertices[-1][:2], vertex[:2]) < 1e-9:
        vertices[-1] = (*vertices[-1][:2], vertex[2])
    else:
        vertices.append(vertex)


def _parts(d: str) -> Iterator[tuple[list[Piece], bool]]:
    """Yield each part of a path: its curves, and whether it is closed by Z."""
    pieces: list[Piece] = []
    for segment in _segments(d):
        if isinstance(segment, svgelements.Move):
            if pieces:
                yield pieces, False
            pieces = []
        elif isinstance(segment, svgelements.Close):
            if pieces:
                yield pieces, True
            pieces = []
        else:
            pieces.extend(_pieces(segment))
    if pieces:
        yield pieces, False


def _segments(d: str) -> Iterable[object]:
    try:
        return list(svgelements.Path(d))
    except (ValueError, ArithmeticError, IndexError, TypeError, AttributeError) as problem:
        raise ShapeError(f"path cannot be read: {problem}") from problem


def _pieces(segment: object) -> Iterator[Piece]:
    """Yield a segment as curves; an arc without radii or length is a line or nothing."""
    if isinstance(segment, svgelements.Arc):
        yield from _ellipse_arc(segment)
    elif isinstance(segment, svgelements.QuadraticBezier):
        yield Bezier((_xy(segment.start), _xy(segment.control), _xy(segment.end)))
    elif isinstance(segment, svgelements.CubicBezier):
        one, two = _xy(segment.control1), _xy(segment.control2)
        yield Bezier((_xy(segment.start), one, two, _xy(segment.end)))
    elif isinstance(segment, svgelements.Line):
        yield Bezier((_xy(segment.start), _xy(segment.end)))


def _xy(point: svgelements.Point) -> Point:
    return (float(point.x), float(point.y))


def _ellipse_arc(arc: svgelements.Arc) -> Iterator[Piece]:
    start, end = _xy(arc.start), _xy(arc.end)
    if start == end:
        return
    centre = _xy(arc.center)
    first = (float(arc.prx.x) - centre[0], float(arc.prx.y) - centre[1])
    second = (float(arc.pry.x) - centre[0], float(arc.pry.y) - centre[1])
    if math.hypot(*first) < 1e-12 or math.hypot(*second) < 1e-12:
        yield Bezier((start, end))
        return
    begin = _parameter(centre, first, second, start)
    sweep = float(arc.sweep)
    yield EllipseArc(centre, first, second, begin, sweep, start, end)


def _parameter(centre: Point, first: Point, second: Point, point: Point) -> float:
    """Return the parameter of a point: its coordinates in the two half diameters."""
    px, py = point[0] - centre[0], point[1] - centre[1]
    cross = first[0] * second[1] - first[1] * second[0]
    along = (px * second[1] - py * second[0]) / cross
    across = (first[0] * py - first[1] * px) / cross
    return math.atan2(across, along)
