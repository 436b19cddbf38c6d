"""Where in a shape a label has the most room."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import cast

import shapely
from shapely.geometry.base import BaseGeometry

from kerfolio.basis.keeper import kept
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.rings import ring_area

_FINE = 200.0
"""The spot is looked for to one part in this many of the shape's size."""

_NEARLY = 0.96
"""Share of the most room that is given up for a spot nearer to the middle."""

_AIR = 0.88
"""Share of the room that the label takes, so that it does not touch what is around it."""

_PEN = 0.1
"""mm to either side of a straight line."""

_CROWD = 100
"""Openings and obstacles beyond which the room between them is found in two steps."""

_NEAR = 0.25
"""The first of these, in shares of the way."""


def label_spot(
    region: Region,
    aspect: float,
    obstacles: Iterable[Contour] = (),
    *,
    enough: float = math.inf,
    towards: Point | None = None,
) -> tuple[Point, float]:
    """Return the centre of a spot for a label and the height that fits there, mm.

    ``aspect`` is the label's width over its height. The label keeps clear of the region's edges,
    openings and the ``obstacles``. Of all spots with room for ``enough`` height, or with the most
    room there is, the one nearest to ``towards`` is taken (else to the region's centre). The
    height is a safe one: the shape is squeezed by the aspect, and the label is the square in its
    largest inscribed circle. Height 0 where there is no room.
    """
    return _label_spot(region, aspect, tuple(obstacles), enough, towards)


@lru_cache(maxsize=256)
def _label_spot(
    region: Region,
    aspect: float,
    obstacles: tuple[Contour, ...],
    enough: float,
    towards: Point | None,
) -> tuple[Point, float]:
    """Return the spot and the height; several drawings show one part at one size."""
    return kept(_spot, region, aspect, obstacles, enough, towards)


def _spot(
    region: Region,
    aspect: float,
    obstacles: tuple[Contour, ...],
    enough: float,
    towards: Point | None,
) -> tuple[Point, float]:
    whole = _squeezed(region, aspect)
    solid = _without(whole, obstacles, aspect)
    if solid.is_empty or solid.area == 0:
        return ((0.0, 0.0), 0.0)
    left, bottom, right, top = solid.bounds
    tolerance = max(right - left, top - bottom) / _FINE
    areas = cast("shapely.Polygon | shapely.MultiPolygon", solid)  # it has an area
    largest = shapely.maximum_inscribed_circle(areas, tolerance=tolerance)
    radius = min(largest.length, enough / (math.sqrt(2) * _AIR)) * _NEARLY
    aim = shapely.Point(towards[0] / aspect, towards[1]) if towards else whole.centroid
    crowded = len(region.openings) + len(obstacles) > _CROWD
    middles = _kept_clear(solid, radius, (_NEAR, 1.0) if crowded else (1.0,))
    spot = shapely.shortest_line(middles, aim).coords[0] if not middles.is_empty else None
    x, y = spot or largest.coords[0]
    room = float(shapely.distance(solid.boundary, shapely.Point(x, y)))
    return ((x * aspect, y), room * math.sqrt(2) * _AIR)


def _kept_clear(solid: BaseGeometry, radius: float, shares: Iterable[float]) -> BaseGeometry:
    """Return what lies a radius away from the edge, reached by shares of it one after the other.

    Many openings grown by much at once would all cross each other; grown by little first, they
    melt into few.
    """
    reached = 0.0
    for share in shares:
        solid = shapely.buffer(solid, (reached - share) * radius)
        reached = share
    return solid


def _squeezed(region: Region, aspect: float) -> BaseGeometry:
    return _without(_polygon(region.outer, aspect), region.openings, aspect)


def _without(solid: BaseGeometry, contours: Iterable[Contour], aspect: float) -> BaseGeometry:
    return solid.difference(shapely.union_all([_polygon(each, aspect) for each in contours]))


def _polygon(contour: Contour, aspect: float) -> BaseGeometry:
    """An open line, as of an engraved letter, keeps everything it bends round for itself.

    A straight one keeps the width of a pen: without an area it would take nothing away.
    """
    ring = [(x / aspect, y) for x, y in points(contour, 0.02)]
    if not contour.closed or len(ring) < 3:
        hull = shapely.convex_hull(shapely.multipoints(ring))
        return hull if hull.area else shapely.buffer(hull, _PEN)
    return cast("BaseGeometry", shapely.make_valid(ring_area(ring)))
