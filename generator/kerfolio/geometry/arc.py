"""Circular arcs, and the edges (lines and arcs) a contour is made of."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from kerfolio.geometry.contour import Contour, Point, Vertex

_QUARTER = math.radians(97)
"""As far as a part of an arc turns that counts as a quarter."""


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular arc: centre and radius in mm, angles in radians, sweep positive when ccw."""

    centre: Point
    radius: float
    start: float
    sweep: float

    @property
    def quarters(self) -> int:
        """How many parts of about a quarter turn it has.

        Quarters, halves and whole turns have as many when they turn a few degrees more or less, as
        arcs do that follow a fit or a true cut.
        """
        return max(1, math.ceil(abs(self.sweep) / _QUARTER))

    def point(self, angle: float) -> Point:
        """Return the point of the circle at an angle in radians."""
        return (
            self.centre[0] + self.radius * math.cos(angle),
            self.centre[1] + self.radius * math.sin(angle),
        )

    def travel(self, point: Point) -> float:
        """Return how far along the arc a point's direction lies, radians, 0 to 2 pi."""
        angle = math.atan2(point[1] - self.centre[1], point[0] - self.centre[0])
        sign = 1.0 if self.sweep >= 0 else -1.0
        return (sign * (angle - self.start)) % math.tau

    def spans(self, point: Point, slack: float = 1e-6) -> bool:
        """Tell whether a point's direction lies within the arc, ``slack`` mm past its ends too."""
        travel, room = self.travel(point), slack / self.radius
        return travel <= abs(self.sweep) + room or travel >= math.tau - room

    def extremes(self) -> list[Point]:
        """Return the points of the arc that are leftmost, rightmost, highest or lowest of all."""
        (x, y), r = self.centre, self.radius
        quadrants = ((x + r, y), (x, y + r), (x - r, y), (x, y - r))
        return [each for each in quadrants if self.travel(each) <= abs(self.sweep)]


@dataclass(frozen=True, slots=True)
class Edge:
    """One straight or curved edge of a contour."""

    start: Point
    end: Point
    bulge: float = 0.0

    @property
    def arc(self) -> Arc | None:
        """The edge's arc, None when it is straight."""
        return arc_of(self.start, self.end, self.bulge) if self.bulge else None


def heading(edge: Edge, *, at_end: bool = False) -> Point:
    """Return the unit vector along an edge at its start or its end."""
    arc = edge.arc
    if not arc:
        size = math.dist(edge.start, edge.end)
        return ((edge.end[0] - edge.start[0]) / size, (edge.end[1] - edge.start[1]) / size)
    angle = arc.start + (arc.sweep if at_end else 0.0)
    sign = math.copysign(1.0, arc.sweep)
    return (-sign * math.sin(angle), sign * math.cos(angle))


@lru_cache(maxsize=16384)
def arc_of(start: Point, end: Point, bulge: float) -> Arc:
    """Return the arc of a bulge, tan(included angle / 4) (DXF reference, LWPOLYLINE code 42).

    Raises ZeroDivisionError for a bulge of 0 or ends that coincide.
    """
    dx, dy = end[0] - start[0], end[1] - start[1]
    chord = math.hypot(dx, dy)
    radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
    shift = (1 - bulge * bulge) / (4 * bulge)
    centre = ((start[0] + end[0]) / 2 - dy * shift, (start[1] + end[1]) / 2 + dx * shift)
    angle = math.atan2(start[1] - centre[1], start[0] - centre[0])
    return Arc(centre, radius, angle, 4 * math.atan(bulge))


def bulge_of(sweep: float) -> float:
    """Return the bulge of an arc that turns through ``sweep`` radians."""
    return math.tan(sweep / 4)


def edges(contour: Contour) -> Iterator[Edge]:
    """Yield the edges in order; edges of no length are left out."""
    vertices = contour.vertices
    count = len(vertices) if contour.closed else len(vertices) - 1
    for index in range(count):
        x, y, bulge = vertices[index]
        other = vertices[(index + 1) % len(vertices)]
        if (x, y) != other[:2]:
            yield Edge((x, y), (other[0], other[1]), bulge)


def reversed_contour(contour: Contour) -> Contour:
    """Return the same contour walked the other way round."""
    vertices = contour.vertices
    count = len(vertices)
    if not contour.closed and vertices:
        bulges = [*(-b if b else 0.0 for _, _, b in vertices[-2::-1]), 0.0]
        turned = zip(vertices[::-1], bulges, strict=True)
        return Contour(tuple((v[0], v[1], b) for v, b in turned), closed=False)
    result: list[Vertex] = []
    for index in range(count):
        x, y, _ = vertices[-index % count]
        bulge = vertices[(-index - 1) % count][2]
        result.append((x, y, -bulge if bulge else 0.0))
    return Contour(tuple(result))
