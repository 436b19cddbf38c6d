"""Full circles, which formats write as one element."""

from __future__ import annotations

from math import dist, tau

from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point

_SAME = 1e-6
"""mm and radians within which arcs belong to one circle."""


def circle_of(contour: Contour) -> tuple[Point, float] | None:
    """Return centre and radius in mm when the closed contour is exactly one full circle."""
    arcs = [edge.arc for edge in edges(contour)]
    first = arcs[0] if arcs else None
    if first is None or not contour.closed:
        return None
    sweep = 0.0
    for arc in arcs:
        if arc is None or dist(arc.centre, first.centre) > _SAME:
            return None
        if abs(arc.radius - first.radius) > _SAME:
            return None
        sweep += arc.sweep
    return (first.centre, first.radius) if abs(abs(sweep) - tau) < _SAME else None
