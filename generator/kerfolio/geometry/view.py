"""Where the eye stands: parallel projections of space on to a picture."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Vector, cross, dot


@dataclass(frozen=True, slots=True)
class View:
    """A parallel projection of the world (x right, y back, z up), angles in degrees.

    Azimuth 0 stands in front and looks along +y, 90 stands on the right; elevation is how far
    above the level the eye stands, below 0 it looks up from below. Within +-89, so that a level
    line of the picture is a level line of the world.
    """

    azimuth: float
    elevation: float

    @property
    def right(self) -> Vector:
        """The direction to the picture's right, unit."""
        turn = radians(self.azimuth)
        return (cos(turn), sin(turn), 0.0)

    @property
    def to_viewer(self) -> Vector:
        """The direction from the scene to the eye, unit."""
        turn, rise = radians(self.azimuth), radians(self.elevation)
        return (sin(turn) * cos(rise), -cos(turn) * cos(rise), sin(rise))

    @property
    def up(self) -> Vector:
        """The direction to the picture's top, unit."""
        return cross(self.to_viewer, self.right)

    @property
    def from_below(self) -> bool:
        """Whether the eye looks up from below."""
        return self.elevation < 0

    def spot(self, at: Vector) -> Point:
        """Return where a point of the world lies in the picture, mm of the world."""
        return dot(at, self.right), dot(at, self.up)

    def depth(self, at: Vector) -> float:
        """Return how near a point lies to the eye, mm; greater is nearer."""
        return dot(at, self.to_viewer)
