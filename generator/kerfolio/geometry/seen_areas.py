"""The seen parts of faces: the cells between the seen lines, each filled by the face it shows.

Lines and areas are then one drawing: no cell is wider than its lines, and none is left over.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.packing import Flat, flat_of
from kerfolio.geometry.sight import Sight
from kerfolio.geometry.solid_faces import Indices, Numbers
from kerfolio.geometry.strokes import noded

_GRID = 1e-3
_AXES = 3


@dataclass(frozen=True, slots=True)
class SeenArea:
    """A part of a solid that is seen; its faces look along one world axis (0, 1, 2) or nearly."""

    solid: int
    axis: int
    shape: Flat


def seen_areas(sight: Sight, ends: Numbers, thin: float, stray: float) -> tuple[SeenArea, ...]:
    """Return what lies between seen lines (n, 2, 2), in view coordinates.

    Cells narrower than ``thin`` mm go to the neighbour with which they share the longest border.
    Points within ``stray`` of the straight way are left out.
    """
    cells = shapely.get_parts(shapely.polygonize([noded(ends, _GRID)]))
    if not len(cells):
        return ()
    spots = shapely.get_coordinates(shapely.point_on_surface(cells))
    face = sight.nearest(spots)
    faces = sight.faces
    key = np.where(face >= 0, faces.solid[face] * _AXES + faces.axis[face], -1)
    narrow = 2 * shapely.area(cells) < thin * shapely.length(cells)
    key = _given_away(cells, key, narrow)
    found = []
    for each in np.unique(key[key >= 0]).tolist():
        whole = shapely.coverage_union_all(cells[key == each])
        parts = shapely.normalize(shapely.get_parts(shapely.simplify(whole, stray)))
        solid, axis = divmod(each, _AXES)
        found += [(solid, axis, flat_of(part)) for part in parts if part.area > thin**2]
    return tuple(
        SeenArea(*each) for each in sorted(found, key=lambda one: (*one[:2], one[2].outer))
    )


def _given_away(cells: Any, key: Indices, narrow: Any) -> Indices:
    """Return the cells' owners with narrow cells given to the neighbour that holds them most."""
    slim = np.flatnonzero(narrow)
    if not len(slim):
        return key
    broad = np.flatnonzero(~narrow)
    one, other = shapely.STRtree(cells[broad]).query(cells[slim])
    border = shapely.length(
        shapely.intersection(shapely.boundary(cells[slim[one]]), cells[broad[other]])
    )
    given = key.copy()
    given[slim] = -1
    order = np.lexsort((-other, border, one))
    one, other, border = one[order], other[order], border[order]
    some = border > 0
    given[slim[one[some]]] = key[broad[other[some]]]
    return given
