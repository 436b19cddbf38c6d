"""Areas, lengths, boxes and centres of contours and regions, exact for arcs."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from kerfolio.geometry.arc import Arc, Edge, edges
from kerfolio.geometry.contour import Contour, Point, Region

Shape = Contour | Region


@dataclass(frozen=True, slots=True)
class Box:
    """An upright box in mm."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        """Extent along x, mm."""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """Extent along y, mm."""
        return self.y1 - self.y0

    @property
    def centre(self) -> Point:
        """The middle of the box."""
        return ((self.x0 + self.x1) / 2, (self.y0 + self.y1) / 2)


def contours_of(shape: Shape) -> tuple[Contour, ...]:
    """Return the contours of a shape, the outer one first."""
    return (shape.outer, *shape.openings) if isinstance(shape, Region) else (shape,)


def area(shape: Shape) -> float:
    """Return the enclosed area in mm2, without the openings."""
    first, *openings = contours_of(shape)
    return abs(signed_area(first)) - math.fsum(abs(signed_area(each)) for each in openings)


def signed_area(contour: Contour) -> float:
    """Return the area in mm2, positive when the contour runs counter-clockwise.

    Shoelace formula, plus the circular segment r2/2 (a - sin a) of every arc.
    """
    total = 0.0
    base = contour.vertices[0] if contour.vertices else (0.0, 0.0, 0.0)
    for edge in edges(contour):
        total += _cross(edge, base[0], base[1]) / 2 + _segment_area(edge.arc)
    return total


def _cross(edge: Edge, x: float, y: float) -> float:
    return (edge.start[0] - x) * (edge.end[1] - y) - (edge.end[0] - x) * (edge.start[1] - y)


def _segment_area(arc: Arc | None) -> float:
    return arc.radius**2 / 2 * (arc.sweep - math.sin(arc.sweep)) if arc else 0.0


def length(shape: Shape) -> float:
    """Return the length of all edges, openings included, mm."""
    return math.fsum(edge_length(edge) for each in contours_of(shape) for edge in edges(each))


def edge_length(edge: Edge) -> float:
    """Return the length of an edge, along its arc where it has one, mm."""
    arc = edge.arc
    return abs(arc.sweep) * arc.radius if arc else math.dist(edge.start, edge.end)


def bounds(shape: Shape) -> Box:
    """Return the box around a shape, arcs taken exactly; ValueError for a shape of no vertex."""
    return _bounds(contours_of(shape)[0])


@lru_cache(maxsize=16384)
def _bounds(outer: Contour) -> Box:
    found = [(x, y) for x, y, _ in outer.vertices]
    for edge in edges(outer):
        found.extend(edge.arc.extremes() if edge.arc else ())
    xs, ys = [x for x, _ in found], [y for _, y in found]
    return Box(min(xs), min(ys), max(xs), max(ys))


def centroid(shape: Shape) -> Point:
    """Return the centre of the area, mm; ZeroDivisionError when the shape has no area."""
    total = moment_x = moment_y = 0.0
    base = contours_of(shape)[0].vertices[0]
    for index, contour in enumerate(contours_of(shape)):
        one_area, mx, my = _moments(contour, base[0], base[1])
        sign = math.copysign(1.0, one_area) * (1 if index == 0 else -1)
        total, moment_x, moment_y = (
            total + sign * one_area,
            moment_x + sign * mx,
            moment_y + sign * my,
        )
    return (base[0] + moment_x / total, base[1] + moment_y / total)


def _moments(contour: Contour, x: float, y: float) -> tuple[float, float, float]:
    """Return area and first moments about (x, y); an arc's segment adds 2/3 r3 sin3(a/2)."""
    total = mx = my = 0.0
    for edge in edges(contour):
        cross = _cross(edge, x, y)
        total += cross / 2
        mx += cross * (edge.start[0] + edge.end[0] - 2 * x) / 6
        my += cross * (edge.start[1] + edge.end[1] - 2 * y) / 6
        arc = edge.arc
        if arc:
            segment = _segment_area(arc)
            middle = arc.start + arc.sweep / 2
            pull = 2 / 3 * arc.radius**3 * math.sin(arc.sweep / 2) ** 3
            total += segment
            mx += segment * (arc.centre[0] - x) + pull * math.cos(middle)
            my += segment * (arc.centre[1] - y) + pull * math.sin(middle)
    return total, mx, my


def point_in(shape: Shape, point: Point) -> bool:
    """Tell whether a point lies inside, arcs taken exactly; on an edge it may go either way."""
    first, *openings = contours_of(shape)
    if not _winds(first, point):
        return False
    return not any(_winds(each, point) for each in openings)


def _winds(contour: Contour, point: Point) -> bool:
    """Tell whether a contour winds round a point: its chords' winding, and its arcs' segments."""
    turns = 0
    for edge in edges(contour):
        side = _side(edge, point)
        if edge.start[1] <= point[1] < edge.end[1] and side > 0:
            turns += 1
        elif edge.end[1] <= point[1] < edge.start[1] and side < 0:
            turns -= 1
        arc = edge.arc
        if arc and side * arc.sweep < 0 and math.dist(arc.centre, point) < arc.radius:
            turns += 1 if arc.sweep > 0 else -1
    return turns != 0


def _side(edge: Edge, point: Point) -> float:
    """Return a positive number left of an edge; on its line the point is nudged right, then up.

    The same nudge is made by the half-open comparison of heights, so no point is counted twice.
    """
    nudged = edge.start[1] - edge.end[1] or edge.end[0] - edge.start[0]
    return _cross(edge, point[0], point[1]) or nudged
