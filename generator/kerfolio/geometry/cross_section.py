"""Cross-sections of a flat panel: what stands on a line across it, and how thick."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Any, NamedTuple

import shapely

from kerfolio.basis.keeper import kept
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds, contours_of

_FLATNESS = 0.01
_THIN = 1e-6


class Strip(NamedTuple):
    """A stretch of a cross-section, from ``low`` to ``high`` along the line, so thick; mm."""

    low: float
    high: float
    thickness: float

    @property
    def width(self) -> float:
        """How long the stretch is, mm."""
        return self.high - self.low


@lru_cache(maxsize=256)  # of a plan that is being written most parts stay as they are
def cross_sections(
    region: Region,
    recesses: tuple[tuple[Contour, float], ...],
    thickness: float,
    axis: str,
    stations: tuple[float, ...],
) -> tuple[tuple[Strip, ...], ...]:
    """Return the section at each station: a line across the panel at x (axis ``x``) or y.

    ``recesses`` are contours with their depth; where they overlap, the deeper one counts. Strips
    come in order; none where the line misses the panel. All in mm.
    """
    return kept(_cut_at, region, recesses, thickness, axis, stations)


def _cut_at(
    region: Region,
    recesses: tuple[tuple[Contour, float], ...],
    thickness: float,
    axis: str,
    stations: tuple[float, ...],
) -> tuple[tuple[Strip, ...], ...]:
    lines = _lines(region, axis, stations)
    solid = _cut(lines, _polygon(contours_of(region)), axis)
    hollows = [(_cut(lines, _polygon((each,)), axis), depth) for each, depth in recesses]
    return tuple(
        tuple(_strips(stretches, [(cut[index], depth) for cut, depth in hollows], thickness))
        for index, stretches in enumerate(solid)
    )


def between(strips: Iterable[Strip], low: float, high: float) -> tuple[Strip, ...]:
    """Return what of a section lies between two heights along its line, mm."""
    clipped = (Strip(max(each.low, low), min(each.high, high), each.thickness) for each in strips)
    return tuple(each for each in clipped if each.width > _THIN)


def squared(
    sections: Sequence[tuple[Strip, ...]], stations: Sequence[float]
) -> tuple[tuple[Strip, ...], ...]:
    """Return sections with every strip as wide as the panel is there square to its own run.

    A line across a slanting limb cuts it wider than it is. The true width at a place is the least
    way from one side of its run to the other, never more than the width on the line. ``stations``
    are the places of the sections along the panel, mm.
    """
    runs = [_merged(each) for each in sections]
    found: list[tuple[Strip, ...]] = []
    start = 0
    for index in range(1, len(runs) + 1):
        if index == len(runs) or not _go_on(runs[index - 1], runs[index]):
            shares = _true_shares(runs[start:index], stations[start:index])
            pairs = zip(sections[start:index], runs[start:index], shares, strict=True)
            found += [_narrowed(*each) for each in pairs]
            start = index
    return tuple(found)


def _merged(strips: Sequence[Strip]) -> list[_Stretch]:
    """Return stretches of wood, strips of several thicknesses side by side as one."""
    found: list[_Stretch] = []
    for each in strips:
        if found and each.low - found[-1][1] < _THIN:
            found[-1] = (found[-1][0], each.high)
        else:
            found.append((each.low, each.high))
    return found


def _go_on(one: Sequence[_Stretch], other: Sequence[_Stretch]) -> bool:
    """Tell whether the stretches of one station are the same limbs as those of the next."""
    return len(one) == len(other) and all(
        a[0] < b[1] and b[0] < a[1] for a, b in zip(one, other, strict=True)
    )


def _true_shares(
    runs: Sequence[Sequence[_Stretch]], stations: Sequence[float]
) -> list[list[float]]:
    """Return for each station the true width of each limb over the one on the line."""
    shares: list[list[float]] = [[] for _ in runs]
    for limb in range(len(runs[0])):
        sides = [
            [(each[limb][end], at) for each, at in zip(runs, stations, strict=True)]
            for end in (0, 1)
        ]
        across = [
            shapely.distance(shapely.points(here), shapely.linestrings(there))
            if len(there) > 1
            else [here[0][0] - there[0][0]]
            for here, there in (sides, sides[::-1])
        ]
        for index, each in enumerate(runs):
            width = each[limb][1] - each[limb][0]
            least = min(width, *(abs(float(way[index])) for way in across))
            shares[index].append(least / width)
    return shares


def _narrowed(
    strips: Sequence[Strip], limbs: Sequence[_Stretch], shares: Sequence[float]
) -> tuple[Strip, ...]:
    return tuple(
        Strip(each.low, each.low + each.width * share, each.thickness)
        for each in strips
        for (low, high), share in zip(limbs, shares, strict=True)
        if low <= each.low and each.high <= high
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
