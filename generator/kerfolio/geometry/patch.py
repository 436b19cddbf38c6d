"""Plane patches of surfaces in space: what is glued or sanded, and the lines that hatch it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, hypot
from typing import Any

import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Rigid, Vector, added, cross, dot, length, scaled
from kerfolio.geometry.view import View

Line = tuple[Vector, Vector]

_FACING = 0.08
"""A patch seen more nearly edge-on than this (cosine) shows nothing of its hatching."""
_LEAST = 1e-6


@dataclass(frozen=True, slots=True)
class Patch:
    """A plane area in the world, mm: closed loops, the outer one first; ``normal`` looks out."""

    loops: tuple[tuple[Vector, ...], ...]
    normal: Vector

    def posed(self, pose: Rigid) -> Patch:
        """Return the patch brought along by a rigid motion."""
        loops = tuple(tuple(map(pose.point, loop)) for loop in self.loops)
        return Patch(loops, pose.vector(self.normal))

    def moved(self, by: Vector) -> Patch:
        """Return the patch moved, mm."""
        return Patch(tuple(tuple(added(at, by) for at in loop) for loop in self.loops), self.normal)

    def facing(self, view: View) -> float:
        """Return how squarely it looks at the eye: 1 squarely, 0 edge-on or away."""
        return max(0.0, dot(self.normal, view.to_viewer))

    def holds(self, at: Vector, way: Vector) -> bool:
        """Tell whether a line through a point, along a way, goes through it."""
        share = dot(way, self.normal)
        gap = dot(self.loops[0][0], self.normal) - dot(at, self.normal)
        frame = _frame(self)
        spot = _flat(added(at, scaled(way, gap / share)), frame)
        shape = _polygon([[_flat(each, frame) for each in loop] for loop in self.loops])
        return bool(shapely.contains_xy(shape, *spot))

    @property
    def area(self) -> float:
        """How large it is, mm2."""
        frame = _frame(self)
        return float(_polygon([[_flat(at, frame) for at in loop] for loop in self.loops]).area)


def rim(patch: Patch) -> Iterator[Line]:
    """Yield the sides of a patch."""
    for loop in patch.loops:
        yield from pairwise((*loop, loop[0]))


def hatching(patch: Patch, view: View, apart: float) -> tuple[Line, ...]:
    """Return lines on a patch that rise to the right in a picture, ``apart`` mm of the world.

    All lines of a view lie on one grid. A patch that looks away has none.
    """
    if patch.facing(view) < _FACING:
        return ()
    shape = _polygon([[view.spot(at) for at in loop] for loop in patch.loops])
    if shape.is_empty:
        return ()
    left, bottom, right, top = shape.bounds
    turn, reach = 2**0.5, hypot(right - left, top - bottom)
    low, high = (bottom - right) / turn, (top - left) / turn
    middle = (left + right + bottom + top) / 2 / turn
    lines = []
    for number in range(ceil(low / apart), floor(high / apart) + 1):
        off = number * apart
        ends = [
            ((along - off) / turn, (along + off) / turn)
            for along in (middle - reach, middle + reach)
        ]
        lines.append(shapely.LineString(ends))
    found: list[Line] = []
    for line in lines:
        for part in shapely.get_parts(shapely.intersection(line, shape)):
            if part.geom_type == "LineString" and part.length > _LEAST:
                a, b = ((float(u), float(v)) for u, v in part.coords)
                found.append((_lifted(a, patch, view), _lifted(b, patch, view)))
    return tuple(found)


def _lifted(spot: Point, patch: Patch, view: View) -> Vector:
    """Return the point of a patch's plane that a view shows at a spot."""
    u, v = spot
    flat = added(scaled(view.right, u), scaled(view.up, v))
    gap = dot(patch.loops[0][0], patch.normal) - dot(flat, patch.normal)
    return added(flat, scaled(view.to_viewer, gap / dot(patch.normal, view.to_viewer)))


_Frame = tuple[Vector, Vector, Vector]


def _frame(patch: Patch) -> _Frame:
    """Return two directions along a patch's plane and a point of it."""
    least = min(range(3), key=lambda axis: abs(patch.normal[axis]))
    axes: tuple[Vector, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    raw = cross(patch.normal, axes[least])
    first = scaled(raw, 1 / length(raw))
    return first, cross(patch.normal, first), patch.loops[0][0]


def _flat(at: Vector, frame: _Frame) -> Point:
    return dot(at, frame[0]), dot(at, frame[1])


def shared_patches(one: Patch, other: Patch, least: float) -> Iterator[Patch]:
    """Yield what of a patch lies opposite another, seen square to it, as patches on the first.

    What is smaller than ``least`` mm2 is left out.
    """
    frame = _frame(one)
    mine, theirs = (
        _polygon([[_flat(at, frame) for at in loop] for loop in each.loops])
        for each in (one, other)
    )
    level = dot(frame[2], one.normal)
    for part in shapely.get_parts(shapely.intersection(mine, theirs)):
        if part.geom_type == "Polygon" and part.area >= least:
            rings = (part.exterior, *part.interiors)
            loops = (
                tuple(
                    added(
                        added(scaled(frame[0], float(u)), scaled(frame[1], float(v))),
                        scaled(one.normal, level),
                    )
                    for u, v in ring.coords[:-1]
                )
                for ring in rings
            )
            yield Patch(tuple(loops), one.normal)


def _polygon(loops: Sequence[Sequence[Point]]) -> Any:
    outer, *inner = loops
    shape = shapely.Polygon(outer, inner)
    return shape if shape.is_valid else shapely.make_valid(shape)
