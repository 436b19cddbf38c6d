"""Whether a group of pieces stands by itself on a level floor."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.extent import centre, corners
from kerfolio.geometry.hull import convex_hull
from kerfolio.geometry.rigid import Vector

_LEVEL = 0.5
"""Corners within this of the lowest one, mm, are taken to rest on the floor."""

_LEAST = 1e-6

Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Footing:
    """What a piece brings to a stance: mass (kg), its middle, and its lowest corners, mm."""

    mass: float
    middle: Vector
    feet: tuple[Vector, ...]


def footing(piece: PosedPiece) -> Footing:
    """Return a piece's footing."""
    points = corners(piece)
    floor = min(point[2] for point in points) + _LEVEL
    return Footing(
        mass=piece.mass,
        middle=centre(piece),
        feet=tuple(point for point in points if point[2] <= floor),
    )


def stands(footings: Sequence[Footing]) -> bool:
    """Tell whether the middle of the pieces' mass lies over the hull of their lowest corners.

    The pieces are taken as one rigid body, empty, on a level floor (statics: a body at rest on
    points tips unless its weight passes through their hull).
    """
    mass = math.fsum(each.mass for each in footings)
    x = math.fsum(each.mass * each.middle[0] for each in footings) / mass
    y = math.fsum(each.mass * each.middle[1] for each in footings) / mass
    feet = [foot for each in footings for foot in each.feet]
    floor = min(foot[2] for foot in feet) + _LEVEL
    return _inside((x, y), convex_hull([foot[:2] for foot in feet if foot[2] <= floor]))


def _next(ring: Sequence[Spot]) -> list[Spot]:
    return [*ring[1:], ring[0]]


def _turn(a: Spot, b: Spot, c: Spot) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _inside(spot: Spot, hull: Sequence[Spot]) -> bool:
    """Tell whether a spot lies in a hull that encloses something."""
    if len(hull) < 3:
        return False
    return all(_turn(a, b, spot) >= -_LEAST for a, b in zip(hull, _next(hull), strict=True))
