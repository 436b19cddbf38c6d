"""Flattening several contours together, so that they share every point where they meet.

Arcs are cut at the exact points where they meet other edges and at fixed steps of their circle;
chords that lie on one circle are then the very same chords, and a boolean operation on the
flattened shapes invents no points of its own. Which chord came from which circle is remembered.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
import shapely

from kerfolio.geometry.arc import Arc, Edge, edges
from kerfolio.geometry.canonical import off_line
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.crossing import crossings
from kerfolio.geometry.flatten import chord_count

TOLERANCE = 0.001
"""Chords stay this close to their arcs, mm, during an operation."""
SAME = 1e-6
"""Points closer than this, mm, are one point."""


@dataclass(slots=True)
class Circles:
    """The circles met so far, and the chords cut from them: (start, end) to (circle, turn).

    ``lines`` are the straight edges seen, either way round.
    """

    known: list[tuple[Point, float]] = field(default_factory=list)
    lines: set[tuple[Point, Point]] = field(default_factory=set)
    chords: dict[tuple[Point, Point], tuple[int, int]] = field(default_factory=dict)
    _cells: dict[tuple[int, int, int], list[int]] = field(default_factory=lambda: defaultdict(list))

    def number(self, arc: Arc) -> int:
        """Return the number of an arc's circle, a new one when it is not known yet."""
        key = tuple(round(v / SAME / 10) for v in (*arc.centre, arc.radius))
        for a in (-1, 0, 1):
            for b in (-1, 0, 1):
                for c in (-1, 0, 1):
                    for found in self._cells.get((key[0] + a, key[1] + b, key[2] + c), ()):
                        centre, radius = self.known[found]
                        off = math.dist(centre, arc.centre)
                        if off < SAME and abs(radius - arc.radius) < SAME:
                            return found
        self.known.append((arc.centre, arc.radius))
        self._cells[(key[0], key[1], key[2])].append(len(self.known) - 1)
        return len(self.known) - 1

    def tag(self, start: Point, end: Point) -> tuple[int, int] | None:
        """Return the circle and turn of an edge, None for a straight one.

        An edge that is only a piece of a chord counts as that chord.
        """
        exact = self.chords.get((start, end))
        if exact or not self.chords or (start, end) in self.lines:
            return exact
        for (one, other), tag in self.chords.items():
            if off_line(start, one, other) < SAME and off_line(end, one, other) < SAME:
                along = (end[0] - start[0]) * (other[0] - one[0])
                along += (end[1] - start[1]) * (other[1] - one[1])
                if along > 0:
                    return tag
        return None

    def settled(
        self, point: Point, before: tuple[int, int] | None, after: tuple[int, int] | None
    ) -> Point:
        """Return a point between two edges, put on their circle when it lies on a chord."""
        tag = before or after
        if tag is None:
            return point
        centre, radius = self.known[tag[0]]
        reach = math.dist(point, centre)
        if abs(reach - radius) < SAME:
            return point
        scale = radius / reach
        return (
            centre[0] + (point[0] - centre[0]) * scale,
            centre[1] + (point[1] - centre[1]) * scale,
        )


_COARSE = 1024
"""A coarse cell is so many fine ones wide."""


@dataclass(slots=True)
class Pins:
    """Points met so far; a new point next to a known one becomes that one.

    Cells are as wide as the distance in question, so that only neighbours need be looked at; coarse
    ones tell for most points that there are none.
    """

    _cells: dict[tuple[int, int], Point] = field(default_factory=dict)
    _coarse: set[tuple[int, int]] = field(default_factory=set)

    def pin(self, point: Point) -> Point:
        """Return the known point within 1e-6 mm, or the point itself, known from now on."""
        column, row = math.floor(point[0] / SAME), math.floor(point[1] / SAME)
        (wide, x), (high, y) = divmod(column, _COARSE), divmod(row, _COARSE)
        inner = 0 < x < _COARSE - 1 and 0 < y < _COARSE - 1
        if not inner or (wide, high) in self._coarse:
            for dx in (0, -1, 1):
                for dy in (0, -1, 1):
                    near = self._cells.get((column + dx, row + dy))
                    if near is not None and math.dist(near, point) <= SAME:
                        return near
        point = (point[0] + 0.0, point[1] + 0.0)
        self._cells[(column, row)] = point
        self._coarse.add((wide, high))
        return point


@dataclass(frozen=True, slots=True)
class Noded:
    """Flattened contours, in the order given, with their points and the origin of their chords."""

    rings: tuple[tuple[Point, ...], ...]
    circles: Circles
    pins: Pins


def noded(contours: Sequence[Contour]) -> Noded:
    """Flatten contours together (chords within 0.001 mm of their arcs)."""
    pins, circles = Pins(), Circles()
    flat: list[list[Edge]] = []
    for contour in contours:
        for x, y, _ in contour.vertices:
            pins.pin((x, y))
        flat.append(list(edges(contour)))
    cuts = _cuts(flat)
    rings = []
    for index, its_edges in enumerate(flat):
        ring: list[Point] = []
        for position, edge in enumerate(its_edges):
            path = _cut_edge(edge, cuts.get((index, position), ()), pins, circles)
            ring.extend(path[:-1])
        rings.append(tuple(p for i, p in enumerate(ring) if p != ring[i - 1]))
    return Noded(tuple(rings), circles, pins)


def _cuts(flat: Sequence[Sequence[Edge]]) -> dict[tuple[int, int], list[Point]]:
    """Return the points where each edge, by contour and position, meets edges of other contours."""
    names = [(i, j) for i, its_edges in enumerate(flat) for j in range(len(its_edges))]
    result: dict[tuple[int, int], list[Point]] = defaultdict(list)
    if len(flat) < 2 or not names:
        return result
    for one, other in near_pairs([flat[i][j] for i, j in names]):
        (i, j), (k, m) = names[one], names[other]
        if i != k:
            for point in crossings(flat[i][j], flat[k][m]):
                result[(i, j)].append(point)
                result[(k, m)].append(point)
    return result


def near_pairs(its_edges: Sequence[Edge]) -> list[tuple[int, int]]:
    """Return the pairs of edges whose boxes meet, as positions, the lower first, in order."""
    boxes = np.array([_box(edge) for edge in its_edges])
    margin = 1e-5
    shapes = shapely.box(
        boxes[:, 0] - margin, boxes[:, 1] - margin, boxes[:, 2] + margin, boxes[:, 3] + margin
    )
    found = shapely.STRtree(shapes).query(shapes).T
    return sorted((int(a), int(b)) for a, b in found if a < b)


def _box(edge: Edge) -> tuple[float, float, float, float]:
    arc = edge.arc
    found = [edge.start, edge.end, *(arc.extremes() if arc else ())]
    xs, ys = [x for x, _ in found], [y for _, y in found]
    return (min(xs), min(ys), max(xs), max(ys))


def _cut_edge(edge: Edge, cuts: Iterable[Point], pins: Pins, circles: Circles) -> list[Point]:
    """Return an edge's points from end to end; an arc's chords are noted with their circle."""
    start, end = pins.pin(edge.start), pins.pin(edge.end)
    arc = edge.arc
    if not arc:
        inner = sorted((pins.pin(p) for p in cuts), key=lambda p: math.dist(p, start))
        path = _without_repeats([start, *inner, end])
        for one, other in pairwise(path):
            circles.lines |= {(one, other), (other, one)}
        return path
    number = circles.number(arc)
    inner = sorted((pins.pin(p) for p in cuts), key=arc.travel)
    # A cut at the start may come out a full turn away.
    inner = [p for p in inner if p not in (start, end)]
    path = _with_steps([start, *inner, end], arc, circles.known[number], pins)
    turn = 1 if arc.sweep > 0 else -1
    for one, other in pairwise(path):
        circles.chords[(one, other)] = (number, turn)
        circles.chords[(other, one)] = (number, -turn)
    return path


def _with_steps(
    stops: Sequence[Point], arc: Arc, circle: tuple[Point, float], pins: Pins
) -> list[Point]:
    """Return the stops of an arc with the circle's fixed steps between them."""
    centre, radius = circle
    step = math.tau / max(8, chord_count(radius, math.tau, TOLERANCE))
    whole = Arc(centre, radius, 0.0, math.tau)
    sign = 1 if arc.sweep > 0 else -1
    first = math.atan2(stops[0][1] - centre[1], stops[0][0] - centre[0])
    travels = [0.0, *(arc.travel(p) for p in stops[1:-1]), abs(arc.sweep)]
    result = [stops[0]]
    for begin, finish, stop in zip(travels, travels[1:], stops[1:], strict=False):
        here, there = sorted((first + sign * begin, first + sign * finish))
        # Steps right beside a stop would make needless tiny chords.
        low, high = math.ceil(here / step + 0.01), math.floor(there / step - 0.01)
        count = round(math.tau / step)
        inner = [pins.pin(whole.point((k % count) * step)) for k in range(low, high + 1)]
        result.extend(inner if sign > 0 else inner[::-1])
        result.append(stop)
    return _without_repeats(result)


def _without_repeats(path: Sequence[Point]) -> list[Point]:
    return [p for i, p in enumerate(path) if i == 0 or p != path[i - 1]]
