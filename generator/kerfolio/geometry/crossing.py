"""Where two edges, straight or curved, meet: computed on the true arcs, not on chords."""

from __future__ import annotations

import math

from kerfolio.geometry.arc import Arc, Edge
from kerfolio.geometry.contour import Point

NEAR = 1e-7
"""An end this close to another edge, mm, lies on it."""


def crossings(one: Edge, other: Edge) -> list[Point]:
    """Return the points where two edges meet; for edges that overlap, the ends of the overlap.

    Ends come first and unchanged, so a point that is an end of an edge stays that very point.
    """
    found = [p for p in (one.start, one.end) if lies_on(p, other)]
    found += [p for p in (other.start, other.end) if lies_on(p, one)]
    for point in _meetings(one, other):
        fresh = all(math.dist(point, known) > 10 * NEAR for known in found)
        if fresh and lies_on(point, one) and lies_on(point, other):
            found.append(point)
    return found


def lies_on(point: Point, edge: Edge, slack: float = NEAR) -> bool:
    """Tell whether a point lies on an edge, within ``slack`` mm."""
    arc = edge.arc
    if arc:
        off = abs(math.dist(point, arc.centre) - arc.radius)
        return off <= slack and arc.spans(point, slack)
    (x, y), (ex, ey) = edge.start, edge.end
    dx, dy, px, py = ex - x, ey - y, point[0] - x, point[1] - y
    size = math.hypot(dx, dy)
    along = (px * dx + py * dy) / size
    return abs(px * dy - py * dx) / size <= slack and -slack <= along <= size + slack


def _meetings(one: Edge, other: Edge) -> list[Point]:
    """Return where the full lines and circles of two edges meet."""
    first, second = one.arc, other.arc
    if first and second:
        return _circle_circle(first, second)
    if first:
        return _line_circle(other, first)
    if second:
        return _line_circle(one, second)
    return _line_line(one, other)


def _line_line(one: Edge, other: Edge) -> list[Point]:
    ax, ay = one.end[0] - one.start[0], one.end[1] - one.start[1]
    bx, by = other.end[0] - other.start[0], other.end[1] - other.start[1]
    cross = ax * by - ay * bx
    if abs(cross) <= 1e-12 * math.hypot(ax, ay) * math.hypot(bx, by):
        return []
    px, py = other.start[0] - one.start[0], other.start[1] - one.start[1]
    along = (px * by - py * bx) / cross
    return [(one.start[0] + along * ax, one.start[1] + along * ay)]


def _line_circle(line: Edge, arc: Arc) -> list[Point]:
    dx, dy = line.end[0] - line.start[0], line.end[1] - line.start[1]
    size = math.hypot(dx, dy)
    ux, uy = dx / size, dy / size
    px, py = arc.centre[0] - line.start[0], arc.centre[1] - line.start[1]
    along, off = px * ux + py * uy, px * uy - py * ux
    half = _half_chord(arc.radius, abs(off))
    if half is None:
        return []
    return [
        (line.start[0] + (along + s) * ux, line.start[1] + (along + s) * uy) for s in (-half, half)
    ]


def _circle_circle(one: Arc, other: Arc) -> list[Point]:
    (x, y), (ox, oy) = one.centre, other.centre
    gap = math.hypot(ox - x, oy - y)
    if gap <= NEAR:
        return []
    along = (gap * gap + one.radius**2 - other.radius**2) / (2 * gap)
    half = _half_chord(one.radius, abs(along))
    if half is None:
        return []
    ux, uy = (ox - x) / gap, (oy - y) / gap
    return [(x + along * ux - s * uy, y + along * uy + s * ux) for s in (-half, half)]


def _half_chord(radius: float, off: float) -> float | None:
    """Return half the chord at a distance from the centre; None past the circle, 0 at a touch."""
    if off > radius + NEAR:
        return None
    if off > radius - NEAR:
        return 0.0
    return math.sqrt(radius * radius - off * off)
