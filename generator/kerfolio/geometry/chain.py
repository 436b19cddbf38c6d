"""Loose paths joined end to end, as drawings of single lines and arcs need."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.geometry.arc import reversed_contour
from kerfolio.geometry.contour import Contour, Point, Vertex

GAP = 0.01
"""Ends this close, mm, meet."""


@dataclass(frozen=True, slots=True)
class Chain:
    """A path joined from the open paths ``members`` (their positions), in order of travel."""

    contour: Contour
    members: tuple[int, ...]


def chained(paths: Sequence[Contour], gap: float = GAP) -> tuple[Chain, ...]:
    """Return open paths joined where exactly two ends meet within ``gap`` mm.

    Paths that come back to their start are closed. Where three or more ends meet nothing is
    joined: which way the line goes on is not for us to guess.
    """
    ends = _Ends(paths, gap)
    used: set[int] = set()
    found = []
    for index in range(len(paths)):
        if index not in used:
            walk = ends.walk(index)
            used.update(member for member, _ in walk)
            found.append(_joined(paths, walk, gap))
    return tuple(found)


def doubles(paths: Sequence[Contour], gap: float = GAP) -> tuple[int, ...]:
    """Return the positions of paths that repeat an earlier one, either way round."""
    seen: set[tuple[tuple[int, ...], ...]] = set()
    found = []
    for index, path in enumerate(paths):
        key = min(_key(path, gap), _key(reversed_contour(path), gap))
        if key in seen:
            found.append(index)
        seen.add(key)
    return tuple(found)


def _key(path: Contour, gap: float) -> tuple[tuple[int, ...], ...]:
    return tuple((round(x / gap), round(y / gap), round(b * 1e4)) for x, y, b in path.vertices)


class _Ends:
    """Which path ends meet: ends numbered 2 i (start) and 2 i + 1 (end) of path i."""

    def __init__(self, paths: Sequence[Contour], gap: float) -> None:
        self._nodes: list[list[int]] = []
        self._node_of: list[int] = []
        cells: dict[tuple[int, int], list[tuple[Point, int]]] = {}
        for path in paths:
            for vertex in (path.vertices[0], path.vertices[-1]):
                self._node_of.append(self._node(vertex[:2], gap, cells))
                self._nodes[self._node_of[-1]].append(len(self._node_of) - 1)

    def _node(
        self, point: Point, gap: float, cells: dict[tuple[int, int], list[tuple[Point, int]]]
    ) -> int:
        column, row = math.floor(point[0] / gap), math.floor(point[1] / gap)
        for dx in (0, -1, 1):
            for dy in (0, -1, 1):
                for known, node in cells.get((column + dx, row + dy), ()):
                    if math.dist(known, point) <= gap:
                        return node
        self._nodes.append([])
        cells.setdefault((column, row), []).append((point, len(self._nodes) - 1))
        return len(self._nodes) - 1

    def _partner(self, end: int) -> int | None:
        """Return the one other end at the same spot, None where there is none or a choice."""
        here = self._nodes[self._node_of[end]]
        if len(here) != 2:
            return None
        return here[0] if here[1] == end else here[1]

    def walk(self, first: int) -> list[tuple[int, bool]]:
        """Return the paths joined with one, in order, each with whether it runs forward."""
        walk = [(first, True)]
        if self._extend(walk):
            return walk
        backward = [(first, False)]
        self._extend(backward)
        return [(member, not forward) for member, forward in backward[:0:-1]] + walk

    def _extend(self, walk: list[tuple[int, bool]]) -> bool:
        """Go on from the last path as far as it goes; tell whether that leads back round."""
        start = walk[0][0]
        while True:
            member, forward = walk[-1]
            partner = self._partner(2 * member + (1 if forward else 0))
            if partner is None:
                return False
            if partner // 2 == start:
                return True
            walk.append((partner // 2, partner % 2 == 0))


def _joined(paths: Sequence[Contour], walk: Sequence[tuple[int, bool]], gap: float) -> Chain:
    vertices: list[Vertex] = []
    for member, forward in walk:
        path = paths[member] if forward else reversed_contour(paths[member])
        if vertices:
            x, y = _corner(vertices, path.vertices, gap)
            vertices[-1:] = [(x, y, path.vertices[0][2]), *path.vertices[1:]]
        else:
            vertices += path.vertices
    closed = len(vertices) > 2 and math.dist(vertices[0][:2], vertices[-1][:2]) <= gap
    if closed:
        x, y = _corner(vertices, vertices, gap)
        vertices[0] = (x, y, vertices[0][2])
        vertices.pop()
    return Chain(Contour(tuple(vertices), closed), tuple(member for member, _ in walk))


def _corner(before: Sequence[Vertex], after: Sequence[Vertex], gap: float) -> Point:
    """Return where a path that ends goes on as another that begins.

    Ends that only nearly meet (further apart than ``GAP``) meet where their straight lines do, if
    that is near; else where the first one ends.
    """
    end, start = before[-1][:2], after[0][:2]
    apart = math.dist(end, start)
    if apart <= GAP or len(before) < 2 or before[-2][2] or after[0][2]:
        return end
    (ax, ay), (bx, by) = before[-2][:2], after[1][:2]
    dx, dy, ex, ey = end[0] - ax, end[1] - ay, bx - start[0], by - start[1]
    cross = dx * ey - dy * ex
    if abs(cross) < 1e-3 * math.hypot(dx, dy) * math.hypot(ex, ey):
        return end
    reach = ((start[0] - end[0]) * ey - (start[1] - end[1]) * ex) / cross
    spot = (end[0] + reach * dx, end[1] + reach * dy)
    return spot if math.dist(spot, end) <= 2 * gap else end
