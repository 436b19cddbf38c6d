"""The shapes a maker can ask for, as closed contours, counter-clockwise, in mm."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point, Vertex
from kerfolio.geometry.shape_error import ShapeError

CornerPoint = tuple[float, float, float]
"""(x, y, radius of the rounding) of a polygon's corner, mm; 0 keeps it sharp."""

_LEAST = 1e-9


def rectangle(x0: float, y0: float, x1: float, y1: float, round: float = 0) -> Contour:
    """Return an upright rectangle, its corners rounded with a radius.

    Raises ShapeError when a side is not longer than 0 or the rounding does not fit.
    """
    if x1 - x0 <= _LEAST or y1 - y0 <= _LEAST:
        raise ShapeError("a rectangle needs sides longer than 0")
    return polygon([(x0, y0, round), (x1, y0, round), (x1, y1, round), (x0, y1, round)])


def circle(centre: Point, diameter: float) -> Contour:
    """Return a circle of two half turns; raises ShapeError for a diameter of 0 or less."""
    if diameter <= _LEAST:
        raise ShapeError("a circle needs a diameter above 0")
    x, y, r = *centre, diameter / 2
    return tidy(Contour(((x - r, y, 1.0), (x + r, y, 1.0))))


def ellipse(centre: Point, width: float, height: float, tolerance: float = 0.005) -> Contour:
    """Return an upright ellipse in chords within ``tolerance`` mm (a circle where it is one).

    Raises ShapeError when a diameter is not above 0.
    """
    if width <= _LEAST or height <= _LEAST:
        raise ShapeError("an ellipse needs two diameters above 0")
    if abs(width - height) <= _LEAST:
        return circle(centre, width)
    a, b = width / 2, height / 2
    # A circle of the greater radius, squeezed along one axis: its chords stray no more than before.
    count = 4 * math.ceil(math.pi / 4 / math.acos(1 - min(1.0, tolerance / max(a, b))))
    steps = (math.tau * k / count for k in range(count))
    return tidy(
        Contour(
            tuple((centre[0] + a * math.cos(t), centre[1] + b * math.sin(t), 0.0) for t in steps)
        )
    )


def slot(centre: Point, direction: Point, length: float, width: float) -> Contour:
    """Return a square-ended slot: ``length`` along a direction, ``width`` across.

    Raises ShapeError when a side is not longer than 0 or the direction has no length.
    """
    size = math.hypot(*direction)
    if length <= _LEAST or width <= _LEAST or size <= _LEAST:
        raise ShapeError("a slot needs a length, a width and a direction")
    ux, uy = direction[0] / size, direction[1] / size
    (x, y), a, b = centre, length / 2, width / 2
    corners = ((-a, -b), (a, -b), (a, b), (-a, b))
    return tidy(Contour(tuple((x + u * ux - v * uy, y + u * uy + v * ux, 0.0) for u, v in corners)))


def rounded_slot(centre: Point, length: float, width: float, angle_deg: float = 0) -> Contour:
    """Return a slot with half-round ends; ``length`` is over all, along the angle.

    Raises ShapeError when it is shorter than wide or a measure is not above 0.
    """
    if width <= _LEAST:
        raise ShapeError("a rounded slot needs a width above 0")
    if length < width - _LEAST:
        raise ShapeError("a rounded slot is at least as long as wide", limit=length)
    if length - width <= 1e-6:
        return circle(centre, width)
    ux, uy = unit(angle_deg)
    (x, y), a, r = centre, (length - width) / 2, width / 2
    corners = ((-a, -r, 0.0), (a, -r, 1.0), (a, r, 0.0), (-a, r, 1.0))
    return tidy(
        Contour(tuple((x + u * ux - v * uy, y + u * uy + v * ux, b) for u, v, b in corners))
    )


def unit(angle_deg: float) -> Point:
    """Return the unit vector at an angle in degrees, exact at multiples of 90."""
    quarter, rest = divmod(angle_deg, 90)
    if rest == 0:
        return ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[int(quarter) % 4]
    return (math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg)))


def polygon(corners: Sequence[CornerPoint]) -> Contour:
    """Return a closed polygon; a corner's radius becomes an arc tangent to both its sides.

    Raises ShapeError (``corner`` from 1, ``limit`` the largest radius that fits) when a rounding
    does not fit between its neighbours, or when the polygon encloses nothing.
    """
    if len(corners) < 3:
        raise ShapeError("a polygon needs at least three corners")
    reaches = [_reach(corners, index) for index in range(len(corners))]
    for index in range(len(corners)):
        _check_room(corners, reaches, index)
    vertices: list[Vertex] = []
    for index in range(len(corners)):
        vertices.extend(_corner(corners, index, reaches[index]))
    return tidy(Contour(tuple(vertices)))


def _neighbours(corners: Sequence[CornerPoint], index: int) -> tuple[Point, Point, Point]:
    after = corners[(index + 1) % len(corners)]
    return corners[index - 1][:2], corners[index][:2], after[:2]


def _turn(before: Point, here: Point, after: Point) -> float:
    """Return the turn at a corner in radians, positive to the left."""
    ax, ay = here[0] - before[0], here[1] - before[1]
    bx, by = after[0] - here[0], after[1] - here[1]
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _reach(corners: Sequence[CornerPoint], index: int) -> float:
    """Return how much of each side a rounding takes: radius x tan(turn / 2)."""
    radius = corners[index][2]
    if radius < 0:
        raise ShapeError(f"corner {index + 1}: a radius is 0 or more", corner=index + 1, limit=0.0)
    if radius == 0:
        return 0.0
    before, here, after = _neighbours(corners, index)
    if before == here or here == after:
        raise ShapeError(f"corner {index + 1} stands twice", corner=index + 1, limit=0.0)
    turn = abs(_turn(before, here, after))
    if turn > math.pi - 1e-6:
        message = f"corner {index + 1} turns straight back and cannot be rounded"
        raise ShapeError(message, corner=index + 1, limit=0.0)
    return radius * math.tan(turn / 2)


def _check_room(corners: Sequence[CornerPoint], reaches: Sequence[float], index: int) -> None:
    """Raise ShapeError when a corner's rounding and a smaller one beside it take a whole side."""
    reach = reaches[index]
    if reach == 0:
        return
    before, here, after = _neighbours(corners, index)
    sides = ((before, reaches[index - 1]), (after, reaches[(index + 1) % len(corners)]))
    room = reach
    for other, its_reach in sides:
        side = math.dist(here, other)
        if reach + its_reach > side + 1e-7:
            # The greater of two roundings gives way; equal ones share the side.
            room = min(room, side - its_reach if reach > its_reach else side / 2)
    if room < reach and any(
        reach + r > math.dist(here, o) + 1e-7 and reach >= r - 1e-12 for o, r in sides
    ):
        limit = max(0.0, corners[index][2] * room / reach)
        message = f"corner {index + 1}: radius {corners[index][2]:.6g} does not fit"
        raise ShapeError(message, corner=index + 1, limit=limit)


def _corner(corners: Sequence[CornerPoint], index: int, reach: float) -> list[Vertex]:
    before, here, after = _neighbours(corners, index)
    if reach <= _LEAST:
        return [(*here, 0.0)]
    turn = _turn(before, here, after)
    return [
        (*_towards(here, before, reach), math.tan(turn / 4)),
        (*_towards(here, after, reach), 0.0),
    ]


def _towards(here: Point, there: Point, by: float) -> Point:
    share = by / math.dist(here, there)
    return (here[0] + (there[0] - here[0]) * share, here[1] + (there[1] - here[1]) * share)


def mirrored_half(
    corners: Sequence[CornerPoint], *, x: float | None = None, y: float | None = None
) -> tuple[CornerPoint, ...]:
    """Return the corners of a half with the other half added, mirrored at x or at y.

    The half runs in order, from the mirror line round to the mirror line or not touching it;
    its first and last corner are not doubled when they lie on the line. ValueError unless exactly
    one of x and y is given.
    """
    if (x is None) == (y is None):
        raise ValueError("mirror at x or at y")
    other = [_reflected(each, x, y) for each in reversed(corners)]
    if other and math.dist(other[0][:2], corners[-1][:2]) < 1e-6:
        other = other[1:]
    if other and math.dist(other[-1][:2], corners[0][:2]) < 1e-6:
        other = other[:-1]
    return (*corners, *other)


def _reflected(corner: CornerPoint, x: float | None, y: float | None) -> CornerPoint:
    return (
        corner[0] if x is None else 2 * x - corner[0],
        corner[1] if y is None else 2 * y - corner[1],
        corner[2],
    )
