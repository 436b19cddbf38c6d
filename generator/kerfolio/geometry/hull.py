"""What flat shapes and points need around them: hulls and the least rectangle."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import dist

import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat


def convex_hull(points: Iterable[Point]) -> tuple[Point, ...]:
    """Return the convex hull, counter-clockwise; nothing when the points enclose no area.

    Points are taken to 0.0001 mm, so that points in line make no corner.
    """
    near = sorted({(round(x, 4) + 0.0, round(y, 4) + 0.0) for x, y in points})
    hull = shapely.normalize(shapely.convex_hull(shapely.MultiPoint(near)))
    if hull.geom_type != "Polygon":
        return ()
    ring = shapely.get_coordinates(shapely.orient_polygons(hull))[:-1]
    return tuple((float(x), float(y)) for x, y in ring)


def shared_hull(one: Sequence[Point], other: Sequence[Point]) -> tuple[Point, ...]:
    """Return what two convex hulls share; nothing when that encloses no area."""
    if not one or not other:
        return ()
    shared = shapely.intersection(shapely.Polygon(one), shapely.Polygon(other))
    return convex_hull((x, y) for x, y in shapely.get_coordinates(shared).tolist())


def encloses(hull: Sequence[Point], point: Point) -> bool:
    """Tell whether a point lies within a hull; in one of no area nothing does."""
    return bool(hull) and bool(shapely.contains_xy(shapely.Polygon(hull), *point))


def least_rectangle(flat: Flat) -> tuple[float, float]:
    """Return the long and the short side of the smallest rectangle around a shape, mm.

    It lies at any angle and has the least area.
    """
    rectangle = shapely.minimum_rotated_rectangle(shapely.Polygon(flat.outer))
    corners = shapely.get_coordinates(rectangle).tolist()
    one, other = dist(corners[0], corners[1]), dist(corners[1], corners[2])
    return max(one, other), min(one, other)
