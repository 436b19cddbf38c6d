"""Flat shapes in straight edges for packing: envelopes, footprints with a gap, what is too close.

Packing needs plain rings, quick to compare and never smaller than the true shape.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from kerfolio.geometry.contour import Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.rings import ring_area
from kerfolio.geometry.shapes import unit

FLATNESS = 0.002
"""Chords of flattened arcs stray inward by at most this, mm."""

COARSE = 0.6
"""Footprints follow curves this closely, mm, unless told otherwise."""

_JAGGED = 1_000
"""A ring of more corners than this is grown in steps."""

_SMOOTH = 0.05
"""The first step, mm, and how far a line may stray between two."""

_STRIDE = 4.0
_DEPTH = 0.002
_NOTHING = 1e-9
_LEVEL = 1e-3
_SHARP: dict[str, Any] = {"join_style": "mitre", "mitre_limit": 1.5}


@dataclass(frozen=True, slots=True)
class Flat:
    """An area bounded by straight edges, mm: an outer ring without its openings."""

    outer: tuple[Point, ...]
    openings: tuple[tuple[Point, ...], ...] = ()

    def __hash__(self) -> int:
        # Asked for often: openings are many, and seldom all that two shapes differ in.
        return hash((self.outer, len(self.openings)))

    def turned(self, degrees: float) -> Flat:
        """Return the shape turned counter-clockwise about 0,0; exact at multiples of 90."""
        if degrees % 360.0 == 0.0:
            return self
        cos, sin = unit(degrees)

        def ring(given: tuple[Point, ...]) -> tuple[Point, ...]:
            return tuple((x * cos - y * sin, x * sin + y * cos) for x, y in given)

        return Flat(ring(self.outer), tuple(ring(each) for each in self.openings))

    def moved(self, x: float, y: float) -> Flat:
        """Return the shape moved by (x, y) mm."""

        def ring(given: tuple[Point, ...]) -> tuple[Point, ...]:
            return tuple((a + x, b + y) for a, b in given)

        return Flat(ring(self.outer), tuple(ring(each) for each in self.openings))

    def edges(self) -> NDArray[np.float64]:
        """Return the edges of all rings as rows (x, y, x, y), mm."""
        rings = [np.array(each) for each in (self.outer, *self.openings)]
        return np.concatenate([np.hstack([each, np.roll(each, -1, axis=0)]) for each in rings])

    @property
    def area(self) -> float:
        """The area in mm2, without the openings."""
        return float(_polygon(self).area)

    def box_turned(self, degrees: float) -> tuple[float, float, float, float]:
        """Return the box of the shape turned; see ``box`` and ``turned``."""
        return Flat(self.outer).turned(degrees).box

    @property
    def box(self) -> tuple[float, float, float, float]:
        """(least x, least y, greatest x, greatest y), mm."""
        xs, ys = [x for x, _ in self.outer], [y for _, y in self.outer]
        return min(xs), min(ys), max(xs), max(ys)


def flat_fault(flat: Flat) -> str:
    """Return why a shape does not enclose one clean area; nothing when it does."""
    rings = (flat.outer, *flat.openings)
    if not all(math.isfinite(value) for ring in rings for point in ring for value in point):
        return "has corners that are no numbers"
    if any(len(set(ring)) < 3 for ring in rings):
        return "has a ring of fewer than three corners"
    if not (polygon := shapely.Polygon(flat.outer, flat.openings)).is_valid:
        return f"is no clean outline: {shapely.is_valid_reason(polygon).lower()}"
    return ""


def flat_region(region: Region) -> Flat:
    """Return a region in straight edges; arcs stray inward by at most ``FLATNESS``."""
    outer, *openings = (tuple(points(each, FLATNESS)) for each in contours_of(region))
    return Flat(outer, tuple(openings))


def envelope(regions: Sequence[Region]) -> Flat:
    """Return what all regions cover together; they share one frame and overlap.

    Raises ValueError when they do not make one piece.
    """
    joined = shapely.union_all([_polygon(flat_region(each)) for each in regions])
    if joined.geom_type != "Polygon":
        raise ValueError("the shapes do not overlap")
    return flat_of(joined)


@lru_cache(maxsize=256)
def footprint(flat: Flat, by: float, crevice: float, coarse: float = COARSE) -> Flat:
    """Return a shape grown by at least ``by`` mm, in few edges, with narrow crevices closed.

    Nothing wider than ``crevice`` mm is closed. Square corners stay square; a curve is taken at
    most ``coarse`` mm too large, and the box around the shape grows by no more than ``by``.
    """
    true = _polygon(flat)
    plain = shapely.simplify(_closed(flat, crevice / 2), coarse)
    strays = float(max(shapely.distance(plain, shapely.points(shapely.get_coordinates(true)))))
    while not shapely.covers(shapely.buffer(plain, strays + FLATNESS / 2), true):
        strays += FLATNESS
    x0, y0, x1, y1 = shapely.bounds(true).tolist()
    least = shapely.box(x0 - by, y0 - by, x1 + by, y1 + by)
    # Growing by a rounding error may come out empty.
    grown = plain if by + strays < _NOTHING else shapely.buffer(plain, by + strays, **_SHARP)
    return flat_of(shapely.intersection(grown, least))


def _closed(flat: Flat, reach: float) -> Any:
    """Return a shape with its crevices narrower than two reaches (mm) filled."""
    closed = _polygon(flat)
    for step in _reaches(flat, reach):
        grown = shapely.buffer(closed, step, **_SHARP)
        closed = shapely.union(closed, shapely.buffer(grown, -step, **_SHARP))
        if step < reach:
            closed = shapely.simplify(closed, _SMOOTH)
    return closed


def _reaches(flat: Flat, reach: float) -> tuple[float, ...]:
    """Return the distances by which a shape is grown one after the other, up to ``reach`` mm.

    A jagged line grown by much at once crosses itself about as often as it has pairs of corners;
    grown by little first, most of its corners are gone before.
    """
    if max(map(len, (flat.outer, *flat.openings))) <= _JAGGED:
        return (reach,)
    count = max(1, math.ceil(math.log(max(reach / _SMOOTH, 1.0), _STRIDE)))
    return tuple(reach / _STRIDE**step for step in reversed(range(count)))


def shrunk(flat: Flat, by: float) -> Flat:
    """Return a shape smaller by ``by`` mm all round: the largest of what it falls into.

    Where nothing would be left, the shape as it is.
    """
    left = shapely.buffer(_polygon(flat), -by, **_SHARP)
    return flat if left.is_empty else flat_of(max(shapely.get_parts(left), key=shapely.area))


def level_share(flat: Flat) -> float:
    """Return how much of a shape's outline runs level or upright, from 0 to 1."""
    ring = np.array([*flat.outer, flat.outer[0]])
    along = np.abs(np.diff(ring, axis=0))
    lengths = np.hypot(along[:, 0], along[:, 1])
    return float(lengths[along.min(axis=1) <= _LEVEL * lengths].sum() / lengths.sum())


def grown_area(flat: Flat, by: float) -> float:
    """Return the area in mm2 of a shape grown by ``by`` mm with round corners, rather too small."""
    grown, reached = _polygon(flat), 0.0
    for reach in _reaches(flat, by):
        grown, reached = shapely.buffer(grown, reach - reached, quad_segs=8), reach
    return float(grown.area)


def boxes_area(boxes: Sequence[tuple[float, float, float, float]]) -> float:
    """Return the area in mm2 that boxes (x0, y0, x1, y1) cover together."""
    return float(shapely.union_all([shapely.box(*each) for each in boxes]).area)


def too_close(regions: Sequence[Region], gap: float) -> Iterator[tuple[int, int, float]]:
    """Yield pairs nearer than ``gap`` mm: their indices and distance, -1 where they overlap.

    The lower index comes first; pairs come in order. An overlap is told from a touch by a depth
    of 0.002 mm.
    """
    return flats_too_close([flat_region(each) for each in regions] if regions[1:] else (), gap)


def flats_too_close(flats: Sequence[Flat], gap: float) -> Iterator[tuple[int, int, float]]:
    """Yield pairs of flat shapes nearer than ``gap`` mm, as ``too_close`` does."""
    if len(flats) < 2:
        return
    solids = [_polygon(each) for each in flats]
    shapely.prepare(solids)
    found = shapely.STRtree(solids).query(solids, predicate="dwithin", distance=max(gap, 0.0))
    for one, other in sorted((int(a), int(b)) for a, b in found.T if a < b):
        distance = float(shapely.distance(solids[one], solids[other]))
        if distance == 0.0 and _overlap(solids[one], solids[other]):
            yield one, other, -1.0
        elif distance < gap:
            yield one, other, distance


def _overlap(one: Any, other: Any) -> bool:
    shared = shapely.intersection(one, other)
    return bool(shared.area > _DEPTH * shared.length / 2)


@lru_cache(maxsize=256)
def _polygon(flat: Flat) -> Any:
    made = ring_area(flat.outer, flat.openings)
    return made if shapely.is_valid(made) else shapely.make_valid(made)


def flat_of(polygon: Any) -> Flat:
    """Return a polygon of the library as a flat shape."""
    outer, *openings = (
        tuple((x, y) for x, y in shapely.get_coordinates(ring)[:-1].tolist())
        for ring in (polygon.exterior, *polygon.interiors)
    )
    return Flat(outer, tuple(openings))
