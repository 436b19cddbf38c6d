"""What stands out of a flat shape: arms, feet and tongues that hang on the rest by a root.

A square as wide as the widest root looked for is moved about inside the shape (an opening of
mathematical morphology with mitred corners, so that square outside corners stay). What it cannot
reach and what hangs on the rest along one line is a prong; a web between two is none.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
import shapely

from kerfolio.basis.keeper import kept
from kerfolio.geometry.contour import Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.rings import ring_area

_FINE = 0.5
_SLACK = 0.02
_CRUMB = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class Prong:
    """An arm of a shape, mm: ``root`` the middle of where it hangs on, ``way`` out of it (unit).

    ``width`` is how long the root is, ``reach`` how far it stands out along ``way``.
    """

    root: Point
    way: Point
    width: float
    reach: float


@lru_cache(maxsize=512)
def prongs(region: Region, widths: tuple[float, ...]) -> tuple[Prong, ...]:
    """Return what hangs on a shape by roots narrower than the first of ``widths``, mm.

    Where the shape is nowhere as wide itself, the next counts. They come in a fixed order.
    Its outline alone is looked at; curves count as chords to half a millimetre.
    """
    return kept(_prongs, region, widths)


def _prongs(region: Region, widths: tuple[float, ...]) -> tuple[Prong, ...]:
    solid = ring_area(points(region.outer, _FINE), [])
    solid = solid if shapely.is_valid(solid) else shapely.make_valid(solid)
    for widest in widths:
        eroded = shapely.buffer(solid, -widest / 2, join_style="mitre")
        if not eroded.is_empty:
            return _hanging(
                solid, shapely.buffer(eroded, widest / 2 + _SLACK, join_style="mitre"), widest
            )
    return ()


def _hanging(solid: Any, body: Any, widest: float) -> tuple[Prong, ...]:
    pieces = shapely.get_parts(shapely.difference(solid, body))
    edge = shapely.boundary(solid)
    found = (_prong(piece, edge, widest) for piece in pieces if piece.area > _CRUMB * widest)
    return tuple(sorted((e for e in found if e is not None), key=lambda e: (e.root, e.way)))


def _prong(piece: Any, edge: Any, widest: float) -> Prong | None:
    """Return a piece that hangs on along one straight line, None for all others."""
    inner = shapely.difference(shapely.boundary(piece), shapely.buffer(edge, _SLACK))
    merged = inner if inner.geom_type == "LineString" else shapely.line_merge(inner)
    runs = [each for each in shapely.get_parts(merged) if each.length > _CRUMB]
    if len(runs) != 1:
        return None
    (ax, ay), (bx, by) = runs[0].coords[0], runs[0].coords[-1]
    width = math.hypot(bx - ax, by - ay)
    if not _CRUMB < width < widest or runs[0].length > width + 4 * _SLACK:
        return None
    root = ((ax + bx) / 2, (ay + by) / 2)
    way = ((by - ay) / width, (ax - bx) / width)
    away = shapely.get_coordinates(piece) - np.array(root)
    along = away @ np.array(way)
    if abs(along.min()) > abs(along.max()):
        way, along = (-way[0], -way[1]), -along
    return Prong(
        root=(float(root[0]), float(root[1])),
        way=(float(way[0]), float(way[1])),
        width=float(width),
        reach=float(along.max()),
    )
