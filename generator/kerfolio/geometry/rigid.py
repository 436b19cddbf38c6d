"""Rigid placements in space: a right-handed frame and where its origin lies, mm."""

from __future__ import annotations

import math
from dataclasses import dataclass

Vector = tuple[float, float, float]
"""(x, y, z) in mm, or a direction."""

WAYS: dict[str, Vector] = {
    "right": (1.0, 0.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "front": (0.0, -1.0, 0.0),
    "up": (0.0, 0.0, 1.0),
    "down": (0.0, 0.0, -1.0),
}
"""World directions, as a person in front of the thing calls them."""


@dataclass(frozen=True, slots=True)
class Rigid:
    """A frame in another: its axes (unit, right-handed) and its origin, mm.

    As a map it takes a point of the frame to the other: origin + x a + y b + z c.
    """

    origin: Vector = (0.0, 0.0, 0.0)
    x: Vector = (1.0, 0.0, 0.0)
    y: Vector = (0.0, 1.0, 0.0)
    z: Vector = (0.0, 0.0, 1.0)

    def point(self, at: Vector) -> Vector:
        """Return where a point of the frame lies."""
        return added(self.origin, self.vector(at))

    def vector(self, along: Vector) -> Vector:
        """Return a direction of the frame, turned and not moved."""
        a, b, c = along
        (x0, x1, x2), (y0, y1, y2), (z0, z1, z2) = self.x, self.y, self.z
        return (
            x0 * a + y0 * b + z0 * c,
            x1 * a + y1 * b + z1 * c,
            x2 * a + y2 * b + z2 * c,
        )

    def after(self, inner: Rigid) -> Rigid:
        """Return the placement that applies ``inner`` first and this one to the result."""
        return Rigid(
            self.point(inner.origin),
            self.vector(inner.x),
            self.vector(inner.y),
            self.vector(inner.z),
        )

    @property
    def inverse(self) -> Rigid:
        """The placement that undoes this one."""
        x, y, z = zip(self.x, self.y, self.z, strict=True)
        back = Rigid((0.0, 0.0, 0.0), x, y, z)
        return Rigid(scaled(back.vector(self.origin), -1.0), x, y, z)

    def moved(self, by: Vector) -> Rigid:
        """Return the placement moved in the outer frame, mm."""
        return Rigid(added(self.origin, by), self.x, self.y, self.z)


HERE = Rigid()
"""Where the frame is the other one itself."""


def added(a: Vector, b: Vector) -> Vector:
    """Return a + b."""
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def between(a: Vector, b: Vector) -> Vector:
    """Return the way from a to b."""
    return (b[0] - a[0], b[1] - a[1], b[2] - a[2])


def scaled(a: Vector, by: float) -> Vector:
    """Return a vector made longer by a factor."""
    return (a[0] * by, a[1] * by, a[2] * by)


def dot(a: Vector, b: Vector) -> float:
    """Return the scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """Return the vector product, right-handed."""
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


def length(a: Vector) -> float:
    """Return how long a vector is."""
    return math.sqrt(dot(a, a))
