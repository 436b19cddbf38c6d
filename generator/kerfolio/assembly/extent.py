"""How far posed pieces reach: their corners in the world, and their boxes square to a way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.geometry.panel_mesh import panel_mesh, volume_and_centre
from kerfolio.geometry.rigid import Vector, between, cross, dot, length, scaled

_TOUCH = 1e-6
"""Boxes that share no more than this, mm, only touch."""

Reach = tuple[float, float]
"""(least, greatest) along a direction, mm."""


def corners(piece: PosedPiece) -> tuple[Vector, ...]:
    """Return the corners of both faces' outer edges in the world, mm."""
    pose, heights = piece.pose, (0.0, piece.panel.thickness)
    (ox, oy, oz), (x0, x1, x2), (y0, y1, y2), (z0, z1, z2) = pose.origin, pose.x, pose.y, pose.z
    # written out, as ``pose.point`` does it: of a large plan tens of thousands are asked for
    return tuple(
        (
            ox + (x0 * x + y0 * y + z0 * z),
            oy + (x1 * x + y1 * y + z1 * z),
            oz + (x2 * x + y2 * y + z2 * z),
        )
        for x, y in piece.panel.shape.outer
        for z in heights
    )


Box = tuple[Vector, Vector]
"""The least and the greatest corner of a box along the axes of the world, mm."""


def box_of(points: Iterable[Vector]) -> Box:
    """Return the box around points, at least one."""
    xs, ys, zs = zip(*points, strict=True)
    return (min(xs), min(ys), min(zs)), (max(xs), max(ys), max(zs))


def box_around(pieces: Iterable[PosedPiece]) -> Box:
    """Return the box around pieces, at least one."""
    return box_of(corner for each in pieces for corner in corners(each))


def size_of(box: Box) -> Vector:
    """Return how wide, deep and high a box is, mm."""
    return between(*box)


def centre(piece: PosedPiece) -> Vector:
    """Return the middle of a piece's mass in the world, mm; recesses are taken off."""
    _, middle = volume_and_centre(panel_mesh(piece.panel))
    return piece.pose.point(middle)


def reach(points: Iterable[Vector], way: Vector) -> Reach:
    """Return how far points reach along a unit vector, mm from the world's origin."""
    found = [dot(point, way) for point in points]
    return min(found), max(found)


@dataclass(frozen=True, slots=True)
class Extent:
    """A box square to a way: its reach along the way, and along two lines across it, mm."""

    along: Reach
    across: tuple[Reach, Reach]

    def may_hit(self, other: Extent) -> bool:
        """Tell whether this box, moving on along the way, runs into the other; a touch is none."""
        if self.along[0] >= other.along[1] - _TOUCH:
            return False
        return all(_overlap(a, b) for a, b in zip(self.across, other.across, strict=True))

    def meets(self, other: Extent) -> bool:
        """Tell whether the boxes share space; a touch is none."""
        return _overlap(self.along, other.along) and all(
            _overlap(a, b) for a, b in zip(self.across, other.across, strict=True)
        )

    def along_by(self, more: float) -> Extent:
        """Return the box moved along the way, mm."""
        return Extent((self.along[0] + more, self.along[1] + more), self.across)


def extents(pieces: Sequence[PosedPiece], way: Vector) -> tuple[Extent, ...]:
    """Return the boxes of pieces square to a way (unit)."""
    first, second = _across(way)
    return tuple(
        Extent(reach(points, way), (reach(points, first), reach(points, second)))
        for points in map(corners, pieces)
    )


def _overlap(one: Reach, other: Reach) -> bool:
    return min(one[1], other[1]) - max(one[0], other[0]) > _TOUCH


def _across(way: Vector) -> tuple[Vector, Vector]:
    """Return two unit vectors square to a way and to each other."""
    least = min(range(3), key=lambda index: (abs(way[index]), index))
    axes: tuple[Vector, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    raw = cross(way, axes[least])
    first = scaled(raw, 1 / length(raw))
    return first, cross(way, first)
