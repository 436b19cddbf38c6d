"""Spots spread over areas, clear of their edges and of what is drawn on them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.rings import ring_area

_ROWS = 6
_MOST = 12


def spots_within(
    areas: Sequence[Flat], clear: float, obstacles: Sequence[Sequence[Point]] = ()
) -> tuple[Point, ...]:
    """Return up to 12 spots of a grid over each area, the roomiest first.

    Each keeps ``clear`` mm from the edges, and does not lie within what the ``obstacles``, lines
    drawn on the areas, bend round.
    """
    kept: list[tuple[float, float, float]] = []
    hulls = [shapely.convex_hull(shapely.multipoints(list(each))) for each in obstacles]
    taken = shapely.buffer(shapely.union_all(hulls), clear) if hulls else None
    for each in areas:
        shape = shapely.make_valid(ring_area(each.outer, each.openings))
        left, bottom, right, top = shapely.bounds(shape).tolist()
        shares = (np.arange(_ROWS) + 0.5) / _ROWS
        x, y = np.meshgrid(left + (right - left) * shares, bottom + (top - bottom) * shares)
        spots = shapely.points(x.ravel(), y.ravel())
        room = shapely.distance(spots, shapely.boundary(shape))
        good = shapely.intersects(shape, spots) & (room >= clear)
        if taken is not None:
            good &= ~shapely.intersects(taken, spots)
        for far, spot in zip(room[good].tolist(), spots[good], strict=True):
            kept.append((-round(far, 3), round(spot.x, 6), round(spot.y, 6)))
    return tuple((x, y) for _, x, y in sorted(kept)[:_MOST])
