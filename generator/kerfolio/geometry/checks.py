"""What can be wrong with a contour, as plain values."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import shapely

from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.crossing import crossings
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import length, signed_area
from kerfolio.geometry.noding import near_pairs

OPEN = "open"
CROSSING = "self-crossing"
ZERO_AREA = "zero-area"
DOUBLED = "doubled-point"

SAME = 1e-6
JOINT = 0.01


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault of a contour: its kind, where it is (mm) and, for a gap, how wide (mm)."""

    kind: str
    at: Point
    size: float = 0.0


def faults(contour: Contour) -> tuple[Fault, ...]:
    """Return the faults of a contour that should be closed and simple, in a fixed order.

    Kinds: ``open`` (with its gap), ``zero-area``, ``self-crossing`` (the first point, also where
    it only touches itself), ``doubled-point`` (two vertices in a row at one place).
    """
    if not contour.vertices:
        return (Fault(ZERO_AREA, (0.0, 0.0)),)
    found: list[Fault] = []
    first, last = contour.vertices[0][:2], contour.vertices[-1][:2]
    if not contour.closed:
        found.append(Fault(OPEN, last, math.dist(first, last)))
    crossing = None if _is_line(contour) else self_crossing(contour)
    if crossing:
        found.append(Fault(CROSSING, crossing))
    elif contour.closed and is_flat(contour):
        found.append(Fault(ZERO_AREA, first))
    found.extend(_doubled(contour))
    return tuple(found)


def is_flat(contour: Contour) -> bool:
    """Tell whether a closed contour encloses (nearly) nothing: thinner than 0.001 mm all over."""
    return abs(signed_area(contour)) <= 1e-3 * length(contour) / 2


def _is_line(contour: Contour) -> bool:
    """Tell whether a closed contour runs to and fro on one line."""
    if not contour.closed:
        return False
    sparse = shapely.convex_hull(shapely.multipoints(_corners(contour)))
    if _is_thin(sparse) and any(bulge for _, _, bulge in contour.vertices):
        return _is_thin(shapely.convex_hull(shapely.multipoints(points(contour, 1e-3))))
    return _is_thin(sparse)


def _corners(contour: Contour) -> list[Point]:
    """Return a contour's corners and the middles of its arcs: mostly enough to see its width."""
    found = [(x, y) for x, y, _ in contour.vertices]
    arcs = (edge.arc for edge in edges(contour))
    return found + [each.point(each.start + each.sweep / 2) for each in arcs if each]


def _is_thin(hull: Any) -> bool:
    return bool(hull.area <= 1e-3 * hull.length / 2)


def self_crossing(contour: Contour) -> Point | None:
    """Return the first point where a contour meets itself, None when it does not.

    Only a contour whose crossings lie on its true arcs is faulted: chords play no part.
    """
    walls = list(edges(contour))
    if len(walls) < 2:
        return None
    for one, other in near_pairs(walls):
        for point in crossings(walls[one], walls[other]):
            if not _is_joint(walls, one, other, point, contour.closed):
                return point
    return None


def _is_joint(walls: list[Edge], one: int, other: int, point: Point, closed: bool) -> bool:
    """Tell whether two edges meet just where one follows the other.

    Where an arc runs smoothly into the next edge, the point of touch is only known roughly.
    """
    follows = other == one + 1 and math.dist(point, walls[one].end) < JOINT
    wraps = closed and one == 0 and other == len(walls) - 1
    return follows or (wraps and math.dist(point, walls[0].start) < JOINT)


def _doubled(contour: Contour) -> list[Fault]:
    vertices = contour.vertices
    pairs = zip(vertices, vertices[1:] + (vertices[:1] if contour.closed else ()), strict=False)
    return [
        Fault(DOUBLED, a[:2])
        for a, b in pairs
        if len(vertices) > 1 and math.dist(a[:2], b[:2]) < SAME
    ]
