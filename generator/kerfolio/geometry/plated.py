"""Solids bent or sawn from plate: a profile of straight sides as wide as it is, with round holes.

The profile lies in x and y, and the solid reaches half its width either way along z. Holes go
square through two sides of the profile; their corners lie on the circle, as those of turned solids.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from kerfolio.geometry.contour import Point
from kerfolio.geometry.panel_mesh import Mesh, mesh_of
from kerfolio.geometry.solid_faces import FacesMade, SolidFaces, Spot
from kerfolio.geometry.surfaces import Surface, joined
from kerfolio.geometry.turned import ROUND

_MORE = 1.0
"""Neighbours that turn by this more than facets of a hole, degrees, are no curve."""


@dataclass(frozen=True, slots=True)
class PlateHole:
    """A hole from the middle of the width of one side of a profile to a parallel one behind it.

    Sides count from that of the first two corners; ``at`` is from a side's first corner, mm.
    """

    side: int
    behind: int
    at: float
    radius: float


@dataclass(frozen=True, slots=True)
class Plated:
    """A profile, counter-clockwise seen from +z, ``wide`` along z; mm."""

    profile: tuple[Point, ...]
    wide: float
    holes: tuple[PlateHole, ...] = ()
    facets: int = ROUND

    @property
    def radius(self) -> float:
        """Half of its longer way across in the profile's plane, mm: how large it shows."""
        ways = ([spot[axis] for spot in self.profile] for axis in (0, 1))
        return max(max(each) - min(each) for each in ways) / 2


@lru_cache(maxsize=256)
def plated_faces(solid: Plated) -> SolidFaces:
    """Return the faces and edges of a solid of plate."""
    made = FacesMade()
    for surface in _surfaces(solid):
        surface.make(made)
    joined(made)
    return made.faces(360.0 / solid.facets + _MORE)


@lru_cache(maxsize=256)
def plated_mesh(solid: Plated) -> Mesh:
    """Return its closed surface in triangles."""
    return mesh_of(corners for each in _surfaces(solid) for corners in each.triangles())


def _surfaces(solid: Plated) -> Iterator[Surface]:
    half, sides = solid.wide / 2, [*pairwise((*solid.profile, solid.profile[0]))]
    for z in (-half, half):
        loop = [(x, y, z) for x, y in solid.profile]
        yield Surface((tuple(loop if z > 0 else loop[::-1]),), (0.0, 0.0, math.copysign(1.0, z)))
    rings: dict[int, list[tuple[Spot, ...]]] = {}
    for hole in solid.holes:
        near, far = _rims(hole, sides, solid.facets)
        rings.setdefault(hole.side, []).append(near)
        rings.setdefault(hole.behind, []).append(far[::-1])
        yield from _bored(near, far)
    for number, (a, b) in enumerate(sides):
        outward = _outward(a, b)
        loop = [(*a, -half), (*b, -half), (*b, half), (*a, half)]
        yield Surface((tuple(loop), *rings.get(number, ())), (*outward, 0.0))


def _outward(a: Point, b: Point) -> Point:
    """Return the way a side of a counter-clockwise profile looks."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = math.hypot(dx, dy)
    return dy / long, -dx / long


def _rims(
    hole: PlateHole, sides: list[tuple[Point, Point]], facets: int
) -> tuple[tuple[Spot, ...], tuple[Spot, ...]]:
    """Return the corners of a hole on both of its sides, clockwise as seen from outside the first.

    The first is seen from its own outside, so that it is an opening of that side.
    """
    a, b = sides[hole.side]
    ox, oy = _outward(a, b)
    ux, uy = -oy, ox
    deep = (a[0] - sides[hole.behind][0][0]) * ox + (a[1] - sides[hole.behind][0][1]) * oy
    near, far = [], []
    for number in range(facets):
        turn = -2 * math.pi * number / facets
        along, z = hole.at + hole.radius * math.cos(turn), hole.radius * math.sin(turn)
        x, y = a[0] + along * ux, a[1] + along * uy
        near.append((x, y, z))
        far.append((x - deep * ox, y - deep * oy, z))
    return tuple(near), tuple(far)


def _bored(near: tuple[Spot, ...], far: tuple[Spot, ...]) -> Iterator[Surface]:
    count = len(near)
    for number in range(count):
        following = (number + 1) % count
        loop = (near[following], near[number], far[number], far[following])
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = loop[:3]
        ux, uy, uz = bx - ax, by - ay, bz - az
        vx, vy, vz = cx - bx, cy - by, cz - bz
        square = (uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx)
        long = math.hypot(*square)
        yield Surface((loop,), (square[0] / long, square[1] / long, square[2] / long))
