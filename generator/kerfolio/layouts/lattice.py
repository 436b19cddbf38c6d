"""Places on a lattice: how deep one shape would lie in another, for every offset at once."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from kerfolio.geometry.slabs import barred
from kerfolio.layouts.pose import Pose

Depths = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Overlap:
    """Depths in mm by offset of the second shape from the first, in steps: [row, column].

    ``row`` and ``column`` are the offset at the array's first corner. Outside it nothing overlaps.
    """

    depths: Depths
    row: int
    column: int

    def at(self, rows: int, columns: int) -> float:
        """Return the depth at an offset."""
        row, column = rows - self.row, columns - self.column
        inside = 0 <= row < self.depths.shape[0] and 0 <= column < self.depths.shape[1]
        return float(self.depths[row, column]) if inside else 0.0


NOWHERE_DEEP = Overlap(np.zeros((0, 0), dtype=np.float32), 0, 0)


@dataclass(frozen=True, slots=True)
class Lattice:
    """All places whose x and y are multiples of ``step`` mm; remembers what it worked out."""

    step: float
    _found: dict[tuple[int, int, float], tuple[Pose, Pose, Overlap]] = field(default_factory=dict)

    def overlap(self, one: Pose, other: Pose, slack: float) -> Overlap:
        """Return the depths of ``other`` in ``one``, each less ``slack`` mm and at least 0.

        A depth is the way to the nearest lattice offset without overlap, mm.
        """
        key = (id(one), id(other), slack)
        if key not in self._found:
            # The poses are kept beside the depths, so that their ids stay theirs.
            self._found[key] = (one, other, self._made(one, other, slack))
        return self._found[key][2]

    def _made(self, one: Pose, other: Pose, slack: float) -> Overlap:
        step = self.step
        low, high = -math.floor(other.height / step), math.floor(one.height / step)
        left, right = -math.floor(other.width / step), math.floor(one.width / step)
        rows = np.arange(low, high + 1, dtype=np.float64) * step
        which, begin, end = barred(one.slabs, other.slabs, rows)
        first = np.floor(begin / step + 1e-9).astype(np.int64) + 1 - left
        last = np.ceil(end / step - 1e-9).astype(np.int64) - 1 - left
        real = last >= first
        # A border of free offsets all round lets every depth find its way out.
        changes = np.zeros((len(rows) + 2, right - left + 4), dtype=np.int64)
        np.add.at(changes, (which[real] + 1, first[real] + 1), 1)
        np.add.at(changes, (which[real] + 1, last[real] + 2), -1)
        inside = changes.cumsum(axis=1)[:, :-1] > 0
        deep = ndimage.distance_transform_edt(inside)[1:-1, 1:-1] * step - slack
        return _cropped(deep.clip(0.0).astype(np.float32), low, left)


def _cropped(depths: Depths, row: int, column: int) -> Overlap:
    rows, columns = np.flatnonzero(depths.any(axis=1)), np.flatnonzero(depths.any(axis=0))
    if not len(rows):
        return NOWHERE_DEEP
    inner = depths[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1]
    return Overlap(np.ascontiguousarray(inner), row + int(rows[0]), column + int(columns[0]))
