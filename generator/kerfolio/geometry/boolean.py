"""Joining, cutting and comparing flat shapes; arcs stay arcs.

Shapes are flattened together (``noding``), handed to the library for plane geometry, and the arcs
are put back from the record of which chord came from which circle (``recovery``).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import compress
from typing import Any

import shapely
from shapely.geometry.base import BaseGeometry

from kerfolio.basis.keeper import kept
from kerfolio.geometry.canonical import region as region_of
from kerfolio.geometry.contour import Contour, Point, Region, Vertex
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import Shape, area, bounds, contours_of, length
from kerfolio.geometry.near import boxes, stand_apart
from kerfolio.geometry.noding import TOLERANCE, Noded, noded
from kerfolio.geometry.recovery import recovered
from kerfolio.geometry.rings import ring_area
from kerfolio.geometry.shape_error import ShapeError

_GRID = 1e-7
_CLEAR = 0.02
"""Boxes grown by this, mm, that do not meet keep clear of each other."""

_SLIVER = 0.003
"""Leftovers thinner than this, mm on average, come from flattening: they are dropped."""


def union(region: Region, contours: Iterable[Contour]) -> Region:
    """Return a region with the areas of closed contours added, in one piece.

    Raises ShapeError (``pieces``) when an addition does not touch the rest.
    """
    added = tuple(contours)
    apart = stand_apart((*region.openings, *added), len(region.openings), _CLEAR)
    concerned = _concerned(region, apart)
    made = _one(_combined("union", (concerned,), tuple(map(Region, added))))
    return _with_openings(made, compress(region.openings, apart))


def difference(region: Region, contours: Iterable[Contour]) -> Region:
    """Return a region with the areas of closed contours cut away.

    Raises ShapeError (``pieces``) when nothing is left or the rest falls apart.
    """
    return _difference(region, tuple(contours))


@lru_cache(maxsize=1024)
def _difference(region: Region, taken: tuple[Contour, ...]) -> Region:
    """Return what is left of a region; the same parts are settled again and again."""
    apart = stand_apart((*region.openings, *taken), len(region.openings), _CLEAR)
    loose = _clear_inside(region.outer, taken, apart[len(region.openings) :])
    rest = tuple(Region(each) for each, clear in zip(taken, loose, strict=True) if not clear)
    made = _one(_combined("difference", (_concerned(region, apart),), rest))
    kept = (*compress(region.openings, apart), *compress(taken, loose))
    return _with_openings(made, kept)


def intersection(region: Region, contours: Iterable[Contour]) -> tuple[Region, ...]:
    """Return the parts of a region that lie in at least one of the closed contours."""
    return _combined("intersection", (region,), tuple(map(Region, contours)))


def _concerned(region: Region, apart: Sequence[bool]) -> Region:
    """Return a region with those openings alone that do not stand apart from what is done to it."""
    near = (each for each, clear in zip(region.openings, apart, strict=False) if not clear)
    return Region(region.outer, tuple(near))


def _clear_inside(
    outer: Contour, contours: Sequence[Contour], apart: Sequence[bool]
) -> tuple[bool, ...]:
    """Tell for each contour whether cutting it away opens just its own area in the middle.

    Many holes then cost no more than their number. What is small enough to be a sliver, or could
    cross itself, takes the long way.
    """
    inside = shapely.contains_properly(_solid(Region(outer)), boxes(contours, _CLEAR))
    return tuple(
        clear and here and _is_plain(each)
        for each, clear, here in zip(contours, apart, inside.tolist(), strict=True)
    )


def _is_plain(contour: Contour) -> bool:
    """Tell whether a contour is round or has three or four convex corners, and is no sliver."""
    corners = contour.vertices
    if not contour.closed or len(corners) not in (2, 3, 4):
        return False
    if area(contour) <= 2 * _SLIVER * length(contour):
        return False
    return len(corners) == 2 or (not any(v[2] for v in corners) and _is_convex(corners))


def _is_convex(corners: Sequence[Vertex]) -> bool:
    """Tell whether three or four corners turn one way throughout."""
    turns = set()
    for index, (x, y, _) in enumerate(corners):
        (ax, ay, _), (bx, by, _) = corners[index - 1], corners[(index + 1) % len(corners)]
        turns.add((x - ax) * (by - y) - (y - ay) * (bx - x) > 0)
    return len(turns) == 1


def _with_openings(region: Region, openings: Iterable[Contour]) -> Region:
    more = tuple(openings)
    return region_of(region.outer, (*region.openings, *more)) if more else region


def _one(pieces: tuple[Region, ...]) -> Region:
    if not pieces:
        raise ShapeError("nothing is left of the shape", pieces=0)
    if len(pieces) > 1:
        raise ShapeError(f"the shape falls into {len(pieces)} pieces", pieces=len(pieces))
    return pieces[0]


@lru_cache(maxsize=2048)
def _combined(
    name: str, ours: tuple[Region, ...], theirs: tuple[Region, ...]
) -> tuple[Region, ...]:
    """Apply an operation to the areas of two groups of regions.

    What was combined lately is known: of a plan that is being written most stays as it is.
    """
    if not theirs:
        return tuple(region_of(each.outer, each.openings) for each in ours)
    return kept(_combined_anew, name, ours, theirs)


def _combined_anew(
    name: str, ours: tuple[Region, ...], theirs: tuple[Region, ...]
) -> tuple[Region, ...]:
    regions = (*ours, *theirs)
    contours = [contour for each in regions for contour in contours_of(each)]
    if any(not contour.closed for contour in contours):
        raise ShapeError("an open contour has no area")
    flat = noded(contours)
    shapes = _polygons(regions, flat)
    result = _operated(name, shapes[: len(ours)], shapes[len(ours) :])
    pieces = [_cleaned(each) for each in shapely.get_parts(result) if each.geom_type == "Polygon"]
    made = [_region(each, flat) for each in pieces if each is not None]
    return tuple(sorted(made, key=lambda r: r.outer.vertices))


def _operated(name: str, ours: Sequence[Any], theirs: Sequence[Any]) -> Any:
    """Apply an operation to two groups of polygons, on a grid of 1e-7 mm where nothing else works.

    Edges that all but coincide defeat the exact method now and then; the grid always succeeds, and
    its points are put back on the true ones in ``_region``.
    """
    try:
        return getattr(shapely, name)(shapely.union_all(ours), shapely.union_all(theirs))
    except shapely.GEOSException:
        one, other = (shapely.union_all(each, grid_size=_GRID) for each in (ours, theirs))
        return getattr(shapely, name)(one, other, grid_size=_GRID)


def _polygons(regions: Sequence[Region], flat: Noded) -> list[Any]:
    """Return each region's flattened polygon; raises ShapeError for one that crosses itself."""
    result, position = [], 0
    for each in regions:
        count = len(contours_of(each))
        rings = flat.rings[position : position + count]
        position += count
        result.append(_polygon(rings))
    return result


def _polygon(rings: Sequence[Sequence[Point]]) -> Any:
    if len(rings[0]) < 3:
        raise ShapeError("the contour encloses no area")
    made = ring_area(rings[0], [ring for ring in rings[1:] if len(ring) > 2])
    if shapely.is_valid(made):
        return made
    reason = shapely.is_valid_reason(made)
    raise ShapeError(f"the contour crosses itself ({reason.lower()})")


def _cleaned(polygon: Any) -> Any | None:
    """Return a polygon without slivers, None when it is one itself."""
    if _is_sliver(polygon):
        return None
    holes = [hole for hole in polygon.interiors if not _is_sliver(shapely.Polygon(hole))]
    return shapely.Polygon(polygon.exterior, holes)


def _is_sliver(polygon: Any) -> bool:
    return bool(polygon.area <= _SLIVER * polygon.length / 2)


def _region(polygon: Any, flat: Noded) -> Region:
    rings = [
        tuple(flat.pins.pin((x, y)) for x, y in ring.coords[:-1])
        for ring in (polygon.exterior, *polygon.interiors)
    ]
    outer, *openings = [recovered(ring, flat.circles) for ring in rings]
    return region_of(outer, openings)


@lru_cache(maxsize=1024)
def _solid(shape: Shape) -> Any:
    """Return a shape as one polygon (a line for an open contour), prepared for questions."""
    if isinstance(shape, Contour) and not shape.closed:
        made: BaseGeometry = shapely.LineString(points(shape, TOLERANCE))
    else:
        outer, *openings = (points(each, TOLERANCE) for each in contours_of(shape))
        made = ring_area(outer, openings)
        if not shapely.is_valid(made):
            made = shapely.make_valid(made)
    shapely.prepare(made)
    return made


def intersects(one: Shape, other: Shape) -> bool:
    """Tell whether two areas overlap by more than a touch (0.002 mm deep)."""
    a, b = bounds(one), bounds(other)
    if a.x1 < b.x0 or b.x1 < a.x0 or a.y1 < b.y0 or b.y1 < a.y0:
        return False
    if not shapely.intersects(_solid(one), _solid(other)):
        return False
    shared = _operated("intersection", [_solid(one)], [_solid(other)])
    if shapely.get_dimensions(_solid(one)) == 2 == shapely.get_dimensions(_solid(other)):
        return bool(shared.area > 0 and shared.area >= _SLIVER * shared.length / 2)
    return bool(shared.length > _SLIVER)


def contains(region: Shape, contour: Shape, slack: float = 0.002) -> bool:
    """Tell whether a shape lies inside an area, its edge included, at most ``slack`` mm outside."""
    around = bounds(contour)
    box = shapely.box(around.x0, around.y0, around.x1, around.y1)
    if shapely.covers(_solid(region), box) or shapely.covers(_solid(region), _solid(contour)):
        return True
    return bool(shapely.covers(_grown(region, slack), _solid(contour)))


@lru_cache(maxsize=64)  # one area is asked about many others
def _grown(region: Shape, slack: float) -> Any:
    made = shapely.buffer(_solid(region), slack)
    shapely.prepare(made)
    return made


def distance(one: Shape, other: Shape) -> float:
    """Return the least distance between two areas in mm, 0 where they meet (within 0.002 mm)."""
    return float(shapely.distance(_solid(one), _solid(other)))
