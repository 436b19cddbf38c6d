"""Which piece is in the way of which: the blocking graphs of a plan put together.

For each straight way there is a graph: an edge from one piece to another where the first hits the
second as it moves along the way to infinity. Any group of pieces that no edge leaves may be taken
out along that way; so the order of putting together is a question about these graphs alone. The
idea is Wilson and Latombe's ("On the Qualitative Structure of a Mechanical Assembly", AAAI 1992,
abstract read). An edge depends on its two pieces only, never on what else stands, so each is found
once.

Straight moves alone are modelled: no tilting in, no turning, no bending. Ways lead to infinity, so
that a piece which would slide a little and then turn away counts as blocked.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.directions import directions
from kerfolio.assembly.extent import extents
from kerfolio.assembly.world import posed_panels
from kerfolio.geometry.panel_sweep import FREE, Push, sweep_volumes
from kerfolio.geometry.rigid import Vector

_PLACES = 6
"""Poses that agree to 1e-6 mm (and axes to 1e-6) are one pose."""


@dataclass(frozen=True, slots=True)
class Blocking:
    """The blocking graphs of some pieces.

    A set of pieces is a number whose bit i stands for ``labels[i]``. ``hits[way][i]`` is the set
    that piece i hits on its way along ``ways[way]``; ways stand beside their opposites.
    """

    labels: tuple[str, ...]
    ways: tuple[Vector, ...]
    hits: tuple[tuple[int, ...], ...]

    def group(self, labels: Iterable[str]) -> int:
        """Return the set of some labels; KeyError for a label that is none of the pieces."""
        found = 0
        for label in labels:
            if label not in self.labels:
                raise KeyError(label)
            found |= 1 << self.labels.index(label)
        return found

    def names(self, group: int) -> tuple[str, ...]:
        """Return the labels of a set, in the order of the pieces."""
        return tuple(self.labels[each] for each in members(group))

    def hit(self, group: int, way: int) -> int:
        """Return what a set hits that moves along a way, its own pieces not counted."""
        found = 0
        for each in members(group):
            found |= self.hits[way][each]
        return found & ~group

    def carried(self, group: int, way: int, bodies: Sequence[int]) -> int:
        """Return the smallest set that can leave along a way, and hold ``group``, out of bodies.

        ``bodies`` are sets that share no piece and move only whole; nothing else is there. It is
        the closure of the group over the edges of the way's graph.
        """
        moving, todo = 0, _whole(group, bodies)
        while todo:
            moving |= todo
            todo = _whole(self.hit(moving, way), bodies) & ~moving
        return moving


def members(group: int) -> Iterator[int]:
    """Yield the numbers of the pieces in a set, ascending."""
    while group:
        low = group & -group
        yield low.bit_length() - 1
        group ^= low


def _whole(group: int, bodies: Sequence[int]) -> int:
    found = 0
    for body in bodies:
        if body & group:
            found |= body
    return found


def blocking(assembled: Assembled, ways: tuple[Vector, ...] | None = None) -> Blocking:
    """Return the blocking graphs of all pieces, along ``ways`` or those of the joints.

    ``ways`` are unit vectors, each followed by its opposite. Pieces that overlap where they stand
    are in each other's way along every way. Like pairs in like places are tried once.
    """
    along = directions(assembled) if ways is None else ways
    hits = [[0] * len(assembled.pieces) for _ in along]
    for way, one, other in _hitting(assembled, along):
        # One that hits another going out is hit by it when that goes back.
        hits[way][one] |= 1 << other
        hits[way + 1][other] |= 1 << one
    labels = tuple(piece.label for piece in assembled.pieces)
    return Blocking(labels, along, tuple(tuple(each) for each in hits))


def _hitting(assembled: Assembled, ways: Sequence[Vector]) -> Iterator[tuple[int, int, int]]:
    """Yield (way, piece, piece hit) for every other way."""
    posed = posed_panels(assembled)
    pushes: dict[tuple[float, ...], Push] = {}
    asked = []
    for way in range(0, len(ways), 2):
        boxes = extents(assembled.pieces, ways[way])
        for one, other in permutations(range(len(posed)), 2):
            if boxes[one].may_hit(boxes[other]):
                push = Push(posed[one], posed[other], ways[way])
                key = _key(push)
                pushes.setdefault(key, push)
                asked.append((way, one, other, key))
    volumes = sweep_volumes(list(pushes.values()))
    hit = {key for key, volume in zip(pushes, volumes, strict=True) if volume > FREE}
    return ((way, one, other) for way, one, other, key in asked if key in hit)


def _key(push: Push) -> tuple[float, ...]:
    """Return what pushes have in common that hit or miss alike: the pair, seen from the mover."""
    away = push.mover.pose.inverse
    stands, way = away.after(push.other.pose), away.vector(push.direction)
    seen = (*stands.origin, *stands.x, *stands.y, *way)
    return (id(push.mover.solid), id(push.other.solid), *(round(e, _PLACES) + 0.0 for e in seen))
