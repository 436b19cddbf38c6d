"""Affine maps of the plane, as SVG writes them: matrix(a, b, c, d, e, f)."""

from __future__ import annotations

import math

from kerfolio.geometry.contour import Point

Affine = tuple[float, float, float, float, float, float]
"""(a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f (SVG 2, section 8)."""

IDENTITY: Affine = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def after(outer: Affine, inner: Affine) -> Affine:
    """Return the map that applies ``inner`` first and ``outer`` to the result."""
    a, b, c, d, e, f = outer
    g, h, i, j, k, m = inner
    return (
        a * g + c * h,
        b * g + d * h,
        a * i + c * j,
        b * i + d * j,
        a * k + c * m + e,
        b * k + d * m + f,
    )


def mapped(affine: Affine, point: Point) -> Point:
    """Return the image of a point."""
    a, b, c, d, e, f = affine
    return (a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f)


def mapped_vector(affine: Affine, vector: Point) -> Point:
    """Return the image of a vector: the map without its shift."""
    a, b, c, d, _, _ = affine
    return (a * vector[0] + c * vector[1], b * vector[0] + d * vector[1])


def translation(x: float, y: float) -> Affine:
    """Return the map that moves by (x, y)."""
    return (1.0, 0.0, 0.0, 1.0, x, y)


def scaling(x: float, y: float) -> Affine:
    """Return the map that scales the axes."""
    return (x, 0.0, 0.0, y, 0.0, 0.0)


def rotation(degrees: float, x: float = 0.0, y: float = 0.0) -> Affine:
    """Return the turn from the x axis to the y axis about a point."""
    angle = math.radians(degrees)
    cos, sin = math.cos(angle), math.sin(angle)
    if degrees % 90 == 0:
        cos, sin = float(round(cos)), float(round(sin))
    return (cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y)
