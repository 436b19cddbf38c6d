"""Which straight sides of a shape lie on some contours, though both are chords of the same arcs."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import traced

_ON, _NEARLY = 0.02, 0.3
"""Ends of a side no further than this from a line, mm, are on it; middles of chords stray more."""


class Lines:
    """Contours, open or closed, ready to be asked what lies on them."""

    def __init__(self, contours: Iterable[Contour]) -> None:
        made = [shapely.LineString(traced(each)) for each in contours]
        self._lines: Any = np.array(made, dtype=object)

    def hold(self, ends: Sequence[Point]) -> bool:
        """Tell whether a side between two points lies on one of them: its ends, nearly its middle.

        The points may come more than once.
        """
        if not len(self._lines):
            return False
        xs, ys = zip(*ends, strict=True)
        middle = shapely.Point((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
        near = self._lines[shapely.distance(middle, self._lines) < _NEARLY]
        off = shapely.distance(shapely.points([*ends])[:, np.newaxis], near[np.newaxis, :])
        return bool(np.any(off.max(axis=0) < _ON))
