"""Paths of a round cutter's centre: beside a contour, inside it, and to and fro over a pocket."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Any

import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points

Ring = tuple[Point, ...]
"""A closed path in straight chords, mm; the first point is not repeated."""

TOLERANCE = 0.005
"""Chords keep so close to the true path, mm."""
SLACK = 0.02
"""A path is drawn so much nearer to its contour, mm: a corner relieved for just this cutter has
room for its centre alone, and rounding must not close it."""

_QUARTER = 16  # chords of a quarter turn round a corner


@lru_cache(maxsize=1024)  # a sheet's time and its runs ask for the same, at many thicknesses
def outside(contour: Contour, radius: float) -> tuple[Ring, ...]:
    """Return the paths round a closed contour, its openings left out of it.

    The first runs round the whole; others clear what only a plunge reaches. Inside corners tighter
    than the cutter stay as round as it is.
    """
    return _rings([_solid(contour)], radius - SLACK)


@lru_cache(maxsize=1024)
def inside(contour: Contour, radius: float) -> tuple[Ring, ...]:
    """Return the paths along the inside of a closed contour, none where the cutter is too wide."""
    return _rings([_solid(contour)], SLACK - radius)


@lru_cache(maxsize=1024)
def cleared(contour: Contour, radius: float, step: float) -> tuple[Ring, ...]:
    """Return the paths that clear an area, from the middle out: its edge again and again, inwards.

    ``step`` mm lie between two of them; with at most the radius nothing is left standing between.
    None where the cutter is too wide. ValueError for a step of 0 or less.
    """
    if step <= 0:
        raise ValueError("a step is above 0")
    solid, found, inward = _solid(contour), [], radius - SLACK
    while rings := _rings([solid], -inward):
        found.append(rings)
        inward += step
    return tuple(ring for rings in reversed(found) for ring in rings)


def _solid(contour: Contour) -> Any:
    made = shapely.Polygon(points(contour, TOLERANCE))
    return made if shapely.is_valid(made) else shapely.make_valid(made)


def _rings(solids: Iterable[Any], by: float) -> tuple[Ring, ...]:
    return tuple(ring for solid in solids for ring in _edges(solid, by))


def _edges(solid: Any, by: float) -> Iterator[Ring]:
    moved = shapely.buffer(solid, by, quad_segs=_QUARTER)
    plain = shapely.simplify(moved, TOLERANCE)
    pieces = [each for each in shapely.get_parts(plain) if each.geom_type == "Polygon"]
    for piece in sorted(pieces, key=lambda each: each.bounds):
        if not piece.is_empty:
            for ring in (piece.exterior, *piece.interiors):
                yield tuple((float(x), float(y)) for x, y in ring.coords[:-1])
