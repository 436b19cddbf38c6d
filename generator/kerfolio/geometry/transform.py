"""Moving, turning, mirroring and scaling of contours and regions."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import TypeVar

from kerfolio.geometry.arc import reversed_contour
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.shapes import unit

S = TypeVar("S", Contour, Region)


def moved(shape: S, dx: float, dy: float) -> S:
    """Return a shape moved by (dx, dy) mm."""
    return _mapped(shape, lambda p: (p[0] + dx, p[1] + dy))


def turned(shape: S, degrees: float, about: Point = (0.0, 0.0)) -> S:
    """Return a shape turned counter-clockwise about a point; exact at multiples of 90 degrees."""
    (cos, sin), (x, y) = unit(degrees), about
    return _mapped(
        shape,
        lambda p: (
            x + (p[0] - x) * cos - (p[1] - y) * sin,
            y + (p[0] - x) * sin + (p[1] - y) * cos,
        ),
    )


def scaled(shape: S, factor: float, about: Point = (0.0, 0.0)) -> S:
    """Return a shape scaled evenly about a point; ValueError unless the factor is above 0."""
    if factor <= 0:
        raise ValueError("a scale is above 0")
    x, y = about
    return _mapped(shape, lambda p: (x + (p[0] - x) * factor, y + (p[1] - y) * factor))


def mirrored_x(shape: S, at: float = 0.0) -> S:
    """Return a shape mirrored at the vertical line x = ``at``, left and right exchanged.

    Closed contours keep their orientation, open ones their direction of travel.
    """
    return _mapped(shape, lambda p: (2 * at - p[0], p[1]), flips=True)


def mirrored_y(shape: S, at: float = 0.0) -> S:
    """Return a shape mirrored at the horizontal line y = ``at``, up and down exchanged.

    Closed contours keep their orientation, open ones their direction of travel.
    """
    return _mapped(shape, lambda p: (p[0], 2 * at - p[1]), flips=True)


def _mapped(shape: S, move: Callable[[Point], Point], *, flips: bool = False) -> S:
    if isinstance(shape, Region):
        openings = tuple(_contour(each, move, flips) for each in shape.openings)
        return Region(_contour(shape.outer, move, flips), openings)
    return _contour(shape, move, flips)


def _contour(contour: Contour, move: Callable[[Point], Point], flips: bool) -> Contour:
    sign = -1.0 if flips else 1.0
    vertices = tuple((*move((x, y)), sign * b if b else 0.0) for x, y, b in contour.vertices)
    made = Contour(vertices, contour.closed)
    return reversed_contour(made) if flips and contour.closed else made


def turned_point(point: Point, degrees: float, about: Point = (0.0, 0.0)) -> Point:
    """Return a point turned counter-clockwise about another."""
    cos, sin = unit(degrees)
    dx, dy = point[0] - about[0], point[1] - about[1]
    return (about[0] + dx * cos - dy * sin, about[1] + dx * sin + dy * cos)


def turn_of(direction: Point) -> float:
    """Return the angle of a direction in degrees, above -180 to 180."""
    return math.degrees(math.atan2(direction[1], direction[0]))
