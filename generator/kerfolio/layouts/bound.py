"""How many sheets no layout can do without."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

import numpy as np

from kerfolio.geometry.packing import Flat, grown_area
from kerfolio.geometry.slabs import Numbers, evenly
from kerfolio.layouts.engine import Bed, Blank, Job, Stack
from kerfolio.layouts.room import rooms_of
from kerfolio.layouts.verify import TOLERANCE

_LEVELS = 24
_HAIR = 1e-6


def fewest_sheets(job: Job) -> int:
    """Return a number of sheets that every layout of a job uses or exceeds.

    The greatest of: the area of the pieces, each half a gap larger all round, over that of the
    largest sheet; and for one size of sheet, what pieces wider than half of it ask for, since
    they can only lie above one another.
    """
    if not job.blanks:
        return 0
    gap, margin = max(job.bed.gap - TOLERANCE, 0.0), max(job.bed.margin - TOLERANCE, 0.0)
    bed = Bed(stacks=job.bed.stacks, margin=margin, gap=gap)
    total = math.fsum(
        count * _area(shape, gap / 2)
        for shape, count in Counter(blank.shape for blank in job.blanks).items()
    )
    largest = max(room.area for room in rooms_of(bed))
    found = max(1, math.ceil(total / largest - _HAIR)) if largest > 0 else 1
    if len(job.bed.stacks) > 1:
        return found
    return max(found, *_stacked(bed, bed.stacks[0], job.blanks))


@lru_cache(maxsize=256)
def _area(shape: Flat, by: float) -> float:
    return grown_area(shape, by)


def _stacked(bed: Bed, stack: Stack, blanks: Sequence[Blank]) -> Iterator[int]:
    """Yield how many sheets the wide pieces need, then the same for the tall ones."""
    sides = (stack.size[0] - 2 * bed.margin, stack.size[1] - 2 * bed.margin)
    heights: dict[tuple[Flat, tuple[float, ...], int], float | None] = {}
    for wide in (0, 1):
        asked = []
        for blank in blanks:
            key = (blank.shape, blank.turns, wide)
            if key not in heights:
                heights[key] = _stacked_height(blank, wide, sides)
            height = heights[key]
            if height is not None:
                asked.append(height + bed.gap)
        yield fewest_lengths(asked, sides[1 - wide] + bed.gap)


def _stacked_height(blank: Blank, wide: int, sides: tuple[float, float]) -> float | None:
    """Return the height a piece takes of its own where it is wide in every turn, else None."""
    least = math.inf
    for turn in blank.turns:
        x0, y0, x1, y1 = blank.shape.box_turned(turn)
        box = (x1 - x0, y1 - y0)
        if box[0] > sides[0] + _HAIR or box[1] > sides[1] + _HAIR:
            continue  # it cannot be turned so on this sheet
        if box[wide] <= sides[wide] / 2 + _HAIR:
            return None
        core = _core(blank.shape, turn)
        if core[wide] <= sides[wide] / 2 + _HAIR:
            return None
        least = min(least, core[1 - wide])
    return None if least == math.inf else least


@lru_cache(maxsize=256)
def _core(shape: Flat, turn: float) -> tuple[float, float]:
    """Return width and height of the largest upright rectangle found inside a turned shape."""
    if turn >= 180.0:
        return _core(shape, turn - 180.0)
    if turn == 90.0:
        width, height = _core(shape, 0.0)
        return height, width
    edges = shape.turned(turn).edges()
    levels = evenly(edges[:, 1], _LEVELS).tolist()
    bands = [clear_stretches(edges, low, high) for low, high in pairwise(levels)]
    best = (0.0, 0.0)
    for first, bottom in enumerate(levels[:-1]):
        stretches = [(-math.inf, math.inf)]
        for band, top in zip(bands[first:], levels[first + 1 :], strict=True):
            stretches = _shared(stretches, band)
            width = max((b - a for a, b in stretches), default=0.0)
            if width * (top - bottom) > best[0] * best[1]:
                best = (width, top - bottom)
    return best


Stretches = list[tuple[float, float]]


def clear_stretches(edges: Numbers, bottom: float, top: float) -> Stretches:
    """Return the stretches of x that lie inside a shape at all heights from bottom to top.

    ``edges`` are rows (x, y, x, y). What lies between those that pass through the band is inside
    or outside as a whole; a line through the band's middle tells which.
    """
    low, high = np.minimum(edges[:, 1], edges[:, 3]), np.maximum(edges[:, 1], edges[:, 3])
    x0, y0, x1, y1 = edges[(low < top - _HAIR) & (high > bottom + _HAIR)].T
    rise = np.where(y0 == y1, 1.0, y1 - y0)
    ends = [
        np.where(y0 == y1, x, x0 + (x1 - x0) * (np.clip(y, bottom, top) - y0) / rise)
        for x, y in ((x0, y0), (x1, y1))
    ]
    covered = sorted(zip(np.minimum(*ends).tolist(), np.maximum(*ends).tolist(), strict=True))
    middle = (bottom + top) / 2
    crossed = (np.minimum(y0, y1) <= middle) & (np.maximum(y0, y1) > middle)
    crossings = np.sort((x0 + (x1 - x0) * (middle - y0) / rise)[crossed])
    found: Stretches = []
    reach = -math.inf
    for start, end in covered:
        if start > reach and np.searchsorted(crossings, (max(reach, start - 1) + start) / 2) % 2:
            found.append((reach, start))
        reach = max(reach, end)
    return found


def _shared(one: Stretches, other: Stretches) -> Stretches:
    """Return what two rows of stretches share; each in order, its stretches apart."""
    found = []
    i = j = 0
    while i < len(one) and j < len(other):
        start, end = max(one[i][0], other[j][0]), min(one[i][1], other[j][1])
        if start < end:
            found.append((start, end))
        if one[i][1] < other[j][1]:
            i += 1
        else:
            j += 1
    return found


def fewest_lengths(lengths: Sequence[float], room: float) -> int:
    """Return a lower bound on the bins of size ``room`` for lengths laid end to end.

    Martello and Toth, "Knapsack Problems", 1990, bound L2.
    """
    found = 0
    for least in {0.0, *(each for each in lengths if each <= room / 2)}:
        large = [each for each in lengths if each > room - least + _HAIR]
        middle = [each for each in lengths if room / 2 < each <= room - least + _HAIR]
        small = [each for each in lengths if least <= each <= room / 2]
        spare = len(middle) * room - math.fsum(middle)
        more = math.ceil((math.fsum(small) - spare) / room - _HAIR)
        found = max(found, len(large) + len(middle) + max(more, 0))
    return found
