"""PDF path operators: numbers, contours of lines and arcs, drawn and filled."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from functools import cache

from kerfolio.basis.colour import rgb
from kerfolio.basis.digits import digits
from kerfolio.drawing.palette import Palette
from kerfolio.drawing.vocabulary import Stroke
from kerfolio.geometry.arc import Arc, edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.writing.typeface import MM_PER_POINT

CURVE_ERROR = 0.0005
"""Farthest that a drawn curve may stray from its circle, in mm on paper."""

Place = Callable[[Point], str]
"""From a drawing's mm to two numbers of the page, in points."""

_DECIMALS = 6


def number(value: float) -> str:
    """Return a number of the page stream: at most six decimals, none trailing."""
    return digits(value, _DECIMALS)


def points(mm: float) -> str:
    """Return a length in mm as a number of points, of four decimals at most."""
    return digits(mm / MM_PER_POINT)


def spot(point: Point) -> str:
    """Return a point of the page, mm, as two numbers in points."""
    return f"{points(point[0])} {points(point[1])}"


@cache
def colour(shade: str, operator: str) -> str:
    """Set the colour ``#rrggbb`` of fills (``rg``) or lines (``RG``)."""
    return " ".join(number(channel / 255) for channel in rgb(shade)) + f" {operator}"


def quarter_error(sweep: float) -> float:
    """Return how far the usual cubic strays from an arc of radius 1 that turns ``sweep`` radians.

    With handles of 4/3 tan(sweep/4) the greatest error is (2/27) sin^6(a) / cos^2(a), a = sweep/4
    (M. Goldapp, Approximation of circular arcs by cubic polynomials, 1991; from memory, and
    measured in the tests).
    """
    quarter = abs(sweep) / 4
    return 2 / 27 * math.sin(quarter) ** 6 / math.cos(quarter) ** 2


def _pieces(arc: Arc, scale: float) -> int:
    count = arc.quarters
    while arc.radius * scale * quarter_error(arc.sweep / count) > CURVE_ERROR:
        count += 1
    return count


def _curves(arc: Arc, end: Point, scale: float, place: Place) -> Iterator[str]:
    """Yield cubics along the arc; the last ends on the edge's own end, so that nothing drifts."""
    count = _pieces(arc, scale)
    turn = arc.sweep / count
    handle = 4 / 3 * math.tan(turn / 4) * arc.radius
    for index in range(count):
        a, b = arc.start + index * turn, arc.start + (index + 1) * turn
        p, q = arc.point(a), (end if index == count - 1 else arc.point(b))
        first = (p[0] - handle * math.sin(a), p[1] + handle * math.cos(a))
        second = (q[0] + handle * math.sin(b), q[1] - handle * math.cos(b))
        yield " ".join(map(place, (first, second, q))) + " c"


def contour_path(contour: Contour, scale: float, place: Place) -> Iterator[str]:
    """Yield the operators that lay a contour as the current path."""
    first = contour.vertices[0]
    yield place((first[0], first[1])) + " m"
    for edge in edges(contour):
        arc = edge.arc
        if arc is not None:
            yield from _curves(arc, edge.end, scale, place)
        elif not (contour.closed and edge.end == first[:2]):  # closing draws the last line
            yield place(edge.end) + " l"
    if contour.closed:
        yield "h"


def dashed(dash: tuple[float, ...]) -> str:
    """Return the operator for a dash pattern in mm; an empty one is a whole line."""
    return "[" + " ".join(points(each) for each in dash) + "] 0 d"


def stroke_path(stroke: Stroke, scale: float, place: Place, palette: Palette) -> Iterator[str]:
    """Yield the operators that draw a stroke: filled even-odd, then lined, with its dashes."""
    if stroke.fill is None and stroke.width is None:
        return
    if stroke.fill is not None:
        yield colour(palette[stroke.fill], "rg")
    if stroke.width is not None:
        yield f"{colour(palette[stroke.ink], 'RG')} {points(stroke.width)} w {dashed(stroke.dash)}"
    for contour in (stroke.contour, *stroke.holes):
        if contour.vertices:
            yield " ".join(contour_path(contour, scale, place))
    yield {(True, True): "B*", (True, False): "f*", (False, True): "S"}[
        stroke.fill is not None, stroke.width is not None
    ]
