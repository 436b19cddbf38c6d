"""The surface of a panel in triangles: closed, facing outward, with the edges worth drawing.

The lines of the shape and of the recesses cut the panel into cells of one height each. Lids and
walls of the cells share every point, so the surface is closed by its making.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, pairwise
from typing import Any

import shapely
from shapely.geometry.base import BaseGeometry

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Vector, between, cross, dot, length, scaled

Triangle = tuple[int, int, int]
Edge = tuple[int, int]
Corners = tuple[Vector, Vector, Vector]

_PLACES = 4
_GRID = 10.0**-_PLACES
_BEND = math.cos(math.radians(40.0))
"""Facets that turn by less than 40 degrees are one curved surface. In chords that stray by 0.05 mm
a hole of 2 mm diameter keeps to it (36 degrees); a 45 degree chamfer does not."""


@dataclass(frozen=True, slots=True)
class Mesh:
    """A closed surface, mm.

    ``triangles`` index ``points``, counter-clockwise seen from outside. ``edges`` join the points
    between which the surface bends.
    """

    points: tuple[Vector, ...]
    triangles: tuple[Triangle, ...]
    edges: tuple[Edge, ...]


@dataclass(frozen=True, slots=True)
class _Cell:
    """A part of the panel's face under which the material is equally high."""

    height: float
    area: Any

    def rings(self) -> Iterator[tuple[Point, ...]]:
        """Yield its rings with the material on the left."""
        turned = shapely.orient_polygons(self.area)
        for ring in (turned.exterior, *turned.interiors):
            yield tuple(_point(x, y) for x, y in ring.coords)


@lru_cache(maxsize=256)
def panel_mesh(panel: Panel) -> Mesh:
    """Return a panel's surface; its points lie on a grid of 0.0001 mm across the face.

    A recess as deep as the panel opens it.
    """
    cells = _cells(panel)
    return mesh_of(chain(_lids(cells), _walls(cells)))


@lru_cache(maxsize=256)
def volume_and_centre(mesh: Mesh) -> tuple[float, Vector]:
    """Return the volume in mm3 and the centre of volume in mm of a closed surface.

    Each triangle makes a tetrahedron with one point of the mesh (divergence theorem). Raises
    ZeroDivisionError when nothing is enclosed.
    """
    base = mesh.points[0]
    total, pull = 0.0, (0.0, 0.0, 0.0)
    for corners in mesh.triangles:
        a, b, c = (between(base, mesh.points[each]) for each in corners)
        part = dot(a, cross(b, c)) / 6
        total += part
        x, y, z = (part * (a[axis] + b[axis] + c[axis]) / 4 for axis in range(3))
        pull = (pull[0] + x, pull[1] + y, pull[2] + z)
    x, y, z = scaled(pull, 1 / total)
    return total, (base[0] + x, base[1] + y, base[2] + z)


def _cells(panel: Panel) -> list[_Cell]:
    whole = _prepared(panel.shape)
    recesses = [(_prepared(each.shape), each.depth) for each in panel.recesses]
    cells = []
    for area in _arranged([whole, *(shape for shape, _ in recesses)]):
        inside = shapely.point_on_surface(area)
        depths = [depth for shape, depth in recesses if shapely.covers(shape, inside)]
        height = panel.thickness - max(depths, default=0.0)
        if height > 0 and shapely.covers(whole, inside):
            cells.append(_Cell(height, area))
    return cells


def _prepared(flat: Flat) -> Any:
    made: BaseGeometry = shapely.Polygon(flat.outer, flat.openings)
    made = made if shapely.is_valid(made) else shapely.make_valid(made)
    shapely.prepare(made)
    return made


def _arranged(shapes: list[Any]) -> Any:
    """Return the areas between all lines of the shapes; neighbours share their points.

    Each is in its normal form, so that the triangles do not depend on the order of the shapes.
    """
    noded = shapely.union_all(shapely.boundary(shapes), grid_size=_GRID)
    return shapely.normalize(shapely.get_parts(shapely.polygonize(shapely.get_parts(noded))))


def _lids(cells: list[_Cell]) -> Iterator[Corners]:
    for cell in cells:
        for each in shapely.get_parts(shapely.constrained_delaunay_triangles(cell.area)):
            ring = shapely.orient_polygons(each).exterior.coords[:3]
            a, b, c = (_point(x, y) for x, y in ring)
            yield (*a, cell.height), (*b, cell.height), (*c, cell.height)
            yield (*c, 0.0), (*b, 0.0), (*a, 0.0)


def triangles_of(loops: Sequence[Sequence[Vector]], *, up: bool) -> Iterator[Corners]:
    """Yield the triangles of a level face, its outer loop first; ``up`` is the way it looks."""
    outer, *openings = ([(x, y) for x, y, _ in loop] for loop in loops)
    level = loops[0][0][2]
    known = {(x, y): (x, y, z) for loop in loops for x, y, z in loop}
    area = shapely.Polygon(outer, openings)
    for each in shapely.get_parts(shapely.constrained_delaunay_triangles(area)):
        ring = shapely.orient_polygons(each).exterior.coords[:3]
        a, b, c = (known.get((x, y), (x, y, level)) for x, y in ring)
        yield (a, b, c) if up else (c, b, a)


def _walls(cells: list[_Cell]) -> Iterator[Corners]:
    """Yield the upright triangles between neighbours of unequal height; beyond the edge it is 0."""
    sides: dict[tuple[Point, Point], float] = {}
    levels: dict[Point, set[float]] = {}
    for cell in cells:
        for ring in cell.rings():
            for a, b in pairwise(ring):
                sides[a, b] = cell.height
                levels.setdefault(a, {0.0}).add(cell.height)
    for (a, b), high in sides.items():
        low = sides.get((b, a), 0.0)
        if high > low:
            yield from _wall(*(_within(levels, each, low, high) for each in (a, b)))


def _within(
    levels: Mapping[Point, set[float]], at: Point, low: float, high: float
) -> tuple[Vector, ...]:
    """Return the points of the upright line at a corner where some lid ends, upwards."""
    return tuple((*at, level) for level in sorted(levels[at]) if low <= level <= high)


def _wall(left: tuple[Vector, ...], right: tuple[Vector, ...]) -> Iterator[Corners]:
    """Yield a wall between two upright sides, through all points of both; it looks to the right."""
    i = j = 0
    while i + 1 < len(left) or j + 1 < len(right):
        if i + 1 == len(left) or (j + 1 < len(right) and right[j + 1][2] <= left[i + 1][2]):
            yield left[i], right[j], right[j + 1]
            j += 1
        else:
            yield left[i], right[j], left[i + 1]
            i += 1


def _point(x: float, y: float) -> Point:
    return round(x, _PLACES) + 0.0, round(y, _PLACES) + 0.0


def mesh_of(faces: Iterable[Corners]) -> Mesh:
    """Return a mesh in one settled order, whatever the order of the faces."""
    corners = tuple(faces)
    points = tuple(sorted(set(chain.from_iterable(corners))))
    index = {point: number for number, point in enumerate(points)}
    triangles = sorted(_least_first(*(index[each] for each in face)) for face in corners)
    return Mesh(points, tuple(triangles), tuple(_bends(points, triangles)))


def _least_first(a: int, b: int, c: int) -> Triangle:
    return min((a, b, c), (b, c, a), (c, a, b))


def _bends(points: tuple[Vector, ...], triangles: list[Triangle]) -> Iterator[Edge]:
    """Yield the edges where two facets turn sharply, or where more than two meet."""
    normals: dict[Edge, list[Vector]] = {}
    for a, b, c in triangles:
        normal = _normal(points[a], points[b], points[c])
        for one, other in ((a, b), (b, c), (c, a)):
            normals.setdefault((min(one, other), max(one, other)), []).append(normal)
    for edge, found in sorted(normals.items()):
        if len(found) != 2 or dot(*found) < _BEND:
            yield edge


def _normal(a: Vector, b: Vector, c: Vector) -> Vector:
    found = cross(between(a, b), between(a, c))
    return scaled(found, 1 / (length(found) or 1.0))
