"""A router of known faults: what it cuts where it is told a contour. Only shapely cuts here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

import shapely

from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points

Spot = tuple[float, float]


@dataclass(frozen=True, kw_only=True)
class Machine:
    """What its program believes the cutter to be, what it is, and what its axes do.

    ``long`` is by how much a millimetre told is too long in x and in y; ``play`` is what is lost
    where an axis turns round, mm.
    """

    told: float
    cuts: float
    long: Spot = (0.0, 0.0)
    play: float = 0.0

    def believing(self, told: float) -> Machine:
        """Return the machine with another diameter in its program."""
        return replace(self, told=told)

    def cut(self, region: Region) -> shapely.Polygon:
        """Return the piece that comes off it."""
        outline = _solid(region.outer)
        piece = shapely.Polygon(self._run(shapely.buffer(outline, self.told / 2)))
        piece = piece.difference(self._kerf(shapely.buffer(outline, self.told / 2)))
        for opening in region.openings:
            path = shapely.buffer(_solid(opening), -self.told / 2 + 1e-6)
            piece = piece.difference(shapely.Polygon(self._run(path)).union(self._kerf(path)))
        return piece

    def _kerf(self, path: shapely.Polygon) -> shapely.Geometry:
        return shapely.buffer(shapely.LineString(self._run(path)), self.cuts / 2, quad_segs=64)

    def _run(self, path: shapely.Polygon) -> list[Spot]:
        """Return where the cutter's middle goes, the second time round."""
        ring = [(x * (1 + self.long[0]), y * (1 + self.long[1])) for x, y in path.exterior.coords]
        axes = (_lagging(axis, self.play) for axis in zip(*ring * 2, strict=True))
        return list(zip(*axes, strict=True))[len(ring) :]


def _lagging(told: Iterable[float], play: float) -> Iterator[float]:
    """Yield where an axis is that follows only when its play is taken up."""
    here: float | None = None
    for there in told:
        here = there if here is None else min(max(here, there - play / 2), there + play / 2)
        yield here


def _solid(contour: Contour) -> shapely.Polygon:
    return shapely.Polygon(points(contour, 0.001))


def across(shape: shapely.Geometry, spot: Spot, axis: int) -> float:
    """Return how far a shape reaches at a spot in x (axis 0) or y, mm."""
    (x, y), far = spot, 2000.0
    ends = [(x - far, y), (x + far, y)] if axis == 0 else [(x, y - far), (x, y + far)]
    found = shapely.get_parts(shapely.intersection(shapely.LineString(ends), shape))
    return float(sum(each.length for each in found if each.distance(shapely.Point(spot)) < 0.01))


def gap(piece: shapely.Polygon, spot: Spot, axis: int) -> float:
    """Return how wide what is cut out of a piece is at a spot, mm."""
    return across(shapely.buffer(piece, 50.0).buffer(-50.0).difference(piece), spot, axis)
