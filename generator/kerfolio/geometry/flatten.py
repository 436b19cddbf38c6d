"""Contours of lines and arcs as plain points, to a stated tolerance."""

from __future__ import annotations

import math
from functools import lru_cache

from kerfolio.geometry.arc import Arc, edges
from kerfolio.geometry.contour import Contour, Point


def chord_count(radius: float, sweep: float, tolerance: float) -> int:
    """Return how many equal chords keep within ``tolerance`` mm of an arc (sagitta formula)."""
    if radius <= tolerance:
        return max(2, math.ceil(abs(sweep) / math.pi * 2 - 1e-9))
    step = 2 * math.acos(1 - tolerance / radius)
    return max(1, math.ceil(abs(sweep) / step - 1e-9))


def arc_points(arc: Arc, tolerance: float) -> list[Point]:
    """Return the points strictly inside an arc, on its circle, chords within ``tolerance`` mm."""
    count = chord_count(arc.radius, arc.sweep, tolerance)
    (x, y), radius, start, sweep = arc.centre, arc.radius, arc.start, arc.sweep
    angles = [start + sweep * step / count for step in range(1, count)]
    return [(x + radius * math.cos(each), y + radius * math.sin(each)) for each in angles]


def points(contour: Contour, tolerance: float = 0.01) -> list[Point]:
    """Return the contour's points in mm; the first is not repeated at the end.

    Points of arcs lie on the circle, so chords stray inward by at most ``tolerance`` mm.
    """
    return list(_points(contour, tolerance))


def traced(contour: Contour, tolerance: float = 0.01) -> list[Point]:
    """Return the points of a whole walk along a contour: a closed one ends where it begins."""
    run = points(contour, tolerance)
    return [*run, *run[:1]] if contour.closed else run


@lru_cache(maxsize=4096)
def _points(contour: Contour, tolerance: float) -> tuple[Point, ...]:
    """Return the points; the contours of one part come again at every thickness."""
    result: list[Point] = []
    for edge in edges(contour):
        result.append(edge.start)
        arc = edge.arc
        if arc:
            result.extend(arc_points(arc, tolerance))
    if not contour.closed and contour.vertices:
        result.append(contour.vertices[-1][:2])
    return tuple(result)
