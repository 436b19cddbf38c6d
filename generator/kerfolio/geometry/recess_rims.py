"""The rims of what is cut into a panel's show face, as lines on it."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel

_BESIDE = 0.05
"""A rim nearer to the panel's own edge than this, mm, is that edge."""


@lru_cache(maxsize=512)
def recess_rims(panel: Panel) -> tuple[tuple[Point, ...], ...]:
    """Return where the walls of a panel's recesses meet its show face, in the panel's frame.

    What runs along its own edges or within another recess is left out; a closed line repeats its
    first point.
    """
    if not panel.recesses:
        return ()
    sunk = shapely.union_all([_polygon(each.shape) for each in panel.recesses])
    whole = _polygon(panel.shape)
    within = shapely.difference(whole, shapely.buffer(shapely.boundary(whole), _BESIDE))
    rims = shapely.line_merge(shapely.intersection(shapely.boundary(sunk), within))
    return tuple(
        tuple((float(x), float(y)) for x, y in shapely.get_coordinates(each))
        for each in shapely.get_parts(rims)
        if each.geom_type == "LineString"
    )


def _polygon(flat: Flat) -> Any:
    return shapely.make_valid(shapely.Polygon(flat.outer, flat.openings))
