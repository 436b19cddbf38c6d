"""Which of many contours lie near each other, by their boxes in a tree instead of pair by pair."""

from __future__ import annotations

from collections.abc import Sequence
from math import dist
from typing import Any

import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.rings import rings

_FINE = 0.02


class Lines:
    """The lines of contours, asked which of them pass near points (within 0.02 mm)."""

    def __init__(self, contours: Sequence[Contour]) -> None:
        self._tree = shapely.STRtree(_lines(contours))

    def near(
        self, spots: Sequence[Point], reaches: Sequence[float]
    ) -> list[list[tuple[float, int]]]:
        """Return for each point the distance and the number of each line within its reach, mm."""
        found: list[list[tuple[float, int]]] = [[] for _ in spots]
        if not spots:
            return found
        at = shapely.points(spots)
        which, line = self._tree.query(at, predicate="dwithin", distance=reaches)
        away = shapely.distance(at[which], self._tree.geometries[line])
        hits = zip(which.tolist(), away.tolist(), line.tolist(), strict=True)
        for spot, distance, number in hits:
            found[spot].append((distance, number))
        return [sorted(each) for each in found]


def line_distance(point: Point, contour: Contour) -> float:
    """Return the distance in mm from a point to a contour's line (within 0.02 mm)."""
    return float(shapely.distance(shapely.Point(point), _lines([contour])[0]))


def _lines(contours: Sequence[Contour]) -> list[Any]:
    chains = [points(each, _FINE) for each in contours]
    closed = [chain for each, chain in zip(contours, chains, strict=True) if each.closed]
    made = iter(rings(closed) if closed else ())
    return [
        next(made) if each.closed else shapely.LineString(chain)
        for each, chain in zip(contours, chains, strict=True)
    ]


def boxes(contours: Sequence[Contour], margin: float = 0.0) -> Any:
    """Return the boxes around contours as areas, grown by ``margin`` mm."""
    found = [bounds(each) for each in contours]
    return shapely.box(
        [each.x0 - margin for each in found],
        [each.y0 - margin for each in found],
        [each.x1 + margin for each in found],
        [each.y1 + margin for each in found],
    )


def meeting(ones: Sequence[Contour], others: Sequence[Contour]) -> list[tuple[int, int]]:
    """Return the pairs of contours whose boxes meet, a touch included, as positions in order."""
    if not ones or not others:
        return []
    found = shapely.STRtree(boxes(others)).query(boxes(ones))
    return sorted(zip(*found.tolist(), strict=True))


def meetings(contours: Sequence[Contour], most: int) -> int:
    """Return how many pairs of contours have boxes that meet; counting stops beyond ``most``."""
    if not contours:
        return 0
    found = boxes(contours)
    tree, count = shapely.STRtree(found), 0
    for index, box in enumerate(found):
        count += int((tree.query(box) > index).sum())
        if count > most:
            break
    return count


def stand_apart(
    contours: Sequence[Contour], standing: int = 0, margin: float = 0.0
) -> tuple[bool, ...]:
    """Tell for each contour whether its box, grown by ``margin``, meets none of all the others.

    The first ``standing`` contours are not compared with each other.
    """
    if not contours:
        return ()
    grown = boxes(contours, margin)
    one, other = shapely.STRtree(grown).query(grown)
    counts = (one != other) & ((one >= standing) | (other >= standing))
    apart = [True] * len(contours)
    for index in one[counts].tolist():
        apart[index] = False
    return tuple(apart)


def alike(
    contours: Sequence[Contour], patterns: Sequence[Contour], within: float
) -> tuple[bool, ...]:
    """Tell for each contour whether a pattern has the same middle and width, within mm."""
    found = [False] * len(contours)
    for one, other in meeting(contours, patterns):
        a, b = bounds(contours[one]), bounds(patterns[other])
        if dist(a.centre, b.centre) < within and abs(a.width - b.width) < within:
            found[one] = True
    return tuple(found)
