"""Relief of inside corners, so that a square mating corner goes all the way in.

A round cutter of radius r leaves r (sqrt 2 - 1) on the diagonal of a square inside corner. Relief
takes that away and no more: a disc of that radius, or of a little larger one, through the very
corner. In a square corner a dog-bone opens each wall for sqrt 2 r and cuts r (1 - 1/sqrt 2) beyond
it; a sideways relief opens one wall for 2 r and cuts r beyond it. Oblique corners follow the same
condition.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kerfolio.geometry.arc import edges, heading
from kerfolio.geometry.contour import Contour, Point, Region, Vertex
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.shapes import circle, rounded_slot
from kerfolio.geometry.transform import turn_of

DOG_BONE = "dog-bone"
SIDEWAYS = "sideways"

_SQUARE = 1e-6
_SHALLOW = math.radians(20.0)


@dataclass(frozen=True, slots=True)
class InsideCorner:
    """A sharp corner of a part that points into the material.

    ``first`` and ``second`` are unit vectors from the corner along its two walls; ``relieve``
    (``first`` or ``second``) is the wall eaten by the sideways style.
    """

    at: Point
    first: Point
    second: Point
    relieve: str = "first"


def dog_bone_centre(corner: Point, wall_a: Point, wall_b: Point, radius: float) -> Point:
    """Return the centre of a dog-bone: on the corner's bisector in the void, ``radius`` away.

    The walls are unit vectors from the corner. Raises ShapeError when they are opposite.
    """
    x, y = wall_a[0] + wall_b[0], wall_a[1] + wall_b[1]
    size = math.hypot(x, y)
    if size < 1e-9:
        raise ShapeError("a straight wall has no corner to relieve", at=corner)
    return (corner[0] + radius * x / size, corner[1] + radius * y / size)


def sideways_centre(corner: Point, along_wall: Point, into: Point, radius: float) -> Point:
    """Return the centre of a sideways relief, which eats the wall ``along_wall`` alone.

    ``into`` is the unit vector along the other wall, which stays whole: the disc passes through
    the corner and only touches it. Raises ShapeError when the walls are parallel.
    """
    side = into[0] * along_wall[1] - into[1] * along_wall[0]
    if abs(side) < 1e-9:
        raise ShapeError("a straight wall has no corner to relieve", at=corner)
    sign = math.copysign(radius, side)
    return (corner[0] - sign * into[1], corner[1] + sign * into[0])


def plain_centre(corner: InsideCorner, radius: float) -> Point:
    """Return where the cutter's centre stops in a corner without relief: it touches both walls."""
    half = _angle(corner) / 2
    return dog_bone_centre(corner.at, corner.first, corner.second, radius / math.sin(half))


def _angle(corner: InsideCorner) -> float:
    """Return the angle between the walls, in the void, radians."""
    (ax, ay), (bx, by) = corner.first, corner.second
    return math.atan2(abs(ax * by - ay * bx), ax * bx + ay * by)


def relief_centre(corner: InsideCorner, radius: float, style: str) -> Point:
    """Return the centre of the relief of a corner, ``style`` dog-bone or sideways."""
    if style == DOG_BONE:
        return dog_bone_centre(corner.at, corner.first, corner.second, radius)
    if style != SIDEWAYS:
        raise ValueError(f"unknown relief {style!r}")
    walls = (corner.first, corner.second)
    eaten, kept = walls if corner.relieve == "first" else walls[::-1]
    return sideways_centre(corner.at, eaten, kept, radius)


def relief_contour(corner: InsideCorner, radius: float, style: str) -> Contour:
    """Return the area a relief cuts: a disc, or for an acute corner the cutter's way into it.

    In a corner under 90 degrees the cutter cannot reach the disc's place from the void without
    cutting on the way, so the whole way is part of the relief.
    """
    centre = relief_centre(corner, radius, style)
    if _angle(corner) > math.pi / 2 - _SQUARE:
        return circle(centre, 2 * radius)
    start = plain_centre(corner, radius)
    way = (centre[0] - start[0], centre[1] - start[1])
    middle = ((centre[0] + start[0]) / 2, (centre[1] + start[1]) / 2)
    return rounded_slot(middle, math.hypot(*way) + 2 * radius, 2 * radius, turn_of(way))


def with_discs(opening: Contour, centres: Mapping[int, Point], radius: float) -> Contour | None:
    """Return an opening with discs through some of its corners, which are square, added to it.

    It runs counter-clockwise along straight walls; ``centres`` are those of the discs by the place
    of their corner. A disc through a square corner cuts both walls at the ends of a diameter
    (Thales), so that it adds half a turn. None where a corner is not square, where discs meet, or
    where one is wider than a wall is long.
    """
    walls = list(edges(opening))
    left = [math.dist(each.start, each.end) for each in walls]
    if min(left) < 2 * radius:
        return None
    vertices: list[Vertex] = []
    for place, (x, y, _) in enumerate(opening.vertices):
        if place not in centres:
            vertices.append((x, y, 0.0))
            continue
        (ax, ay), (bx, by) = heading(walls[place - 1]), heading(walls[place])
        off = _less(centres[place], (x, y))
        back, on = max(0.0, -2 * _dot(off, (ax, ay))), max(0.0, 2 * _dot(off, (bx, by)))
        if abs(_dot((ax, ay), (bx, by))) > _SQUARE:
            return None
        left[place - 1] -= back
        left[place] -= on
        vertices += [(x - back * ax, y - back * ay, 1.0), (x + on * bx, y + on * by, 0.0)]
    return Contour(tuple(vertices)) if min(left) > _SQUARE else None


def opened(corner: InsideCorner, radius: float, style: str) -> tuple[float, float]:
    """Return how much of its first and its second wall a relief takes from the corner on, mm.

    Linear in the radius. On a disc through the corner a wall is a chord of twice the centre's
    distance along it; into an acute corner the cutter's way takes more.
    """
    centre = relief_centre(corner, radius, style)
    off = _less(centre, corner.at)
    first, second = (max(0.0, 2 * _dot(off, wall)) for wall in (corner.first, corner.second))
    if _angle(corner) > math.pi / 2 - _SQUARE:
        return first, second
    start = _less(plain_centre(corner, radius), corner.at)
    return (
        max(first, *_swept(start, off, corner.first, radius)),
        max(second, *_swept(start, off, corner.second, radius)),
    )


def _swept(start: Point, end: Point, wall: Point, radius: float) -> Iterator[float]:
    """Yield where a wall from 0,0 leaves the area of a disc that goes from one point to another.

    The disc touches the wall at the start; a straight side of its way may cross it further on.
    """
    yield _dot(start, wall)
    way = _less(end, start)
    size = math.hypot(*way)
    for side in (1.0, -1.0):
        across = (-side * way[1] / size, side * way[0] / size)
        towards = _dot(wall, across)
        if towards > _SQUARE:
            reach = (radius + _dot(start, across)) / towards
            there = (reach * wall[0] - start[0], reach * wall[1] - start[1])
            if 0 <= _dot(there, way) <= size * size:
                yield reach


def _less(a: Point, b: Point) -> Point:
    return (a[0] - b[0], a[1] - b[1])


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


def inside_corners(region: Region) -> tuple[InsideCorner, ...]:
    """Return the sharp corners that point into the material, outer contour first, in order."""
    return tuple(c for contour in contours_of(region) for c in contour_corners(contour))


def contour_corners(contour: Contour) -> tuple[InsideCorner, ...]:
    """Return the right-hand turns of a contour with material on its left.

    That is the orientation of regions: outer contours ccw, openings cw. ``first`` is the wall
    the contour arrives by.
    """
    walls = list(edges(contour))
    found = []
    for index, after in enumerate(walls):
        (ax, ay), (bx, by) = heading(walls[index - 1], at_end=True), heading(after)
        if ax * by - ay * bx < -1e-6:
            found.append(InsideCorner(after.start, (0.0 - ax, 0.0 - ay), (bx + 0.0, by + 0.0)))
    return tuple(found)


def smallest_inside_radius(region: Region) -> float | None:
    """Return the radius of the tightest inside arc, mm; 0 with a sharp inside corner, else None.

    Turns of less than 20 degrees are no corners: so curves turn that were drawn in short straight
    edges. Nothing is known of their radius.
    """
    if any(_turn(corner) > _SHALLOW for corner in inside_corners(region)):
        return 0.0
    return smallest_inside_arc(region)


def smallest_inside_arc(region: Region) -> float | None:
    """Return the radius of the tightest inside arc, mm, whatever corners there are; else None."""
    arcs = [edge.arc for contour in contours_of(region) for edge in edges(contour)]
    return min((arc.radius for arc in arcs if arc and arc.sweep < 0), default=None)


def _turn(corner: InsideCorner) -> float:
    """Return by how much a contour turns at a corner, radians."""
    (ax, ay), (bx, by) = corner.first, corner.second
    return math.pi - math.acos(max(-1.0, min(1.0, ax * bx + ay * by)))
