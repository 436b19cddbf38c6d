"""Shapes laid beside one another so that all of them are as large as can be in a room."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Any

import shapely
from shapely import affinity

from kerfolio.geometry.contour import Point

Spots = Sequence[Point]

_WAYS = 48
"""From so many sides a shape is pushed to those that lie already."""
_HALVED = 24
_STRIDE = 0.1
"""Places are whole multiples of this, so that no rounding of a library shows."""


def arranged(
    shapes: Sequence[Sequence[Spots]], room: tuple[float, float], apart: float
) -> list[Point]:
    """Return how far each of some shapes moves so that all stand about ``apart`` from one another.

    A shape is given as the corners of its convex parts. The largest stays, each further one is
    pushed to those that lie already from that side which leaves all of them largest in a room as
    wide and as high as ``room``, and of such sides where the box round them is smallest.
    """
    parts = [_outline(each) for each in shapes]
    order = sorted(range(len(parts)), key=lambda each: (-round(parts[each].area, 3), each))
    moves: dict[int, Point] = {}
    lying = None
    for number in order:
        shape = parts[number]
        tried = [(0.0, 0.0)] if lying is None else [*_pushed(lying, shape, apart)]
        whole = lying

        def worth(by: Point, shape: Any = shape, whole: Any = whole) -> tuple[float, float]:
            left, bottom, right, top = shapely.bounds(_with(whole, shape, by)).tolist()
            wide, high = right - left, top - bottom
            return -round(min(room[0] / wide, room[1] / high), 4), round(wide * high)

        moves[number] = min(tried, key=worth)
        lying = _with(lying, shape, moves[number])
    return [moves[each] for each in range(len(parts))]


def _outline(parts: Sequence[Spots]) -> Any:
    return shapely.union_all([shapely.MultiPoint(list(each)).convex_hull for each in parts])


def _with(lying: Any, shape: Any, by: Point) -> Any:
    there = affinity.translate(shape, *by)
    return there if lying is None else shapely.union_all([lying, there])


def _pushed(lying: Any, shape: Any, apart: float) -> Iterator[Point]:
    """Yield the moves that push a shape to what lies, until it is ``apart`` from it."""
    mine, theirs = shape.envelope.centroid, lying.envelope.centroid
    start = (theirs.x - mine.x, theirs.y - mine.y)
    far = math.fsum(math.hypot(*_size(each)) for each in (lying, shape)) + apart
    for way in range(_WAYS):
        turn = 2 * math.pi * way / _WAYS
        unit = (math.cos(turn), math.sin(turn))
        near, clear = 0.0, far
        for _ in range(_HALVED):
            middle = (near + clear) / 2
            by = (start[0] + middle * unit[0], start[1] + middle * unit[1])
            if shapely.distance(affinity.translate(shape, *by), lying) < apart:
                near = middle
            else:
                clear = middle
        x, y = (start[axis] + clear * unit[axis] for axis in (0, 1))
        yield _outward(x, unit[0]), _outward(y, unit[1])


def _outward(at: float, way: float) -> float:
    """Return a coordinate on the grid, no nearer to what lies."""
    step = at / _STRIDE
    return (math.ceil(step - 1e-6) if way > 0 else math.floor(step + 1e-6)) * _STRIDE


def _size(shape: Any) -> Point:
    left, bottom, right, top = shapely.bounds(shape).tolist()
    return right - left, top - bottom
