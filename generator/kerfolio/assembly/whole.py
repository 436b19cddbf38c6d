"""A plan put together, made ready for questions about its order."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, Move
from kerfolio.assembly.blocking import Blocking, members
from kerfolio.assembly.directions import opposite, parallel
from kerfolio.assembly.extent import Reach, corners, reach
from kerfolio.assembly.stance import footing, stands
from kerfolio.geometry.rigid import Vector

_CONTACT = 0.5
"""Pieces whose boxes come as near as this, mm, and share no chain of joints, lie on each other."""

_AIR = 5.0
"""How much further than clear a piece is drawn out, mm."""

_WORLD: tuple[Vector, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two pieces (as sets of one) that meet in a joint, and the way the first goes (unit)."""

    one: int
    other: int
    axis: Vector


class Whole:
    """The pieces as sets (see ``Blocking``), who touches whom, and what is asked again and again.

    Two pieces touch when a joint holds them. Where the joints leave the plan in several lots (a
    lid that only lies on its box), pieces of different lots touch when their boxes do.
    """

    def __init__(self, assembled: Assembled, graphs: Blocking) -> None:
        self.graphs = graphs
        self._pieces = assembled.pieces
        self._footings = [footing(piece) for piece in assembled.pieces]
        self._points = [corners(piece) for piece in assembled.pieces]
        self._stands: dict[int, bool] = {}
        index = {label: number for number, label in enumerate(graphs.labels)}
        self.meetings = tuple(
            Meeting(1 << index[each.a], 1 << index[each.b], each.frame.z)
            for each in assembled.joints
            if each.a in index and each.b in index
        )
        self._near = self._touching()

    def near(self, group: int) -> int:
        """Return what a set touches, its own pieces not counted."""
        found = 0
        for each in members(group):
            found |= self._near[each]
        return found & ~group

    def lots(self, bodies: Iterable[int]) -> list[int]:
        """Return what holds together among bodies, each lot as one set, in the bodies' order."""
        found: list[int] = []
        for body in bodies:
            reached = body | self.near(body)
            joined = [each for each in found if each & reached]
            found = [each for each in found if not each & reached]
            found.append(sum(joined) | body)
        return found

    def crossing(self, one: int, other: int) -> list[Meeting]:
        """Return the joints between two sets, turned so that the first set's piece comes first."""
        return [
            *(each for each in self.meetings if each.one & one and each.other & other),
            *(
                Meeting(each.other, each.one, opposite(each.axis))
                for each in self.meetings
                if each.one & other and each.other & one
            ),
        ]

    def askew(self, one: int, other: int, way: int) -> int:
        """Count the joints between two sets that do not lie along a way."""
        along = self.graphs.ways[way]
        return sum(not parallel(each.axis, along) for each in self.crossing(one, other))

    def mass(self, group: int) -> float:
        """Return the mass of a set, kg."""
        return math.fsum(self._footings[each].mass for each in members(group))

    def stands(self, group: int) -> bool:
        """Tell whether a set stands by itself, taken as one rigid body."""
        if group not in self._stands:
            self._stands[group] = stands([self._footings[each] for each in members(group)])
        return self._stands[group]

    def part(self, piece: int) -> str:
        """Return the part that a set of one is a piece of."""
        return self._pieces[piece.bit_length() - 1].part

    def move(self, mover: int, base: int, way: int) -> Move:
        """Return the move that brings ``mover`` home to ``base``; it leaves along ``way``."""
        out = self.graphs.ways[way]
        return Move(
            pieces=self.graphs.names(mover),
            direction=opposite(out),
            travel=self._travel(mover, base, out),
        )

    def _travel(self, mover: int, base: int, out: Vector) -> float:
        """Return how far to draw a set out until no piece is beside one that it touches.

        That is what their reaches along the way share, at most, and some air.
        """
        depth = 0.0
        for each in members(mover):
            start = self._reach(1 << each, out)[0]
            for other in members(self._near[each] & base):
                depth = max(depth, self._reach(1 << other, out)[1] - start)
        return depth + _AIR

    def _reach(self, group: int, way: Vector) -> Reach:
        return reach((point for each in members(group) for point in self._points[each]), way)

    def _touching(self) -> list[int]:
        found = [0] * len(self._pieces)
        for each in self.meetings:
            found[each.one.bit_length() - 1] |= each.other
            found[each.other.bit_length() - 1] |= each.one
        self._near = found
        lots = self.lots(1 << each for each in range(len(found)))
        laid = list(found)
        for lot in lots if len(lots) > 1 else []:
            for piece in members(lot):
                laid[piece] |= self._lying_on(piece, lot)
        return laid

    def _lying_on(self, piece: int, lot: int) -> int:
        found = 0
        for other in range(len(self._pieces)):
            if not lot >> other & 1 and all(self._overlap(piece, other, axis) for axis in _WORLD):
                found |= 1 << other
        return found

    def _overlap(self, one: int, other: int, axis: Vector) -> bool:
        a, b = self._reach(1 << one, axis), self._reach(1 << other, axis)
        return min(a[1], b[1]) - max(a[0], b[0]) > -_CONTACT
