"""Where the picture plane of a view lies on paper."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.drawing.lettering import Box
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View


@dataclass(frozen=True, slots=True)
class PaperSeat:
    """A view scaled and then moved by x, y: mm of the world become mm of paper."""

    view: View
    scale: float
    x: float = 0.0
    y: float = 0.0

    def flat(self, spot: Point) -> Point:
        """Return where a point of the picture plane lies on paper."""
        return spot[0] * self.scale + self.x, spot[1] * self.scale + self.y

    def spot(self, at: Vector) -> Point:
        """Return where a point of the world lies on paper."""
        return self.flat(self.view.spot(at))

    def way(self, along: Vector) -> Point:
        """Return a direction of the world on paper, with its length."""
        across, up = self.view.spot(along)
        return across * self.scale, up * self.scale

    def path(self, points: Iterable[Point]) -> Contour:
        """Return points of the picture plane as a path on paper, closed if it ends at its start."""
        placed = [self.flat(point) for point in points]
        closed = len(placed) > 3 and placed[0] == placed[-1]
        return Contour(tuple((x, y, 0.0) for x, y in placed[: -1 if closed else None]), closed)


def fitted(view: View, box: Box, room: Box, most: float = 1.0) -> PaperSeat:
    """Return the seat that centres a box of the picture plane in a room, no larger than life."""
    wide, high = box[2] - box[0], box[3] - box[1]
    scale = min((room[2] - room[0]) / wide, (room[3] - room[1]) / high, most)
    x = (room[0] + room[2] - scale * (box[0] + box[2])) / 2
    y = (room[1] + room[3] - scale * (box[1] + box[3])) / 2
    return PaperSeat(view, scale, x, y)
