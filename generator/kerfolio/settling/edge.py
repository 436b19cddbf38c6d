"""Edges of a part that tabs, notches and fingers are measured along."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

from kerfolio.basis.tolerance import NOISE
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds, point_in
from kerfolio.geometry.shapes import polygon
from kerfolio.model.feature import EdgeLine
from kerfolio.settling.scope import Scope, unsettled

_PROBE = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeFrame:
    """A frame on an edge: s runs along it, h outward; both in mm from ``origin``.

    ``first`` and ``last`` are where the edge begins and ends along s.
    """

    origin: Point
    along: Point
    outward: Point
    first: float
    last: float

    @property
    def ruler(self) -> tuple[Point, Point]:
        """Where distances along the edge begin, and the end of the edge."""
        return self.origin, self.point(self.last, 0.0)

    def point(self, s: float, h: float) -> Point:
        """Return the point at s along the edge and h outward of it."""
        return (
            self.origin[0] + s * self.along[0] + h * self.outward[0],
            self.origin[1] + s * self.along[1] + h * self.outward[1],
        )

    def measured(self, point: Point) -> tuple[float, float]:
        """Return how far along the edge and how far outward of it a point lies."""
        x, y = point[0] - self.origin[0], point[1] - self.origin[1]
        out, along = self.outward, self.along
        return x * along[0] + y * along[1], x * out[0] + y * out[1]

    def box(self, s0: float, s1: float, h0: float, h1: float, round: float = 0.0) -> Contour:
        """Return the rectangle between two distances along and two outward.

        ``round`` is the radius of its two outer corners. Raises ShapeError where it does not fit.
        """
        corners = ((s0, h0, 0.0), (s1, h0, 0.0), (s1, h1, round), (s0, h1, round))
        return polygon([(*self.point(s, h), radius) for s, h, radius in corners])


def edge_frame(line: EdgeLine, outline: Contour, scope: Scope) -> EdgeFrame:
    """Return the frame of a stated edge of an outline. Raises SettlingError."""
    return _named(line.side, outline) if line.side else _between(line, outline, scope)


def _named(side: str, outline: Contour) -> EdgeFrame:
    box = bounds(outline)
    upright = side in ("left", "right")
    level = {"top": box.y1, "bottom": box.y0, "left": box.x0, "right": box.x1}[side]
    sign = 1.0 if side in ("top", "right") else -1.0
    reach = _reach(outline, level, 0 if upright else 1)
    first, last = reach or ((box.y0, box.y1) if upright else (box.x0, box.x1))
    return EdgeFrame(
        origin=(level, 0.0) if upright else (0.0, level),
        along=(0.0, 1.0) if upright else (1.0, 0.0),
        outward=(sign, 0.0) if upright else (0.0, sign),
        first=first,
        last=last,
    )


def _reach(outline: Contour, level: float, axis: int) -> tuple[float, float] | None:
    """Return from where to where an outline runs straight along its box's side, else None."""
    on = [v[1 - axis] for v in outline.vertices if abs(v[axis] - level) < NOISE]
    return (min(on), max(on)) if len(on) > 1 else None


def _between(line: EdgeLine, outline: Contour, scope: Scope) -> EdgeFrame:
    assert line.start is not None, "an edge has a side or two points"
    assert line.end is not None, "an edge has a side or two points"
    start, end = scope.point(line.start), scope.point(line.end)
    size = dist(start, end)
    if size < NOISE:
        raise unsettled("no-edge", "an edge from a point to itself", line.place)
    along = ((end[0] - start[0]) / size, (end[1] - start[1]) / size)
    outward = (along[1] + 0.0, 0.0 - along[0])
    frame = EdgeFrame(origin=start, along=along, outward=outward, first=0.0, last=size)
    if point_in(outline, frame.point(size / 2, _PROBE)):
        outward = (0.0 - along[1], along[0] + 0.0)
        frame = EdgeFrame(origin=start, along=along, outward=outward, first=0.0, last=size)
    return frame
