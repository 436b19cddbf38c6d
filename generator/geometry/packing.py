"""Flat shapes in straight edges for packing: envelopes, footprints with a gap, what lies too close.

Packing needs plain rings, quick to compare and never smaller than the true shape.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import shapely

from generator.geometry.contour import Point, Region
from generator.geometry.flatten import points
from generator.geometry.measure import contours_of

FLATNESS = 0.005
"""Chords of flattened arcs stray by at most this, mm."""

_COARSE = 0.6
_HAIR = 0.002


@dataclass(frozen=True, slots=True)
class Flat:
    """An area bounded by straight edges, mm: an outer ring without its openings."""

    outer: tuple[Point, ...]
    openings: tuple[tuple[Point, ...], ...] = ()


def flat_region(region: Region) -> Flat:
    """Return a region in straight edges; arcs stray by at most ``FLATNESS``."""
    outer, *openings = (tuple(points(each, FLATNESS)) for each in contours_of(region))
    return Flat(outer, tuple(openings))


def envelope(regions: Sequence[Region]) -> Flat:
    """Return what all regions cover together; they share one frame and overlap.

    Raises ValueError when they do not make one piece.
    """
    joined = shapely.union_all([_polygon(flat_region(each)) for each in regions])
    if joined.geom_type != "Polygon":
        raise ValueError("the shapes do not overlap")
    return _flat(joined)


def footprint(flat: Flat, by: float, crevice: float) -> Flat:
    """Return a shape grown by at least ``by`` mm, in few edges, its narrow crevices closed.

    Nothing wider than ``crevice`` is closed. Square corners stay square; a curve is taken at most
    0.6 mm too large. The openings that remain can hold something.
    """
    true = _polygon(flat)
    closed = shapely.buffer(true, crevice / 2, **_SHARP)
    closed = shapely.union(true, shapely.buffer(closed, -crevice / 2, **_SHARP))
    plain = shapely.simplify(closed, _COARSE)
    strays = max(shapely.distance(plain, shapely.points(shapely.get_coordinates(true))))
    while True:
        strays += FLATNESS + _HAIR
        made = shapely.buffer(plain, by + strays, **_SHARP)
        if made.geom_type == "Polygon" and shapely.covers(shapely.buffer(plain, strays), true):
            return _flat(made)


_SHARP: dict[str, Any] = {"join_style": "mitre", "mitre_limit": 1.5}


def turned_flat(flat: Flat, cos: float, sin: float) -> Flat:
    """Return a shape turned counter-clockwise about 0,0 by the angle of that cosine and sine."""

    def ring(given: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((x * cos - y * sin, x * sin + y * cos) for x, y in given)

    return Flat(ring(flat.outer), tuple(ring(each) for each in flat.openings))


def too_close(regions: Sequence[Region], gap: float) -> Iterator[tuple[int, int, float]]:
    """Yield pairs nearer than ``gap`` mm: their indices and distance, negative when they overlap.

    The lower index comes first; pairs come in order. An overlap is told from a touch by a depth
    of 0.002 mm.
    """
    solids = [_polygon(flat_region(each)) for each in regions]
    shapely.prepare(solids)
    tree = shapely.STRtree(solids)
    found = tree.query(solids, predicate="dwithin", distance=max(gap, 0.0))
    for one, other in sorted((int(a), int(b)) for a, b in found.T if a < b):
        distance = float(shapely.distance(solids[one], solids[other]))
        if distance == 0.0 and _overlap(solids[one], solids[other]):
            yield one, other, -1.0
        elif distance < gap:
            yield one, other, distance


def _overlap(one: Any, other: Any) -> bool:
    shared = shapely.intersection(one, other)
    return bool(shared.area > 0 and shared.area > _HAIR * shared.length / 2)


def _polygon(flat: Flat) -> Any:
    made = shapely.Polygon(flat.outer, flat.openings)
    return made if shapely.is_valid(made) else shapely.make_valid(made)


def _flat(polygon: Any) -> Flat:
    rings = [tuple((x, y) for x, y in ring.coords[:-1]) for ring in polygon.interiors]
    return Flat(tuple((x, y) for x, y in polygon.exterior.coords[:-1]), tuple(rings))
