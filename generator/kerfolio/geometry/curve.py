"""Curves as lines and arcs: Bezier curves in chords, elliptic arcs as circular where they are."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.geometry.affine import Affine, mapped, mapped_vector
from kerfolio.geometry.arc import bulge_of
from kerfolio.geometry.contour import Point, Vertex

TOLERANCE = 0.01
"""Chords stay this close to their curve, mm."""

_MOST_CHORDS = 20_000


@dataclass(frozen=True, slots=True)
class Bezier:
    """A line (2 points), quadratic (3) or cubic (4) Bezier curve."""

    points: tuple[Point, ...]

    @property
    def numbers(self) -> tuple[float, ...]:
        """Every number it is stated by."""
        return tuple(number for point in self.points for number in point)

    @property
    def start(self) -> Point:
        """Where the curve begins."""
        return self.points[0]

    @property
    def end(self) -> Point:
        """Where the curve ends."""
        return self.points[-1]

    def mapped(self, affine: Affine) -> Bezier:
        """Return the curve's image."""
        return Bezier(tuple(mapped(affine, p) for p in self.points))

    def vertices(self, tolerance: float = TOLERANCE) -> list[Vertex]:
        """Return the start vertex and those between, the end left out; chords in tolerance."""
        count = self._chords(tolerance)
        inner = (_bezier_point(self.points, k / count) for k in range(1, count))
        return [(*p, 0.0) for p in (self.start, *inner)]

    def _chords(self, tolerance: float) -> int:
        """Return a chord count that surely keeps the tolerance.

        Between equal parameter steps h a curve strays at most h2/8 max |B''| from its chord, and
        |B''| is at most n (n - 1) times the largest second difference of the control points.
        """
        degree = len(self.points) - 1
        bends = [
            math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1])
            for p, q, r in zip(self.points, self.points[1:], self.points[2:], strict=False)
        ]
        most = degree * (degree - 1) * max(bends, default=0.0)
        return min(_MOST_CHORDS, max(1, math.ceil(math.sqrt(most / 8 / tolerance) - 1e-9)))


def _bezier_point(points: Sequence[Point], t: float) -> Point:
    """Return a curve's point by de Casteljau's construction."""
    while len(points) > 1:
        points = [
            ((1 - t) * p[0] + t * q[0], (1 - t) * p[1] + t * q[1]) for p, q in pairwise(points)
        ]
    return points[0]


@dataclass(frozen=True, slots=True)
class EllipseArc:
    """The points centre + cos(t) first + sin(t) second, t from ``begin`` over ``sweep`` radians.

    ``first`` and ``second`` are conjugate half diameters, so any affine image is of this form.
    ``start`` and ``end`` are kept as given, to meet their neighbours exactly.
    """

    centre: Point
    first: Point
    second: Point
    begin: float
    sweep: float
    start: Point
    end: Point

    @property
    def numbers(self) -> tuple[float, ...]:
        """Every number it is stated by."""
        places = (self.centre, self.first, self.second, self.start, self.end)
        return (self.begin, self.sweep, *(number for place in places for number in place))

    def mapped(self, affine: Affine) -> EllipseArc:
        """Return the arc's image."""
        return EllipseArc(
            mapped(affine, self.centre),
            mapped_vector(affine, self.first),
            mapped_vector(affine, self.second),
            self.begin,
            self.sweep,
            mapped(affine, self.start),
            mapped(affine, self.end),
        )

    def point(self, t: float) -> Point:
        """Return the point at parameter ``t``."""
        (x, y), (ux, uy), (vx, vy) = self.centre, self.first, self.second
        cos, sin = math.cos(t), math.sin(t)
        return (x + cos * ux + sin * vx, y + cos * uy + sin * vy)

    @property
    def is_circular(self) -> bool:
        """Whether it is part of a circle, to 1e-7 of its size."""
        (ux, uy), (vx, vy) = self.first, self.second
        a, b = math.hypot(ux, uy), math.hypot(vx, vy)
        slack = 1e-7 * max(a, b)
        return abs(a - b) <= slack and abs(ux * vx + uy * vy) <= slack * max(a, b)

    def vertices(self, tolerance: float = TOLERANCE) -> list[Vertex]:
        """Return the start vertex and those between, the end left out; a circle keeps its arc."""
        if self.is_circular:
            return self._arcs()
        # The chord of an affine image of the unit circle strays at most the sagitta x the scale.
        reach = math.hypot(*self.first) + math.hypot(*self.second)
        step = 2 * math.acos(1 - min(1.0, tolerance / reach))
        count = min(_MOST_CHORDS, max(1, math.ceil(abs(self.sweep) / step - 1e-9)))
        inner = (self.point(self.begin + self.sweep * k / count) for k in range(1, count))
        return [(*p, 0.0) for p in (self.start, *inner)]

    def _arcs(self) -> list[Vertex]:
        """Return one arc, two from half a turn on, so that no bulge grows out of hand."""
        mirrored = self.first[0] * self.second[1] < self.first[1] * self.second[0]
        turn = -self.sweep if mirrored else self.sweep
        if abs(turn) <= math.pi + 1e-9:
            return [(*self.start, bulge_of(turn))]
        middle = self.point(self.begin + self.sweep / 2)
        return [(*self.start, bulge_of(turn / 2)), (*middle, bulge_of(turn / 2))]


Piece = Bezier | EllipseArc
