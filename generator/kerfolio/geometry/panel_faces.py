"""The faces and edges of a panel, built from its flat shape and never from triangles.

A panel is a pile of slabs: each recess that ends begins a new slab above it. Its faces are the
rear, the show face, the floors between slabs, and one wall for each edge of each slab's shape.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby, pairwise
from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.facets import thinned
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.solid_faces import FacesMade, SolidFaces

_GRID = 1e-6
_BESIDE = 1e-3


@lru_cache(maxsize=512)
def panel_faces(panel: Panel) -> SolidFaces:
    """Return the faces of a panel.

    Curves are in facets that turn at most 22.5 degrees and stray at most 0.1 mm from the panel's
    own; neighbours that turn less than ``SMOOTH`` degrees are marked as one smooth surface.
    """
    levels, sections = _slabs(panel)
    made = FacesMade()
    flats = _flats(made, levels, sections)
    walls = [_wall(made, each, levels) for each in _risers(sections)]
    for number, riser in walls:
        _rims(made, number, riser, levels, flats)
    for (x, y), (low, high), one, other in _uprights(walls):
        made.edge((x, y, levels[low]), (x, y, levels[high]), one, other)
    return made.faces()


def _slabs(panel: Panel) -> tuple[list[float], list[Any]]:
    """Return the heights between which the section stays the same, and each slab's section.

    All sections are made of the same cells, so that walls and floors share their corners exactly.
    """
    whole = _polygon(panel.shape)
    cuts = [(panel.thickness - each.depth, _polygon(each.shape)) for each in panel.recesses]
    floors = sorted({round(level, 6) for level, _ in cuts if 0 < level < panel.thickness})
    levels = [0.0, *floors, panel.thickness]
    if not floors:
        return levels, [whole]
    rings = [shapely.boundary(each) for each in (whole, *(shape for _, shape in cuts))]
    cells = shapely.get_parts(shapely.polygonize([shapely.union_all(rings, grid_size=_GRID)]))
    spots = shapely.get_coordinates(shapely.point_on_surface(cells))
    solid = shapely.contains_xy(whole, spots)
    sections = []
    for level in levels[:-1]:
        cut = [shapely.contains_xy(shape, spots) for floor, shape in cuts if floor <= level + _GRID]
        left = solid & ~np.any(cut, axis=0) if cut else solid
        sections.append(shapely.coverage_union_all(cells[left]))
    return levels, sections


def _polygon(flat: Flat) -> Any:
    outer, openings = thinned(flat.outer), [thinned(each) for each in flat.openings]
    made = shapely.Polygon(outer, openings)
    if shapely.is_valid(made):
        return made
    cut = [shapely.make_valid(shapely.Polygon(each)) for each in openings]
    return shapely.difference(shapely.make_valid(shapely.Polygon(outer)), shapely.union_all(cut))


@dataclass(frozen=True, slots=True)
class _Riser:
    """An edge of the sections from a to b, solid on its left, through slabs ``low`` to ``high``."""

    a: tuple[float, float]
    b: tuple[float, float]
    low: int
    high: int

    @property
    def outward(self) -> tuple[float, float]:
        dx, dy = self.b[0] - self.a[0], self.b[1] - self.a[1]
        size = math.hypot(dx, dy)
        return dy / size, -dx / size


def _risers(sections: list[Any]) -> Iterator[_Riser]:
    """Yield every edge; sections only shrink upwards, so that each rises through one run."""
    if len(sections) == 1:
        for polygon in _parts(sections[0]):
            for ring in _rings(polygon):
                yield from (_Riser(a, b, 0, 0) for a, b in pairwise([*ring, ring[0]]))
        return
    lines = shapely.union_all([shapely.boundary(each) for each in sections])
    parts = [shapely.get_coordinates(each) for each in shapely.get_parts(lines)]
    a = np.concatenate([part[:-1] for part in parts])
    b = np.concatenate([part[1:] for part in parts])
    size = np.hypot(*(b - a).T)
    off = np.stack((a[:, 1] - b[:, 1], b[:, 0] - a[:, 0])).T / size[:, None]
    off *= np.minimum(_BESIDE, 0.1 * size)[:, None]
    left, right = ((a + b) / 2 + off, (a + b) / 2 - off)
    lefts = np.array([shapely.contains_xy(each, left) for each in sections]).T
    rights = np.array([shapely.contains_xy(each, right) for each in sections]).T
    for start, end, one, other in zip(a.tolist(), b.tolist(), lefts, rights, strict=True):
        run = np.flatnonzero(one != other)
        if len(run):
            ends = (tuple(start), tuple(end)) if one[run[0]] else (tuple(end), tuple(start))
            yield _Riser(*ends, int(run[0]), int(run[-1]))


def _parts(shape: Any) -> list[Any]:
    """Return the polygons of a shape, specks left out."""
    parts = [each for each in shapely.get_parts(shape) if each.geom_type == "Polygon"]
    return [each for each in parts if each.area > _BESIDE]


def _rings(polygon: Any) -> list[list[tuple[float, float]]]:
    """Return the rings with the material on their left, closing points left out."""
    rings = [polygon.exterior, *polygon.interiors]
    found = []
    for index, ring in enumerate(rings):
        spots = [(float(x), float(y)) for x, y in ring.coords[:-1]]
        found.append(spots if ring.is_ccw == (index == 0) else spots[::-1])
    return found


def _flats(
    made: FacesMade, levels: list[float], sections: list[Any]
) -> list[list[tuple[int, Any]]]:
    """Make the level faces; return those of each level, with their shapes."""
    nothing = shapely.Polygon()
    found = []
    for index, level in enumerate(levels):
        if index == 0:
            shape, normal = sections[0], (0.0, 0.0, -1.0)
        else:
            above = sections[index] if index < len(sections) else nothing
            shape = shapely.difference(sections[index - 1], above)
            normal = (0.0, 0.0, 1.0)
        here = []
        for part in _parts(shape):
            rings = _rings(part)
            loops = [[(x, y, level) for x, y in ring[:: -1 if index == 0 else 1]] for ring in rings]
            here.append((made.face(loops, normal), part))
        found.append(here)
    return found


def _wall(made: FacesMade, riser: _Riser, levels: list[float]) -> tuple[int, _Riser]:
    (ax, ay), (bx, by) = riser.a, riser.b
    low, high = levels[riser.low], levels[riser.high + 1]
    loop = [(ax, ay, low), (bx, by, low), (bx, by, high), (ax, ay, high)]
    return made.face([loop], (*riser.outward, 0.0)), riser


def _rims(
    made: FacesMade,
    wall: int,
    riser: _Riser,
    levels: list[float],
    flats: list[list[tuple[int, Any]]],
) -> None:
    """Make the two level edges of a wall: where it stands, and where it ends."""
    (ax, ay), (bx, by), (nx, ny) = riser.a, riser.b, riser.outward
    beside = min(_BESIDE, 0.1 * math.dist(riser.a, riser.b))
    for index, out in ((riser.low, beside if riser.low else -beside), (riser.high + 1, -beside)):
        spot = ((ax + bx) / 2 + nx * out, (ay + by) / 2 + ny * out)
        flat = _holding(flats[index], spot)
        if flat >= 0:
            level = levels[index]
            made.edge((ax, ay, level), (bx, by, level), wall, flat)


def _holding(flats: list[tuple[int, Any]], spot: tuple[float, float]) -> int:
    if len(flats) == 1:
        return flats[0][0]
    return next((face for face, shape in flats if shapely.contains_xy(shape, *spot)), -1)


Upright = tuple[tuple[float, float], tuple[int, int], int, int]
"""Where it stands, from which level to which, and the two walls that meet there."""


def _uprights(walls: list[tuple[int, _Riser]]) -> Iterator[Upright]:
    """Yield the upright edges: runs of slabs through which the same two walls meet."""
    meeting: dict[tuple[float, float], list[tuple[int, _Riser]]] = {}
    spots: dict[tuple[float, float], tuple[float, float]] = {}
    for number, riser in walls:
        for x, y in (riser.a, riser.b):
            corner = (round(x, 5), round(y, 5))
            spots.setdefault(corner, (x, y))
            meeting.setdefault(corner, []).append((number, riser))
    for corner, here in meeting.items():
        top = max(riser.high for _, riser in here) + 1
        present = [
            tuple(number for number, riser in here if riser.low <= slab <= riser.high)
            for slab in range(top)
        ]
        for which, run in groupby(range(top), key=present.__getitem__):
            slabs = list(run)
            for one, other in zip(which[::2], which[1::2], strict=False):
                yield spots[corner], (slabs[0], slabs[-1] + 1), one, other
