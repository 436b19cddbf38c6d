"""How large, how heavy and how steady a plan put together is; pieces alone, no hardware or timber.

Statics of a rigid body on a level, hard floor: it tips about an edge of the hull of what touches
the floor as soon as its weight passes beyond that edge. With b the way from the centre of mass to
the edge, across the floor, and h the height of that centre: it tips when tilted by atan(b / h), or
when pushed at the height H by m g b / H (any statics textbook).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.extent import centre as middle_of
from kerfolio.assembly.extent import corners
from kerfolio.basis.masses import GRAVITY
from kerfolio.geometry.contour import Point
from kerfolio.geometry.hull import convex_hull, least_rectangle
from kerfolio.geometry.panel_mesh import panel_mesh, volume_and_centre
from kerfolio.geometry.rigid import Vector, added, between, scaled

_LEVEL = 0.05
"""Points within this of the lowest one, mm, touch the floor."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stability:
    """Of the whole. Points count from the left, the front and the floor of the box around it; mm.

    ``crown`` is the hull of the panel that a load stands on, ``crown_height`` how high its upper
    face lies: the highest broad one that lies flat, else what of it is highest.
    ``pile`` is (long, short, high) of all pieces in one flat pile. ``centre`` is that of mass (kg).
    ``contact`` is the hull of what touches the floor, counter-clockwise; nothing when it encloses
    no area.
    """

    size: Vector
    pile: Vector
    mass: float
    centre: Vector
    contact: tuple[Point, ...]
    crown: tuple[Point, ...]
    crown_height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Tipping:
    """Over one side of the hull; ``way`` is a unit vector across the floor, out of the hull.

    ``angle`` (degrees) is the least tilt, ``push`` (N) the least level push at the top of the box
    that tips it. ``reach`` mm is what the centre of mass lies inside the edge. All three are
    negative where it falls over by itself.
    """

    way: Point
    angle: float
    push: float
    reach: float


def stability_of(assembled: Assembled) -> Stability:
    """Return the numbers of a plan put together; it has at least one piece of some mass."""
    points = [point for piece in assembled.pieces for point in _points(piece)]
    low, high = (tuple(map(end, *points)) for end in (min, max))
    least, most = (low[0], low[1], low[2]), (high[0], high[1], high[2])
    feet = [point for point in points if point[2] <= least[2] + _LEVEL]
    mass = math.fsum(piece.mass for piece in assembled.pieces)
    pull = (0.0, 0.0, 0.0)
    for piece in assembled.pieces:
        pull = added(pull, scaled(middle_of(piece), piece.mass))
    size = between(least, most)
    crown, height = _crown(assembled, least, size)
    return Stability(
        size=size,
        pile=pile_of(assembled.pieces),
        mass=mass,
        centre=between(least, scaled(pull, 1 / mass)),
        contact=convex_hull((x - least[0], y - least[1]) for x, y, _ in feet),
        crown=crown,
        crown_height=height,
    )


_LYING = 0.99
_THIRD = 1 / 3


def top_panel(assembled: Assembled) -> PosedPiece | None:
    """Return the panel that a load stands on: the highest that lies flat and is no mere ledge.

    A ledge has less than a third of the area of the largest one that lies flat.
    """
    lying = [each for each in assembled.pieces if abs(each.pose.z[2]) > _LYING]
    largest = max(map(_area, lying), default=0.0)
    broad = [each for each in lying if _area(each) >= _THIRD * largest]
    return max(broad, key=lambda each: (round(_upper(each), 1), _area(each)), default=None)


def _area(piece: PosedPiece) -> float:
    return volume_and_centre(panel_mesh(piece.panel))[0] / piece.panel.thickness


def _upper(piece: PosedPiece) -> float:
    return max(point[2] for point in corners(piece))


def _crown(assembled: Assembled, least: Vector, size: Vector) -> tuple[tuple[Point, ...], float]:
    panel = top_panel(assembled)
    if panel is None:
        points = [point for piece in assembled.pieces for point in corners(piece)]
        high = [
            (x - least[0], y - least[1]) for x, y, z in points if z >= least[2] + size[2] - _LEVEL
        ]
        return convex_hull(high) or tuple(high), size[2]
    hull = convex_hull((x - least[0], y - least[1]) for x, y, _ in corners(panel))
    return hull, _upper(panel) - least[2]


def tippings(stability: Stability, load: float = 0.0) -> tuple[Tipping, ...]:
    """Return how it tips about each side of the hull; nothing when no area touches the floor.

    ``load`` (kg) is a point load on the edge of the panel that carries, at the side that reaches
    the farthest in the direction looked at.
    """
    return tuple(_about(stability, way, edge, load) for way, edge in sides(stability))


def sides(stability: Stability) -> Iterator[tuple[Point, float]]:
    """Yield each side of what touches the floor: the way out of it, and how far out it lies."""
    hull = stability.contact
    for a, b in pairwise((*hull, *hull[:1])):
        way = ((b[1] - a[1]) / math.dist(a, b), (a[0] - b[0]) / math.dist(a, b))
        yield way, along(a, way)


def along(point: Point, way: Point) -> float:
    """Return how far a point across the floor lies along a way."""
    return point[0] * way[0] + point[1] * way[1]


def weakest(found: Sequence[Tipping], within: float = 0.5) -> tuple[Tipping, ...]:
    """Return those that tip within half a degree of the least angle, the least first."""
    ordered = sorted(found, key=lambda each: (round(each.angle, 6), each.way))
    return tuple(each for each in ordered if each.angle <= ordered[0].angle + within)


def _points(piece: PosedPiece) -> Iterator[Vector]:
    return (piece.pose.point(each) for each in panel_mesh(piece.panel).points)


def pile_of(pieces: Sequence[PosedPiece]) -> Vector:
    """Return pieces in one flat pile: long, short, high, mm."""
    around = [least_rectangle(piece.panel.shape) for piece in pieces]
    long, short = (max(each) for each in zip(*around, strict=True))
    return long, short, math.fsum(piece.panel.thickness for piece in pieces)


def _about(whole: Stability, way: Point, edge: float, load: float) -> Tipping:
    """Return how the whole tips about one side of the hull, loaded."""
    mass = whole.mass + load
    top = whole.size[2]
    outermost = max(along(point, way) for point in whole.crown)
    centre = along((whole.centre[0], whole.centre[1]), way)
    reach = edge - (whole.mass * centre + load * outermost) / mass
    height = (whole.mass * whole.centre[2] + load * whole.crown_height) / mass
    return Tipping(
        way=way,
        angle=math.degrees(math.atan2(reach, height)),
        push=mass * GRAVITY * reach / top,
        reach=reach,
    )
