"""Cross-sections of a flat panel: what stands on a line across it, and how thick."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import shapely

from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds, contours_of

_FLATNESS = 0.01
_THIN = 1e-6


@dataclass(frozen=True, slots=True)
class Strip:
    """A stretch of a cross-section, from ``low`` to ``high`` along the line, so thick; mm."""

    low: float
    high: float
    thickness: float

    @property
    def width(self) -> float:
        """How long the stretch is, mm."""
        return self.high - self.low


def cross_sections(
    region: Region,
    recesses: Sequence[tuple[Contour, float]],
    thickness: float,
    axis: str,
    stations: Sequence[float],
) -> tuple[tuple[Strip, ...], ...]:
    """Return the section at each station: a line across the panel at x (axis ``x``) or y.

    ``recesses`` are contours with their depth; where they overlap, the deeper one counts. Strips
    come in order; none where the line misses the panel. All in mm.
    """
    lines = _lines(region, axis, stations)
    solid = _cut(lines, _polygon(contours_of(region)), axis)
    hollows = [(_cut(lines, _polygon((each,)), axis), depth) for each, depth in recesses]
    return tuple(
        tuple(_strips(stretches, [(cut[index], depth) for cut, depth in hollows], thickness))
        for index, stretches in enumerate(solid)
    )


_Stretch = tuple[float, float]


def _polygon(contours: Iterable[Contour]) -> Any:
    outer, *openings = (points(each, _FLATNESS) for each in contours)
    made = shapely.Polygon(outer, openings)
    return made if shapely.is_valid(made) else shapely.make_valid(made)


def _lines(region: Region, axis: str, stations: Sequence[float]) -> list[Any]:
    box = bounds(region)
    if axis == "x":
        return [shapely.LineString([(at, box.y0 - 1), (at, box.y1 + 1)]) for at in stations]
    return [shapely.LineString([(box.x0 - 1, at), (box.x1 + 1, at)]) for at in stations]


def _cut(lines: Sequence[Any], polygon: Any, axis: str) -> list[list[_Stretch]]:
    """Return each line's stretches inside a polygon, in order."""
    shapely.prepare(polygon)
    ordinate = 1 if axis == "x" else 0
    found = []
    for piece in shapely.intersection(lines, polygon):
        parts = [each for each in shapely.get_parts(piece) if each.geom_type == "LineString"]
        ends = (sorted(point[ordinate] for point in each.coords) for each in parts)
        found.append(sorted((float(each[0]), float(each[-1])) for each in ends if each))
    return found


def _strips(
    solid: Sequence[_Stretch],
    hollows: Sequence[tuple[Sequence[_Stretch], float]],
    thickness: float,
) -> Iterator[Strip]:
    recessed = [(low, high, depth) for cut, depth in hollows for low, high in cut]
    for low, high in solid:
        inner = {end for a, b, _ in recessed for end in (a, b) if low < end < high}
        for start, end in pairwise(sorted({low, high} | inner)):
            middle = (start + end) / 2
            depth = max((d for a, b, d in recessed if a < middle < b), default=0.0)
            if end - start > _THIN and thickness - depth > _THIN:
                yield Strip(start, end, thickness - depth)
