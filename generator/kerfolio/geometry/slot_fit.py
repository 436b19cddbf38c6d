"""The rectangle that a drawn slot is meant to be."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area

_FILLED = 0.8
"""A slot fills at least this share of its rectangle; rounded ends of a long slot fill more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedSlot:
    """A rectangle about ``centre``: ``length`` along ``direction``, ``width`` (shorter) across."""

    centre: Point
    direction: Point
    length: float
    width: float


def fitted_slot(contour: Contour) -> FittedSlot | None:
    """Return the least rectangle round a closed contour, None when it is no slot (mm)."""
    box = shapely.minimum_rotated_rectangle(shapely.Polygon(points(contour, 0.001)))
    if not isinstance(box, shapely.Polygon) or area(contour) < _FILLED * box.area:
        return None
    a, b, c, _ = (tuple(map(float, each)) for each in box.exterior.coords[:4])
    sides = sorted(((dist(a, b), a, b), (dist(b, c), b, c)), reverse=True)
    (length, start, end), (width, _, _) = sides
    centre = shapely.centroid(box)
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    if ux < -1e-9 or (abs(ux) <= 1e-9 and uy < 0):
        ux, uy = -ux, -uy
    direction = (_plain(ux), _plain(uy))
    return FittedSlot(
        centre=(float(centre.x), float(centre.y)), direction=direction, length=length, width=width
    )


def _plain(value: float) -> float:
    """Put a direction that all but lies along an axis on it."""
    nearest = float(round(value))
    return nearest + 0.0 if abs(value - nearest) < 1e-9 else value
