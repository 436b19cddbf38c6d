"""The rectangle that a drawn slot is meant to be, with or without dog-bones of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist
from typing import Any

import shapely

from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area

_FILLED = 0.8
"""A slot fills at least this share of its rectangle; rounded ends of a long slot fill more."""

_FINE = 0.001
_PARALLEL = 1e-3
_EAR = 8.0
"""A dog-bone reaches no further from its corner, mm, or no further than half the slot's width:
across the disc of a cutter of 8 mm (common practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedSlot:
    """A rectangle about ``centre``: ``length`` along ``direction``, ``width`` (shorter) across."""

    centre: Point
    direction: Point
    length: float
    width: float


def fitted_slot(contour: Contour) -> FittedSlot | None:
    """Return the rectangle that a closed contour is meant to be, None when it is no slot (mm).

    It is the least one round the contour; or, where that is larger for dog-bones in its corners,
    the one between its walls.
    """
    shape = shapely.Polygon(points(contour, _FINE))
    box = _between_walls(contour, shape)
    if box is None:
        box = shapely.minimum_rotated_rectangle(shape)
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


def _between_walls(contour: Contour, shape: Any) -> Any | None:
    """Return the rectangle between the walls of a slot with dog-bones, None where it has none."""
    straight = [(each.start, each.end) for each in edges(contour) if not each.arc]
    if len(contour.vertices) <= 4 or not straight:
        return None
    (x0, y0), (x1, y1) = max(straight, key=lambda wall: dist(*wall))
    size = dist((x0, y0), (x1, y1))
    along = ((x1 - x0) / size, (y1 - y0) / size)
    across = (0.0 - along[1], along[0])
    near_far = [_walls(straight, axis, other) for axis, other in ((along, across), (across, along))]
    if None in near_far:
        return None
    (v0, v1), (u0, u1) = (tuple(each or ()) for each in near_far)
    corners = [
        (u * along[0] + v * across[0], u * along[1] + v * across[1])
        for u, v in ((u0, v0), (u1, v0), (u1, v1), (u0, v1))
    ]
    return shapely.Polygon(corners) if _has_ears(shape, corners) else None


def _walls(
    straight: Sequence[tuple[Point, Point]], along: Point, across: Point
) -> tuple[float, float] | None:
    """Return how far across the two walls lie that run along: there and back, the longest each."""
    reach: tuple[dict[float, float], dict[float, float]] = ({}, {})
    exact: dict[float, float] = {}
    for start, end in straight:
        x, y = end[0] - start[0], end[1] - start[1]
        size = dist(start, end)
        if size > 0 and abs(x * across[0] + y * across[1]) < _PARALLEL * size:
            place = start[0] * across[0] + start[1] * across[1]
            level = round(place, 2)
            exact.setdefault(level, place)
            found = reach[0 if x * along[0] + y * along[1] > 0 else 1]
            found[level] = found.get(level, 0.0) + size
    if not all(reach):
        return None
    first, last = (exact[max(each, key=lambda level: (each[level], level))] for each in reach)
    return (min(first, last), max(first, last)) if first != last else None


def _has_ears(shape: Any, corners: Sequence[Point]) -> bool:
    """Tell whether a shape is a rectangle with more cut away at its corners, and nowhere else."""
    core = shapely.Polygon(corners)
    room = max(_EAR, min(dist(corners[0], corners[1]), dist(corners[1], corners[2])) / 2)
    if core.area <= 0 or not shapely.covers(shapely.buffer(shape, 0.02), core):
        return False
    ears = shapely.difference(shape, shapely.buffer(core, 0.02, join_style="mitre"))
    near = shapely.union_all([shapely.buffer(shapely.Point(each), room) for each in corners])
    return not shapely.is_empty(ears) and bool(shapely.covers(near, ears))


def _plain(value: float) -> float:
    """Put a direction that all but lies along an axis on it."""
    nearest = float(round(value))
    return nearest + 0.0 if abs(value - nearest) < 1e-9 else value
