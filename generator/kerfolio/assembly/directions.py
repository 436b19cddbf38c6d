"""The straight ways along which pieces of a plan may be put together."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.assembly.assembled import Assembled
from kerfolio.geometry.rigid import Vector, dot, length, scaled

SAME = math.cos(math.radians(0.01))
"""Ways closer than 0.01 degrees are one: over 500 mm they part by less than 0.1 mm."""

_WORLD: tuple[Vector, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
_UPRIGHT = _WORLD[2]


def directions(assembled: Assembled) -> tuple[Vector, ...]:
    """Return the ways worth trying, unit vectors of the world, each beside its opposite.

    They are the three axes of every joint: the one along which its pieces meet, and those along
    and across it, since a tongue may also slide down its groove. Up and down are always among
    them. The order depends on the ways alone, not on that of the joints; the way 2n + 1 is the
    opposite of the way 2n.
    """
    frames = [joint.frame for joint in assembled.joints]
    axes = [axis for frame in frames for axis in (frame.z, frame.x, frame.y)]
    return tuple(way for axis in _distinct([_UPRIGHT, *axes]) for way in (axis, opposite(axis)))


def opposite(way: Vector) -> Vector:
    """Return the way back."""
    return (0.0 - way[0], 0.0 - way[1], 0.0 - way[2])


def parallel(one: Vector, other: Vector) -> bool:
    """Tell whether two unit vectors lie along one line, whichever way they point."""
    return abs(dot(one, other)) >= SAME


def _distinct(axes: Sequence[Vector]) -> list[Vector]:
    """Return each line once, those of the world exactly, the rest sorted."""
    kept: list[Vector] = []
    for axis in sorted({_directed(axis) for axis in axes}):
        if not any(parallel(axis, other) for other in (*_WORLD, *kept)):
            kept.append(axis)
    world = [axis for axis in _WORLD if any(parallel(axis, other) for other in axes)]
    return [*reversed(world), *kept]


def _directed(axis: Vector) -> Vector:
    """Return a line's unit vector whose first figure that is not 0 is positive."""
    x, y, z = scaled(axis, 1 / length(axis))  # rounded to 1e-9, the noise of worked-out poses
    unit = (round(x, 9) + 0.0, round(y, 9) + 0.0, round(z, 9) + 0.0)
    return unit if unit > (0.0, 0.0, 0.0) else opposite(unit)
