"""Which of many drawn paths lie in which closed ones, told for all at once."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area
from kerfolio.geometry.near import boxes

_FINE = 0.01
_TOUCH = 0.02
"""Paths that reach no further, mm, into a closed one only touch it."""


def _solid(contour: Contour) -> Any:
    """Return what a closed path encloses, also where it crosses itself or encloses nothing."""
    chain = points(contour, _FINE)
    made = shapely.Polygon(chain) if len(chain) > 2 else shapely.Polygon()
    return made if shapely.is_valid(made) else shapely.make_valid(made)


def _drawn(contour: Contour) -> Any:
    chain = points(contour, _FINE)
    if contour.closed and len(chain) > 2:
        return _solid(contour)
    return shapely.LineString(chain) if len(chain) > 1 else shapely.Point(chain[0])


def reaching_into(outer: Contour, contours: Sequence[Contour]) -> tuple[bool, ...]:
    """Tell for each path whether some of it lies inside a closed one, more than a touch."""
    core = shapely.buffer(_solid(outer), -_TOUCH)
    shapely.prepare(core)
    around = boxes(contours)
    inside, apart = shapely.covers(core, around), shapely.disjoint(core, around)
    rows = zip(contours, inside.tolist(), apart.tolist(), strict=True)
    return tuple(
        sure or (not off and bool(shapely.intersects(core, _drawn(each))))
        for each, sure, off in rows
    )


def surrounded(contours: Sequence[Contour], outers: Sequence[Contour]) -> tuple[bool, ...]:
    """Tell for each path whether it lies as a whole in one of the closed ``outers``.

    One that is an outer itself does not count for itself.
    """
    if not contours or not outers:
        return (False,) * len(contours)
    around = boxes(contours)
    tree, found = shapely.STRtree(around), [False] * len(contours)
    grown = boxes(outers, _TOUCH)
    inner_of: dict[int, list[int]] = {}
    for outer, inner in zip(*tree.query(grown, predicate="covers").tolist(), strict=True):
        inner_of.setdefault(outer, []).append(inner)
    for outer, inners in inner_of.items():
        left = [each for each in inners if not found[each] and contours[each] != outers[outer]]
        for each, lies in zip(left, _lying_in(outers[outer], contours, left, around), strict=True):
            found[each] = lies
    return tuple(found)


def _lying_in(
    outer: Contour, contours: Sequence[Contour], inners: Sequence[int], around: Any
) -> list[bool]:
    """Tell which paths a closed one covers; their boxes ``around`` mostly tell already."""
    if not inners:
        return []
    solid = shapely.buffer(_solid(outer), _TOUCH)
    shapely.prepare(solid)
    sure = shapely.covers(solid, around[list(inners)]).tolist()
    return [
        known or bool(shapely.covers(solid, _drawn(contours[each])))
        for each, known in zip(inners, sure, strict=True)
    ]


def innermost_round(point: Point, contours: Sequence[Contour]) -> int | None:
    """Return which of the closed contours round a point is the smallest, None where none is."""
    at = shapely.Point(point)
    around = [i for i, each in enumerate(contours) if shapely.contains(_solid(each), at)]
    return min(around, key=lambda index: area(contours[index]), default=None)


def enclosing(contours: Sequence[Contour]) -> int | None:
    """Return which closed contour all the others lie in, None where none is so."""
    closed = [index for index, each in enumerate(contours) if each.closed]
    if not closed:
        return None
    largest = max(closed, key=lambda index: area(contours[index]))
    rest = [each for index, each in enumerate(contours) if index != largest]
    return largest if all(surrounded(rest, [contours[largest]])) else None


def point_inside(contour: Contour) -> Point:
    """Return a point well inside a closed contour."""
    spot = shapely.point_on_surface(_solid(contour))
    return float(spot.x), float(spot.y)
