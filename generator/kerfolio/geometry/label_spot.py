"""Where in a shape a label has the most room."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import cast

import shapely
from shapely.geometry.base import BaseGeometry

from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.rings import ring_area

_FINE = 200.0
"""The spot is looked for to one part in this many of the shape's size."""

_NEARLY = 0.96
"""Share of the most room that is given up for a spot nearer to the middle."""

_AIR = 0.88
"""Share of the room that the label takes, so that it does not touch what is around it."""


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
    middles = shapely.buffer(solid, -radius)
    spot = shapely.shortest_line(middles, aim).coords[0] if not middles.is_empty else None
    x, y = spot or largest.coords[0]
    room = shapely.distance(solid.boundary, shapely.Point(x, y))
    return ((x * aspect, y), room * math.sqrt(2) * _AIR)


def _squeezed(region: Region, aspect: float) -> BaseGeometry:
    return _without(_polygon(region.outer, aspect), region.openings, aspect)


def _without(solid: BaseGeometry, contours: Iterable[Contour], aspect: float) -> BaseGeometry:
    return solid.difference(shapely.union_all([_polygon(each, aspect) for each in contours]))


def _polygon(contour: Contour, aspect: float) -> BaseGeometry:
    """An open line, as of an engraved letter, keeps everything it bends round for itself."""
    ring = [(x / aspect, y) for x, y in points(contour, 0.02)]
    if not contour.closed or len(ring) < 3:
        return shapely.multipoints(ring).convex_hull
    return shapely.make_valid(ring_area(ring))
