"""Many straight segments as few strokes: none drawn twice, ends joined, specks left out."""

from __future__ import annotations

from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.solid_faces import Indices, Numbers
from kerfolio.geometry.spans import merged, uncovered

_PARALLEL = 0.05
"""Sine of the greatest angle, about 3 degrees, between lines that can look like one."""

_GRID = 1e-3
_LEAST = 1e-9


def without_doubles(ends: Numbers, rank: Indices, apart: float) -> tuple[Indices, Numbers]:
    """Return what is left of segments (n, 2, 2) when none runs along another.

    Where two run side by side nearer than ``apart`` mm, the one of the lower rank stays, among
    equals the longer. Returned are the numbers of the segments and the ends of what is left.
    """
    along = ends[:, 1] - ends[:, 0]
    size = np.maximum(np.hypot(along[:, 0], along[:, 1]), _LEAST)
    order = np.lexsort((np.arange(len(ends)), -np.round(size, 3), rank))
    place = np.empty_like(order)
    place[order] = np.arange(len(order))
    boxes = shapely.box(*ends.min(axis=1).T, *ends.max(axis=1).T)
    wide = shapely.box(*(ends.min(axis=1) - apart).T, *(ends.max(axis=1) + apart).T)
    other, kept = shapely.STRtree(boxes).query(wide)[::-1]
    before = place[kept] < place[other]
    other, kept = other[before], kept[before]
    unit = along / size[:, None]
    turn = unit[kept, 0] * unit[other, 1] - unit[kept, 1] * unit[other, 0]
    parallel = np.abs(turn) < _PARALLEL
    other, kept = other[parallel], kept[parallel]
    spans = _beside(ends[other], ends[kept], unit[kept], size[kept], apart)
    number, left = uncovered(len(ends), *merged(other, spans))
    start = ends[number, 0] + along[number] * left[:, :1]
    end = ends[number, 0] + along[number] * left[:, 1:]
    return number, np.stack([start, end], axis=1)


def _beside(ends: Numbers, other: Numbers, unit: Numbers, size: Numbers, apart: float) -> Numbers:
    """Return between which shares segments run beside others within ``apart``."""
    away = ends - other[:, :1]
    across = away[:, :, 1] * unit[:, :1] - away[:, :, 0] * unit[:, 1:]
    along = away[:, :, 0] * unit[:, :1] + away[:, :, 1] * unit[:, 1:]
    near = _between(across, np.full(len(ends), -apart), np.full(len(ends), apart))
    facing = _between(along, np.zeros(len(ends)), size)
    return np.stack([np.maximum(near[:, 0], facing[:, 0]), np.minimum(near[:, 1], facing[:, 1])]).T


def _between(values: Numbers, low: Numbers, high: Numbers) -> Numbers:
    """Return between which shares a value that grows evenly (n, 2) lies within its bounds."""
    first, rise = values[:, 0], values[:, 1] - values[:, 0]
    flat = np.abs(rise) < _LEAST
    steady = np.where(flat, 1.0, rise)
    one, two = (low - first) / steady, (high - first) / steady
    within = (first >= low) & (first <= high)
    start = np.where(flat, np.where(within, 0.0, 2.0), np.minimum(one, two))
    end = np.where(flat, np.where(within, 1.0, -1.0), np.maximum(one, two))
    return np.stack([start, end]).T


def joined(
    ends: Numbers, group: Indices, least: float, stray: float
) -> list[tuple[int, list[tuple[float, float]]]]:
    """Return segments (n, 2, 2) joined end to end within their groups, as (group, points).

    Strokes shorter than ``least`` are left out, points within ``stray`` of the straight way too;
    both in mm. A closed stroke repeats its first point.
    """
    snapped = np.round(ends / _GRID) * _GRID
    some = np.any(snapped[:, 0] != snapped[:, 1], axis=1)
    snapped, group = snapped[some], group[some]
    if not len(group):
        return []
    order = np.argsort(group, kind="stable")
    groups, index = np.unique(group[order], return_inverse=True)
    pieces = np.asarray(shapely.linestrings(snapped[order]))
    lines = shapely.multilinestrings(pieces, indices=index)
    chains, owner = shapely.get_parts(shapely.line_merge(lines), return_index=True)
    long = shapely.length(chains) >= least
    chains = shapely.normalize(shapely.simplify(chains[long], stray))
    found = [
        (int(groups[which]), [(x, y) for x, y in shapely.get_coordinates(chain).tolist()])
        for chain, which in zip(chains, owner[long], strict=True)
    ]
    return sorted(found)


def noded(ends: Numbers, grid: float) -> Any:
    """Return the segments (n, 2, 2) cut where they meet, snapped to a grid, none doubled."""
    return shapely.union_all(shapely.linestrings(ends), grid_size=grid)
