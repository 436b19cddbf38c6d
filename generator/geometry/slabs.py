"""Flat shapes cut into level slabs: where a shape slid sideways first lies free of others.

A slab is a trapezoid between two heights. Two shapes overlap just where two of their slabs do, so
the sideways positions at which they overlap are found exactly, windows and hollows included.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from generator.geometry.contour import Point
from generator.geometry.packing import Flat

Numbers = NDArray[np.float64]

_LEVEL = 1e-6
"""Slabs that share no more height than this, mm, only touch."""

_SAME = 1e-7


@dataclass(frozen=True, slots=True)
class Slabs:
    """Trapezoids as a table: bottom, top, then left and right sides at the bottom and at the top.

    The rows are (bottom, top, left at bottom, left at top, right at bottom, right at top), mm.
    """

    table: Numbers

    def moved(self, x: float, y: float) -> Slabs:
        """Return the slabs moved by (x, y)."""
        return Slabs(self.table + np.array([[y], [y], [x], [x], [x], [x]]))

    def swapped_box(self) -> tuple[float, float, float, float]:
        """Return (least x, least y, greatest x, greatest y)."""
        bottom, top, left0, left1, right0, right1 = self.table
        return (
            float(min(left0.min(), left1.min())),
            float(bottom.min()),
            float(max(right0.max(), right1.max())),
            float(top.max()),
        )
