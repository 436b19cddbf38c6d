"""What is taken on a picture: how far spots and lines keep clear of drawn areas."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import inf

import numpy as np
import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat

Box = tuple[float, float, float, float]


class Occupied:
    """Areas of a picture that are taken and do not overlap, mm."""

    def __init__(self, areas: Iterable[Flat]) -> None:
        self._areas = np.array([shapely.Polygon(each.outer, each.openings) for each in areas])
        self._tree = shapely.STRtree(self._areas)

    def clearances(self, spots: Sequence[Point]) -> list[float]:
        """Return how far each spot lies from what is taken, 0 inside it."""
        if not len(self._areas) or not spots:
            return [inf] * len(spots)
        which, distance = self._tree.query_nearest(
            shapely.points(spots), all_matches=False, return_distance=True
        )
        found = np.full(len(spots), inf)
        found[which[0]] = distance
        return [float(each) for each in found]

    def free(self, box: Box) -> bool:
        """Tell whether nothing in a box is taken."""
        return not len(self._tree.query(shapely.box(*box), predicate="intersects"))

    def along(self, lines: Sequence[tuple[Point, Point]]) -> list[float]:
        """Return how far each line runs over what is taken, mm."""
        if not len(self._areas) or not lines:
            return [0.0] * len(lines)
        strokes = shapely.linestrings(lines)
        line, area = self._tree.query(strokes)
        over = shapely.length(shapely.intersection(strokes[line], self._areas[area]))
        return [float(each) for each in np.bincount(line, over, len(lines))]
