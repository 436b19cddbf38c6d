"""The straight stretches of a contour that keep clear of shapes beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist
from typing import Any

import shapely

from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import edge_length

_BESIDE = 0.05
"""What lies this near a shape, mm, lies on it."""


@dataclass(frozen=True, slots=True)
class StraightRun:
    """A straight stretch from ``start`` to ``end``, as its contour runs.

    ``begins`` is how far along the contour it begins, mm.
    """

    start: Point
    end: Point
    begins: float

    @property
    def length(self) -> float:
        """Its length in mm."""
        return dist(self.start, self.end)

    @property
    def direction(self) -> Point:
        """The unit vector along it."""
        (x0, y0), (x1, y1) = self.start, self.end
        return ((x1 - x0) / self.length, (y1 - y0) / self.length)

    def point(self, along: float) -> Point:
        """Return the point so many mm from its start."""
        (x, y), (ux, uy) = self.start, self.direction
        return (x + along * ux, y + along * uy)


Beside = Any
"""The area that some shapes take up, made once for many questions."""


def beside(shapes: Sequence[Contour]) -> Beside:
    """Return the area of shapes, grown so that what runs along them lies in it."""
    return shapely.union_all([_grown(shapely.Polygon(points(each))) for each in shapes])


def straight_runs(contour: Contour, taken: Beside, ends: float) -> tuple[StraightRun, ...]:
    """Return the straight stretches of a contour outside an area, each shortened at both ends.

    ``ends`` in mm is kept from corners, curves and the area alike.
    """
    found, walked = [], 0.0
    for edge in edges(contour):
        if not edge.bulge:
            whole = StraightRun(edge.start, edge.end, walked)
            for first, last in _outside(edge, taken):
                if last - first > 2 * ends:
                    begin, end = first + ends, last - ends
                    found.append(StraightRun(whole.point(begin), whole.point(end), walked + begin))
        walked += edge_length(edge)
    return tuple(found)


def _grown(shape: shapely.Polygon) -> shapely.Geometry:
    """Return a shape grown by a hair; its corners stay corners."""
    return shapely.buffer(shape, _BESIDE, join_style="mitre")


def _outside(edge: Edge, taken: Beside) -> Iterator[tuple[float, float]]:
    """Yield from where to where an edge lies outside, mm from its start."""
    line = shapely.LineString([edge.start, edge.end])
    for part in shapely.get_parts(shapely.difference(line, taken)):
        ends = sorted(dist(edge.start, each) for each in part.coords)
        if ends:
            yield ends[0], ends[-1]
