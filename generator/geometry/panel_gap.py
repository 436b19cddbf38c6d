"""How far a posed panel may still go before it meets another: shoulders, faces, slot bottoms."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np
import shapely

from generator.geometry.panel_overlap import SQUARE
from generator.geometry.panel_solid import Numbers, Posed, Slab
from generator.geometry.rigid import Rigid, Vector, scaled

_ALONG = 1e-6
"""A direction counts as along an axis within this, radians."""

_TOUCH = 1e-6
"""Faces this near, mm, are in contact, and edges no further past one another slide by."""

Stretch = tuple[float, float]


def gap(one: Posed, other: Posed, direction: Vector) -> float | None:
    """Return how far the first panel may go along a direction (unit, world) to contact, mm.

    0 where they touch or overlap. None where nothing of the other is ahead, where the panels are
    oblique, and where the direction is not along a normal or the line in which they cross.
    """
    way = one.pose.inverse.vector(direction)
    there = one.pose.inverse.after(other.pose)
    lean = float(np.hypot(there.z[0], there.z[1]))
    if lean < SQUARE and abs(way[2]) > 1 - _ALONG:
        found = _stacked(one, other, there, way[2] > 0)
    elif abs(there.z[2]) < SQUARE:
        if abs(way[2]) > 1 - _ALONG:
            return gap(other, one, scaled(direction, -1.0))
        found = _crossed(one, other, there, way)
    else:
        return None
    return min((max(0.0, each) for each in found), default=None)


def _stacked(one: Posed, other: Posed, there: Rigid, up: bool) -> Iterator[float]:
    """Yield the distances between faces of panels that lie parallel, along the normal."""
    for b in other.solid.slabs:
        low, high = sorted(there.origin[2] + there.z[2] * each for each in (b.low, b.high))
        area = _mapped(b.area, there.x[:2], there.y[:2], there.origin[:2])
        for a in one.solid.slabs:
            ahead = high > a.low + _TOUCH if up else low < a.high - _TOUCH
            if ahead and shapely.intersection(a.area, area).area > _TOUCH:
                yield low - a.high if up else a.low - high


def _crossed(one: Posed, other: Posed, there: Rigid, way: Vector) -> Iterator[float]:
    """Yield the distances ahead of each slab where the panels stand at a right angle.

    The first's points are taken to (s, b) and the other's to (s, a): s along the line in which
    they cross, b and a along the normals of the other and of the first.
    """
    p, q, _ = there.z
    x, y, origin = ((-q * v[0] + p * v[1], v[2]) for v in (there.x, there.y, there.origin))
    level = sum(n * o for n, o in zip(there.z, there.origin, strict=True))
    into, along = p * way[0] + q * way[1], p * way[1] - q * way[0]
    for a in one.solid.slabs:
        ours = _mapped(a.area, (-q, p), (p, q), (0.0, -level))
        for b in other.solid.slabs:
            theirs = _stretches(_mapped(b.area, x, y, origin), a.low, a.high)
            if abs(into) > 1 - _ALONG:
                yield from _entering(ours, theirs, b, into > 0)
            elif abs(along) > 1 - _ALONG:
                yield from _closing(_stretches(ours, b.low, b.high), theirs, along > 0)


def _mapped(area: Any, x: Any, y: Any, origin: Any) -> Any:
    matrix: Numbers = np.array([x, y])
    return shapely.transform(area, lambda points: points @ matrix + np.array(origin))


def _stretches(area: Any, low: float, high: float) -> list[Stretch]:
    """Return where along s a shape has material between two heights, joined, in order."""
    least, _, most, _ = area.bounds
    strip = shapely.intersection(area, shapely.box(least - 1, low, most + 1, high))
    found: list[Stretch] = []
    for begin, _, end, _ in sorted(each.bounds for each in shapely.get_parts(strip) if each.area):
        if found and begin <= found[-1][1] + _TOUCH:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((begin, end))
    return found


def _entering(ours: Any, theirs: list[Stretch], slab: Slab, up: bool) -> Iterator[float]:
    """Yield how far a shape, moving up or down, is from a slab wherever that has material."""
    _, least, _, most = ours.bounds
    low, high = (least - 1, slab.low + _TOUCH) if up else (slab.high - _TOUCH, most + 1)
    for begin, end in theirs:
        if high > low and end - begin > 2 * _TOUCH:
            column = shapely.box(begin + _TOUCH, low, end - _TOUCH, high)
            part = shapely.intersection(ours, column)
            if part.area > _TOUCH * _TOUCH:
                yield slab.low - part.bounds[3] if up else part.bounds[1] - slab.high


def _closing(ours: list[Stretch], theirs: list[Stretch], forth: bool) -> Iterator[float]:
    """Yield the distances from our stretches of a line to theirs ahead."""
    for begin, end in ours:
        for low, high in theirs:
            ahead = low - end if forth else begin - high
            behind = begin - high if forth else low - end
            if behind < -_TOUCH:
                yield ahead
