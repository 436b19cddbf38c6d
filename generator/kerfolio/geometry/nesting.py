"""Which of many closed contours lies in which: a drawing of a whole sheet taken apart."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points, traced
from kerfolio.geometry.measure import area
from kerfolio.geometry.rings import ring_area

_FINE = 0.01
_TOUCH = 0.02


def parents(contours: Sequence[Contour]) -> tuple[int | None, ...]:
    """Return for each closed contour the smallest other one that it lies in as a whole.

    One that touches the other from within (0.02 mm) lies in it; of two alike the later one does.
    """
    solids = _solids(contours)
    grown = shapely.buffer(solids, _TOUCH, join_style="mitre")
    tree = shapely.STRtree(grown)
    inner, outer = tree.query(solids, predicate="covered_by").tolist()
    sizes = [(-area(each), index) for index, each in enumerate(contours)]
    found: list[int | None] = [None] * len(contours)
    for one, other in zip(inner, outer, strict=True):
        # A larger one holds it; of two of one size the earlier does.
        if sizes[other] < sizes[one]:
            best = found[one]
            if best is None or sizes[other] > sizes[best]:
                found[one] = other
    return tuple(found)


def overlapping(contours: Sequence[Contour]) -> tuple[tuple[int, int], ...]:
    """Return the pairs of closed contours that share room while neither lies in the other."""
    solids = _solids(contours)
    one, other = shapely.STRtree(solids).query(solids, predicate="overlaps").tolist()
    pairs = sorted((a, b) for a, b in zip(one, other, strict=True) if a < b)
    shared = [shapely.intersection(solids[a], solids[b]).area for a, b in pairs]
    return tuple(pair for pair, room in zip(pairs, shared, strict=True) if room > _TOUCH)


def holders(spots: Sequence[Point], contours: Sequence[Contour]) -> tuple[int | None, ...]:
    """Return for each point the smallest closed contour round it."""
    if not spots or not contours:
        return (None,) * len(spots)
    solids = _solids(contours)
    inner, outer = shapely.STRtree(solids).query(shapely.points(spots), "within").tolist()
    found: list[int | None] = [None] * len(spots)
    for spot, each in zip(inner, outer, strict=True):
        best = found[spot]
        if best is None or solids[each].area < solids[best].area:
            found[spot] = each
    return tuple(found)


def off_shape(one: Contour, other: Contour) -> float:
    """Return how far two contours' lines stray from each other at most, mm."""
    first, second = (shapely.LineString(traced(each, _FINE / 5)) for each in (one, other))
    return float(shapely.hausdorff_distance(first, second))


def _solids(contours: Sequence[Contour]) -> Any:
    found = [ring_area(points(each, _FINE)) for each in contours]
    return shapely.make_valid(found)
