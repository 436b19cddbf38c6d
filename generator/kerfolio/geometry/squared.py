"""Inside corners that somebody has relieved for a round cutter, made square again."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.geometry.arc import Edge, edges, heading
from kerfolio.geometry.contour import Contour, Point, Vertex

_EAR = 8.0
"""A dog-bone reaches no further, mm, from its corner (common practice, no single source)."""

_BETWEEN = 4
"""Fewer edges than that lie between the two walls of a relieved corner."""

_SQUARE = math.sin(math.radians(15))
"""Walls that meet flatter than this need no relief."""


@dataclass(frozen=True, slots=True)
class Squared:
    """A contour without the reliefs in its corners, and the radius of each one taken out, mm."""

    contour: Contour
    radii: tuple[float, ...] = ()


def squared(contour: Contour) -> Squared:
    """Return a closed contour whose relieved corners are square, the material on its left.

    So an outline runs counter-clockwise and an opening clockwise. A relief is an arc into the
    material whose circle holds the corner, where the two walls beside it would meet; the circle of
    a fillet does not. Short straight walls may lie between, as with an ear to one side.
    """
    walls = list(edges(contour))
    count = len(walls)
    radii: list[float] = []
    put: dict[int, tuple[int, Point]] = {}
    taken: set[int] = set()
    for index in range(count):
        for step in range(2, min(_BETWEEN, count - 1) + 1):
            between = [(index + n) % count for n in range(1, step)]
            if not taken.isdisjoint(between):
                break
            found = _relief(walls, index, (index + step) % count, between)
            if found is not None:
                corner, radius = found
                put[index] = (step, corner)
                taken.update(between)
                radii.append(radius)
                break
    if not put:
        return Squared(contour)
    return Squared(Contour(_without(walls, put, taken)), tuple(radii))


def _without(
    walls: Sequence[Edge], put: dict[int, tuple[int, Point]], taken: set[int]
) -> tuple[Vertex, ...]:
    starts = {index: walls[index].start for index in range(len(walls)) if index not in taken}
    for index, (step, corner) in put.items():
        starts[(index + step) % len(walls)] = corner
    return tuple((*starts[i], walls[i].bulge) for i in sorted(starts))


def _relief(
    walls: Sequence[Edge], one: int, other: int, between: Sequence[int]
) -> tuple[Point, float] | None:
    """Return the corner that two straight walls would meet in, and its relief's radius."""
    a, b = walls[one], walls[other]
    if a.bulge or b.bulge:
        return None
    (ax, ay), (bx, by) = heading(a), heading(b)
    cross = ax * by - ay * bx
    if cross > -_SQUARE:  # only where the material turns in
        return None
    dx, dy = b.start[0] - a.start[0], b.start[1] - a.start[1]
    along, back = (dx * by - dy * bx) / cross, (dx * ay - dy * ax) / cross
    long, short = math.dist(a.start, a.end), -1e-6
    if along < long + short or back > -short:
        return None  # the walls would not reach each other
    corner = (a.start[0] + along * ax, a.start[1] + along * ay)
    if any(math.dist(walls[i].start, corner) > 2 * _EAR for i in between):
        return None
    arcs = [walls[i].arc for i in between if walls[i].arc]
    into = [arc for arc in arcs if arc and arc.sweep < 0]
    if len(into) != 1 or len(arcs) != 1 or into[0].radius > _EAR:
        return None
    relief = into[0]
    if math.dist(relief.centre, corner) > relief.radius * 1.05 + 0.02:
        return None
    return corner, relief.radius
