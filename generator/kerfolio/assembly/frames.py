"""Frames on features: two features meet just where their frames coincide.

Of a joint's two frames, z is the way the first piece goes. A frame lies in its part's own frame:
x and y in the face as drawn, z from the rear (0) to the show face (the thickness); mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from math import cos, hypot, radians, sin

from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.rigid import Rigid, Vector, cross
from kerfolio.settling.settled import SettledFeature, SettledPart

SHOW, BACK = "show", "back"
_NORMAL: Vector = (0.0, 0.0, 1.0)
_LEVEL = 1e-6


def tab_frame(at: Point, outward: Point, thickness: float) -> Rigid:
    """Return the frame of what stands out of an edge: z outward, y to the show face.

    Its origin is in the middle of the root, half way through the sheet.
    """
    z = (outward[0], outward[1], 0.0)
    return Rigid((at[0], at[1], thickness / 2), cross(_NORMAL, z), _NORMAL, z)


def entry_frame(at: Point, along: Point, face: str, thickness: float) -> Rigid:
    """Return the frame of an opening entered from a face: z inward, x along it."""
    z: Vector = (0.0, 0.0, -1.0) if face == SHOW else _NORMAL
    x = (along[0], along[1], 0.0)
    level = thickness if face == SHOW else 0.0
    return Rigid((at[0], at[1], level), x, cross(z, x), z)


def through_frame(at: Point, along: Point, face: str, thickness: float) -> Rigid:
    """Return an entry frame moved half way through the sheet."""
    made = entry_frame(at, along, face, thickness)
    return Rigid((at[0], at[1], thickness / 2), made.x, made.y, made.z)


def crossing_frame(bottom: Point, opening: Point, thickness: float) -> Rigid:
    """Return the frame of the notch that goes over another one: z towards its open end."""
    return tab_frame(bottom, opening, thickness)


def crossed_frame(bottom: Point, opening: Point, sign: float, thickness: float) -> Rigid:
    """Return the frame of the notch that is crossed: z away from its open end.

    ``sign`` says to which side the other piece's show face looks.
    """
    z = (-opening[0], -opening[1], 0.0)
    x = (0.0, 0.0, sign)
    return Rigid((bottom[0], bottom[1], thickness / 2), x, cross(z, x), z)


def corner_frames(
    a: tuple[Point, Point, float], b: tuple[Point, Point, float], a_out: bool, b_out: bool
) -> tuple[Rigid, Rigid]:
    """Return the frames of two edges that make a corner with fingers.

    An edge is (middle, outward direction, thickness). x is outward of the first and outer normal
    of the second, y the other way about; z runs along the corner.
    """
    x = (a[1][0], a[1][1], 0.0)
    y = (0.0, 0.0, 1.0 if a_out else -1.0)
    first = Rigid((*a[0], a[2] if a_out else 0.0), x, y, cross(x, y))
    x, y = (0.0, 0.0, 1.0 if b_out else -1.0), (b[1][0], b[1][1], 0.0)
    second = Rigid((*b[0], b[2] if b_out else 0.0), x, y, cross(x, y))
    return first, second


def lying_frame(at: Point, along: Point, away: bool, thickness: float) -> Rigid:
    """Return the frame of a piece that lies on another: z out of the face that touches."""
    z: Vector = (0.0, 0.0, -1.0) if away else _NORMAL
    x = (along[0], along[1], 0.0)
    return Rigid((at[0], at[1], 0.0 if away else thickness), x, cross(z, x), z)


def upward(direction: Point) -> Point:
    """Return a direction or its opposite, whichever points up, or else to the right."""
    x, y = direction
    return direction if y > _LEVEL or (abs(y) <= _LEVEL and x > 0) else (-x, -y)


def towards(start: Point, end: Point) -> Point:
    """Return the unit direction from a point to another; along x where they coincide."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    size = hypot(dx, dy)
    return (dx / size, dy / size) if size > _LEVEL else (1.0, 0.0)


def turned_to(degrees: float) -> Point:
    """Return the unit direction at an angle from the x axis."""
    return cos(radians(degrees)), sin(radians(degrees))


def middle(points: Sequence[Point]) -> Point:
    """Return the mean of points."""
    xs, ys = zip(*points, strict=True)
    return math.fsum(xs) / len(xs), math.fsum(ys) / len(ys)


def at_ends(feature: SettledFeature) -> float:
    """Return the clearance that a feature has been given at its ends or its bottom, mm."""
    return feature.room.ends if feature.room else 0.0


def nominal_bottom(feature: SettledFeature) -> Point:
    """Return where a notch's bottom lies before the fit deepened it: bottoms of two that cross
    meet there.
    """
    (x, y), (dx, dy), fit = feature.at, feature.direction, at_ends(feature)
    return x + fit * dx, y + fit * dy


def side_line(part: SettledPart, side: str) -> tuple[Point, Point, float]:
    """Return the middle, the outward direction and the length of a straight side of a part.

    The side is where the outline touches its box; mm.
    """
    outer = part.plain.outer
    box = bounds(outer)
    upright = side in ("left", "right")
    level = {"left": box.x0, "right": box.x1, "bottom": box.y0, "top": box.y1}[side]
    axis = 0 if upright else 1
    on = [v[1 - axis] for v in outer.vertices if abs(v[axis] - level) < _LEVEL]
    across = (box.y0, box.y1) if upright else (box.x0, box.x1)
    low, high = (min(on), max(on)) if on else (sum(across) / 2,) * 2  # a round side: its middle
    half = (low + high) / 2
    sign = 1.0 if side in ("right", "top") else -1.0
    if upright:
        return (level, half), (sign, 0.0), high - low
    return (half, level), (0.0, sign), high - low
