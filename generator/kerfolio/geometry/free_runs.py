"""Which stretches of a strip are free: where nothing of some shapes comes near."""

from __future__ import annotations

from collections.abc import Sequence

import shapely

from kerfolio.geometry.contour import Region
from kerfolio.geometry.packing import Flat, flat_region

Strip = tuple[float, float, float, float]
"""left, bottom, right, top in mm."""

_QUARTER = 16
_OUTWARD = 1.005
"""The corners of a rounding's chords lie this far out, so that the chords do not lie inside it."""


def kept_clear(region: Region, by: float) -> Flat:
    """Return a shape without its openings, grown all round by at least ``by`` mm."""
    solid = shapely.Polygon(flat_region(region).outer)
    grown = shapely.buffer(solid, by * _OUTWARD, quad_segs=_QUARTER)
    return Flat(tuple((float(x), float(y)) for x, y in grown.exterior.coords[:-1]))


def free_runs(
    taken: Sequence[Flat], strip: Strip, *, upright: bool
) -> tuple[tuple[float, float], ...]:
    """Return the stretches (from, to) of a strip, along x or ``upright`` along y, that are free.

    A stretch is free over the whole breadth of the strip. Stretches come in order, in mm.
    """
    low, high = (strip[1], strip[3]) if upright else (strip[0], strip[2])
    axis = 1 if upright else 0
    window = shapely.box(*strip)
    shared = [shapely.intersection(shapely.Polygon(each.outer), window) for each in taken]
    parts = [part for each in shared for part in shapely.get_parts(each) if not part.is_empty]
    runs: list[tuple[float, float]] = []
    here = low
    for start, end in sorted((part.bounds[axis], part.bounds[axis + 2]) for part in parts):
        if start > here:
            runs.append((here, float(start)))
        here = max(here, float(end))
    return (*runs, (here, high)) if here < high else tuple(runs)
