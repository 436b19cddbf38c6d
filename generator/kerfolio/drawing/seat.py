"""Where a part's own frame lies in a drawing: scaled, turned, moved."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.transform import S, moved, scaled, turned, turned_point


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """Scaled about 0,0, then turned ``turn`` degrees counter-clockwise, then moved by x, y."""

    x: float = 0.0
    y: float = 0.0
    turn: float = 0.0
    scale: float = 1.0

    def point(self, point: Point) -> Point:
        """Return where a point of the part lies in the drawing."""
        x, y = turned_point((point[0] * self.scale, point[1] * self.scale), self.turn)
        return x + self.x, y + self.y

    def contour(self, contour: Contour) -> Contour:
        """Return the contour in the drawing."""
        return self._placed(contour)

    def region(self, region: Region) -> Region:
        """Return the region in the drawing."""
        return self._placed(region)

    def _placed(self, shape: S) -> S:
        return moved(turned(scaled(shape, self.scale), self.turn), self.x, self.y)
