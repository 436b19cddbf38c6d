"""A panel made ready for questions in space: the slabs of its material, and its solid."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from typing import Any

import manifold3d
import numpy as np
import shapely
from numpy.typing import NDArray

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid

Numbers = NDArray[np.float64]

LEAST = 1e-9
"""Heights closer than this, mm, are one height."""


@dataclass(frozen=True, slots=True)
class Slab:
    """The material of a panel between two heights over its rear face, mm.

    ``area`` is the polygon (or polygons) that it fills at every height between ``low`` and
    ``high``; ``edges`` are its straight edges as rows x0, y0, x1, y1, material on the left.
    """

    low: float
    high: float
    area: Any
    edges: Numbers


@dataclass(frozen=True, eq=False)
class PanelSolid:
    """A panel as slabs from the rear face up; an upper one lies within those below.

    Make one for each panel and hand it round: what is costly is worked out once, when first asked.
    """

    slabs: tuple[Slab, ...]
    sweeps: dict[tuple[float, ...], PanelSolid] = field(default_factory=dict, repr=False)

    @cached_property
    def corners(self) -> Numbers:
        """The corners (rows x, y, mm) of the convex hull of the shape."""
        hull = shapely.convex_hull(shapely.GeometryCollection([each.area for each in self.slabs]))
        return np.asarray(shapely.get_coordinates(hull))

    @cached_property
    def solid(self) -> Any:
        """The panel as a solid of the library for solids, in the panel's frame."""
        made = [_prism(each.area, each.low, each.high - each.low) for each in self.slabs]
        return manifold3d.Manifold.batch_boolean(made, manifold3d.OpType.Add)

    @cached_property
    def prisms(self) -> tuple[Numbers, ...]:
        """Triangular prisms that fill the panel: six points each, rows x, y, z."""
        return tuple(
            np.vstack([np.column_stack([corner, np.full(3, z)]) for z in (each.low, each.high)])
            for each in self.slabs
            for corner in _triangles(each.area)
        )


@dataclass(frozen=True, slots=True)
class Posed:
    """A panel in its place."""

    solid: PanelSolid
    pose: Rigid


def solid_of(panel: Panel) -> PanelSolid:
    """Return a panel made ready."""
    shape, top = _polygon(panel.shape), panel.thickness
    floors = [(max(0.0, top - each.depth), _polygon(each.shape)) for each in panel.recesses]
    heights = sorted({0.0, top, *(floor for floor, _ in floors if floor < top)})
    slabs = []
    for low, high in pairwise(heights):
        cut = [area for floor, area in floors if floor <= low + LEAST]
        area = shapely.difference(shape, shapely.union_all(cut)) if cut else shape
        if high - low > LEAST and area.area > 0:
            slabs.append(slab(low, high, area))
    return PanelSolid(tuple(slabs))


def slab(low: float, high: float, area: Any) -> Slab:
    """Return the slab of a polygon, or of what is polygon in a collection."""
    area = _polygons(area)
    return Slab(low, high, area, _edges(rings(area.geoms)))


def rings(parts: Iterable[Any]) -> list[Numbers]:
    """Return the rings of polygons as rows x, y, the first repeated, material on the left."""
    found = []
    for part in parts:
        for position, ring in enumerate((part.exterior, *part.interiors)):
            points = shapely.get_coordinates(ring)
            left = bool(shapely.is_ccw(ring)) == (position == 0)
            found.append(points if left else points[::-1])
    return found


def moved(solid: Any, pose: Rigid) -> Any:
    """Return a solid of the library where a pose puts it."""
    return solid.transform(np.array([pose.x, pose.y, pose.z, pose.origin]).T)


def _polygon(flat: Flat) -> Any:
    made = shapely.Polygon(flat.outer, flat.openings)
    return made if shapely.is_valid(made) else _polygons(shapely.make_valid(made))


def _polygons(area: Any) -> Any:
    """Return what is polygon in a shape, without the lines and points that an operation left."""
    parts = shapely.get_parts(area)
    return shapely.MultiPolygon([each for each in parts if each.geom_type == "Polygon"])


def _edges(given: Iterable[Numbers]) -> Numbers:
    rows = [np.hstack([ring[:-1], ring[1:]]) for ring in given]
    return np.vstack(rows) if rows else np.empty((0, 4))


def _prism(area: Any, low: float, height: float) -> Any:
    outline = [ring[:-1] for ring in rings(area.geoms)]
    return manifold3d.CrossSection(outline).extrude(height).translate((0.0, 0.0, low))


def _triangles(area: Any) -> list[Numbers]:
    """Return the corners of triangles that fill polygons, three rows each."""
    found: list[Numbers] = []
    for part in area.geoms:
        outline = [ring[:-1] for ring in rings([part])]
        points = np.vstack(outline)
        found += [points[each] for each in manifold3d.triangulate(outline)]
    return found
