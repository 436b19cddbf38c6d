"""Flat shapes cut into level slabs: where a shape slid sideways first lies free of others.

A slab is a trapezoid between two heights. Two shapes overlap just where two of their slabs do, so
the sideways positions at which they overlap are found exactly, windows and hollows included.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from kerfolio.geometry.packing import Flat

Numbers = NDArray[np.float64]

_LEVEL = 1e-6
"""Slabs that share no more than this, mm, only touch."""

_FAR = 1e7


@dataclass(frozen=True, slots=True)
class Slabs:
    """Trapezoids as the columns of a table of six rows, mm.

    The rows: bottom, top, left side at the bottom and at the top, right side likewise.
    """

    table: Numbers

    def moved(self, x: float, y: float) -> Slabs:
        """Return the slabs moved by (x, y)."""
        return Slabs(self.table + np.array([[y], [y], [x], [x], [x], [x]]))

    def joined(self, other: Slabs) -> Slabs:
        """Return the slabs of both."""
        return Slabs(np.concatenate([self.table, other.table], axis=1))

    def levels(self, most: int) -> Numbers:
        """Return the heights where slabs end, evenly thinned to ``most`` with both ends kept."""
        return evenly(self.table[:2], most)


NO_SLABS = Slabs(np.zeros((6, 0)))


def box_slab(x0: float, y0: float, x1: float, y1: float) -> Slabs:
    """Return an upright rectangle as one slab."""
    return Slabs(np.array([[y0], [y1], [x0], [x0], [x1], [x1]], dtype=np.float64))


def evenly(heights: Numbers, most: int) -> Numbers:
    """Return heights in order, each once, evenly thinned to ``most`` with both ends kept."""
    found: Numbers = np.unique(np.round(heights, 3))
    if len(found) <= most:
        return found
    kept: Numbers = found[np.unique(np.linspace(0, len(found) - 1, most).round().astype(int))]
    return kept


def slabs_of(flat: Flat) -> Slabs:
    """Return a shape as slabs, as few as its edges allow."""
    walls = _walls(flat)
    heights = np.unique(np.round(walls[:, [1, 3]], 7))
    columns: list[list[float]] = []
    ending: list[int] = []
    for low, high, crossing in _levels(walls, heights):
        bands = _between(crossing, low, high)
        if bands:
            ending = _added(columns, bands, ending)
    return Slabs(np.array(columns).T)


def _walls(flat: Flat) -> Numbers:
    """Return the edges that are not level as rows (x, y, x, y), each from below to above."""
    rows = [
        (*a, *b) if a[1] < b[1] else (*b, *a)
        for ring in (flat.outer, *flat.openings)
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
        if abs(a[1] - b[1]) > _LEVEL
    ]
    return np.array(rows)


def _levels(walls: Numbers, heights: Numbers) -> Iterator[tuple[float, float, Numbers]]:
    """Yield each level between two heights with the walls that run all through it.

    Walls are taken up and left behind on the way, so that many levels do not look at all of them.
    """
    by_bottom = np.argsort(walls[:, 1], kind="stable")
    bottoms = walls[by_bottom, 1]
    standing = np.zeros(0, dtype=np.int64)
    begun = 0
    for low, high in pairwise(heights.tolist()):
        if high - low <= _LEVEL:
            continue
        until = int(np.searchsorted(bottoms, low + _LEVEL, side="right"))
        standing = np.concatenate([standing, by_bottom[begun:until]])
        begun = until
        standing = np.sort(standing[walls[standing, 3] >= high - _LEVEL])
        yield low, high, walls[standing]


def _between(crossing: Numbers, low: float, high: float) -> list[list[float]]:
    slope = (crossing[:, 2] - crossing[:, 0]) / (crossing[:, 3] - crossing[:, 1])
    bottom = crossing[:, 0] + (low - crossing[:, 1]) * slope
    top = crossing[:, 0] + (high - crossing[:, 1]) * slope
    order = np.argsort(bottom + top, kind="stable")
    pairs = zip(order[::2], order[1::2], strict=True)
    return [
        [low, high, *(float(x) for x in (bottom[a], top[a], bottom[b], top[b]))] for a, b in pairs
    ]


def _added(columns: list[list[float]], bands: list[list[float]], ending: list[int]) -> list[int]:
    """Add the slabs of one level, or lengthen those below whose sides run on in the same lines.

    ``ending`` are the slabs that end below; those that end above are returned.
    """
    below = sorted((columns[each][3], each) for each in ending)
    found = []
    for new in bands:
        first = bisect_left(below, (new[2] - 2 * _LEVEL, -1))
        last = bisect_left(below, (new[2] + 2 * _LEVEL, len(columns)))
        near = sorted(each for _, each in below[first:last])
        number = next((each for each in near if _runs_on(columns[each], new)), len(columns))
        if number == len(columns):
            columns.append(new)
        else:
            columns[number][1::2] = new[1::2]
        found.append(number)
    return found


def _runs_on(below: list[float], new: list[float]) -> bool:
    return not (abs(below[1] - new[0]) > _LEVEL or _bends(below, new, 2) or _bends(below, new, 4))


def _bends(below: list[float], new: list[float], side: int) -> bool:
    if abs(below[side + 1] - new[side]) > _LEVEL:
        return True
    old_slope = (below[side + 1] - below[side]) / (below[1] - below[0])
    return abs(old_slope - (new[side + 1] - new[side]) / (new[1] - new[0])) > _LEVEL


def first_free(taken: Slabs, piece: Slabs, heights: Numbers, most: float) -> tuple[Numbers, int]:
    """Return for each height the least x from 0 to ``most`` at which the piece lies free.

    ``heights`` are sorted; inf stands where there is no such x. A touch is free. The second value
    counts the pairs of slabs compared, a measure of the work done that knows no clock.
    """
    which, left, right = barred(taken, piece, heights)
    counts = (right > _LEVEL) & (left < most - _LEVEL) & (right - left > _LEVEL)
    found = _first_gaps(which[counts], left[counts], right[counts], len(heights))
    found[found > most + _LEVEL] = np.inf
    return np.minimum(found, np.where(np.isfinite(found), most, np.inf)), len(which)


def barred(
    taken: Slabs, piece: Slabs, heights: Numbers
) -> tuple[NDArray[np.int64], Numbers, Numbers]:
    """Return the open stretches of x at which a piece, raised by a height, overlaps what is taken.

    Three arrays: the index of the height (``heights`` are sorted), where the stretch begins and
    where it ends. Stretches of one height may overlap each other.
    """
    which, one, other = _meetings(taken, piece, heights)
    left, right = _barred(taken.table[:, one], piece.table[:, other], heights[which])
    return which, left, right


def _meetings(
    taken: Slabs, piece: Slabs, heights: Numbers
) -> tuple[NDArray[np.int64], NDArray[np.int64], NDArray[np.int64]]:
    """Return every (height, taken slab, piece's slab) that share some height, as three indices."""
    low = (taken.table[0][:, None] - piece.table[1][None, :]).ravel() + _LEVEL
    high = (taken.table[1][:, None] - piece.table[0][None, :]).ravel() - _LEVEL
    first = np.searchsorted(heights, low, side="right")
    count = np.maximum(np.searchsorted(heights, high, side="left") - first, 0)
    pair = np.repeat(np.arange(len(low)), count)
    before = np.cumsum(count) - count
    which = np.arange(len(pair)) - np.repeat(before, count) + np.repeat(first, count)
    one, other = np.divmod(pair, piece.table.shape[1])
    return which, one, other


def _barred(taken: Numbers, piece: Numbers, y: Numbers) -> tuple[Numbers, Numbers]:
    """Return from where to where each slab of the piece, raised by y, may not be slid."""
    bottom, top = piece[0] + y, piece[1] + y
    low, high = np.maximum(taken[0], bottom), np.minimum(taken[1], top)
    left0, right0 = _sides(taken, low, 0.0)
    left1, right1 = _sides(taken, high, 0.0)
    own_left0, own_right0 = _sides(piece, low, y)
    own_left1, own_right1 = _sides(piece, high, y)
    return (
        np.minimum(left0 - own_right0, left1 - own_right1),
        np.maximum(right0 - own_left0, right1 - own_left1),
    )


def _sides(slab: Numbers, height: Numbers, raised: Numbers | float) -> tuple[Numbers, Numbers]:
    share = (height - raised - slab[0]) / (slab[1] - slab[0])
    return slab[2] + (slab[3] - slab[2]) * share, slab[4] + (slab[5] - slab[4]) * share


def _first_gaps(which: NDArray[np.int64], left: Numbers, right: Numbers, count: int) -> Numbers:
    """Return for each of ``count`` groups of barred stretches the first x >= 0 outside them all."""
    which = np.concatenate([which, np.arange(count)])
    left = np.concatenate([left, np.full(count, -_FAR / 2)])
    right = np.concatenate([right, np.zeros(count)])
    order = np.argsort(left + which * _FAR)
    which, left, right = which[order], left[order], right[order]
    reach = np.maximum.accumulate(right + which * _FAR) - which * _FAR
    last = np.append(which[1:] != which[:-1], True)
    free = np.flatnonzero(last | (np.append(left[1:], np.inf) >= reach - _LEVEL))
    first = np.append(True, np.diff(which[free]) > 0)
    return np.asarray(reach[free[first]], dtype=np.float64)
