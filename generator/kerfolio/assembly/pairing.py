"""Pairs of features that meet: each is one observation of where a piece lies against another."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.links import Link
from kerfolio.assembly.placing import gap, placed, placed_back, turn
from kerfolio.assembly.ways import Way
from kerfolio.geometry.rigid import Rigid, Vector, length

TOLERANCE = 0.05
"""A pair of features this far from meeting, mm, still meets: below any fit."""

_TURNED = 2 * TOLERANCE
"""So it does turned by so much, as mm at 200 mm."""

CLOSES = TOLERANCE + _TURNED
"""The misfit of a joint all of whose pairs meet is no larger, mm."""


@dataclass(frozen=True, slots=True)
class Pairing:
    """One pair of features of a link: ``index`` of the pair, both pieces, the way it goes."""

    link: int
    index: int
    a: str
    b: str
    way: Way

    @property
    def pair(self) -> tuple[Rigid, Rigid]:
        """The two frames."""
        return self.way.pairs[self.index]

    def with_pair(self, pair: tuple[Rigid, Rigid]) -> Pairing:
        """Return the pairing with other frames."""
        pairs = (*self.way.pairs[: self.index], pair, *self.way.pairs[self.index + 1 :])
        return replace(self, way=replace(self.way, pairs=pairs))


@dataclass(frozen=True, slots=True)
class Gap:
    """A pair of features that do not meet when all others do.

    ``off`` is how far the first one lies from the second, mm, in the second part's frame;
    ``turned`` how much it is turned, as mm at 200 mm.
    """

    pairing: Pairing
    off: Vector
    turned: float


def pairings_of(
    links: Sequence[Link], ways: Mapping[int, int], poses: Mapping[str, Rigid]
) -> tuple[Pairing, ...]:
    """Return every pair of features of the links between placed pieces."""
    return tuple(
        Pairing(index, number, link.a.piece, link.b.piece, link.ways[ways[index]])
        for index, link in enumerate(links)
        if index in ways and link.a.piece in poses and link.b.piece in poses
        for number in range(len(link.ways[ways[index]].pairs))
    )


def gaps_in(pairings: Sequence[Pairing], poses: Mapping[str, Rigid]) -> tuple[Gap, ...]:
    """Return the pairs that do not meet within the tolerance."""
    found = []
    for each in pairings:
        a, b = poses[each.a], poses[each.b]
        off, turned = gap(each.way, each.pair, a, b), turn(each.pair, a, b)
        if length(off) > TOLERANCE or turned > _TURNED:
            found.append(Gap(each, b.inverse.vector(off), turned))
    return tuple(found)


def walked(pairings: Sequence[Pairing], root: str) -> dict[str, Rigid]:
    """Return the places of the pieces that pairs lead to, each by the first pair that does."""
    poses = {root: Rigid()}
    grown = True
    while grown:
        grown = False
        for each in pairings:
            if each.a in poses and each.b not in poses:
                poses[each.b] = placed(each.way, poses[each.a], (each.index,))
                grown = True
            elif each.b in poses and each.a not in poses:
                poses[each.a] = placed_back(each.way, poses[each.b], (each.index,))
                grown = True
    return poses
