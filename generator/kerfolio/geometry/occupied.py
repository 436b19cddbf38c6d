"""What is taken on a picture: how far spots and lines keep clear of drawn areas."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import inf
from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat

Box = tuple[float, float, float, float]


def polygons_of(areas: Sequence[Flat]) -> Any:
    """Return areas as polygons in an array, all made at once: one by one takes far longer."""
    rings = [ring for each in areas for ring in (each.outer, *each.openings)]
    if not rings:
        return np.array([], dtype=object)
    counts = [len(each) for each in rings]
    spots = np.array([spot for ring in rings for spot in ring])
    made: Any = shapely.linearrings(spots, indices=np.repeat(np.arange(len(rings)), counts))
    owned = np.array([1 + len(each.openings) for each in areas])
    first = np.cumsum(owned) - owned
    inner = np.ones(len(rings), dtype=np.bool_)
    inner[first] = False
    owner = np.repeat(np.arange(len(areas)), owned)
    if not inner.any():
        return shapely.polygons(made)
    alone: Any = shapely.polygons(made[first])
    pierced = np.flatnonzero(owned > 1)
    for each in pierced.tolist():
        alone[each] = shapely.polygons(made[first[each]], holes=made[inner & (owner == each)])
    return alone


class Occupied:
    """Areas of a picture that are taken and do not overlap, mm."""

    def __init__(self, areas: Iterable[Flat]) -> None:
        self._areas = polygons_of([*areas])
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
