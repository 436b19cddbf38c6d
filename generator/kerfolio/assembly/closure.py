"""Loops of joints that do not close: how far they are off, and what to blame."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from kerfolio.assembly.adjustment import least_deviations, least_squares
from kerfolio.assembly.blame import Blame, blamed
from kerfolio.assembly.links import Link, counted_back, exchanged
from kerfolio.assembly.pairing import Gap, Pairing, gaps_in, pairings_of, walked
from kerfolio.assembly.placing import walk
from kerfolio.assembly.suspects import suspects_of
from kerfolio.geometry.rigid import Rigid

_TRIED = 20
"""So many exchanges are tried at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Closure:
    """Where the pieces lie, the pairs of features that do not meet there, and what explains them.

    ``blames`` are the explanations of equal count of culprits; ``poses`` are those of the first.
    ``exchange`` are two links whose second ends ought to be exchanged, ``backward`` is one whose
    ends count from different sides. Where there is none of these, the gaps are those of the
    placements that fit most pairs.
    """

    poses: Mapping[str, Rigid]
    gaps: tuple[Gap, ...] = ()
    blames: tuple[Blame, ...] = ()
    exchange: tuple[Link, Link] | None = None
    backward: Link | None = None


def closed(
    poses: Mapping[str, Rigid], pairings: Sequence[Pairing], links: Sequence[Link], root: str
) -> Closure:
    """Return placements in which as many pairs as can be meet; as they are where all do."""
    if not gaps_in(pairings, poses):
        return Closure(poses=poses)
    fitted = least_squares(poses, pairings, root)
    suspects = suspects_of(pairings, links)
    blames = blamed(fitted, pairings, suspects, root, counts=(1,))
    if blames:
        return _by(blames)
    deviating = least_deviations(poses, pairings, root)
    accused = {gap.pairing.link for gap in gaps_in(pairings, deviating)}
    simple = [
        *_exchange(pairings, links, accused, root),
        *_backward(pairings, links, accused, root),
    ]
    if simple:
        return min(simple, key=lambda each: each[0])[1]
    # A single joint that is all wrong speaks for itself.
    if len(accused) > 1:
        blames = blamed(fitted, pairings, suspects, root, counts=(2, 3))
    return _by(blames) if blames else _fitting_most(deviating, pairings, root)


def _by(blames: tuple[Blame, ...]) -> Closure:
    return Closure(poses=blames[0].poses, gaps=blames[0].gaps, blames=blames)


def _fitting_most(
    deviating: Mapping[str, Rigid], pairings: Sequence[Pairing], root: str
) -> Closure:
    """Return the placements in which all pairs meet exactly but those that missed most."""
    missing = {(g.pairing.link, g.pairing.index) for g in gaps_in(pairings, deviating)}
    trusted = [each for each in pairings if (each.link, each.index) not in missing]
    # A piece that only those hold keeps the place the fit gave it.
    whole = {**deviating, **walked(trusted, root)}
    return Closure(poses=whole, gaps=gaps_in(pairings, whole))


_Simple = tuple[tuple[int, int], Closure]
"""A closure by one slip of a list, and how unusual the ways are that pieces then go."""


def _backward(
    pairings: Sequence[Pairing], links: Sequence[Link], accused: Collection[int], root: str
) -> Iterator[_Simple]:
    """Yield the closures with one link counted the other way."""
    near = {piece for i in accused for piece in (links[i].a.piece, links[i].b.piece)}
    sets = [
        i
        for i, link in enumerate(links)
        if len(link.b.features) > 1 and not near.isdisjoint((link.a.piece, link.b.piece))
    ]
    for i in sets[:_TRIED]:
        turned = counted_back(links[i])
        if not turned.ways:
            continue
        changed = [turned if n == i else link for n, link in enumerate(links)]
        best = walk(changed, root)[0]
        if not gaps_in(pairings_of(changed, best.ways, best.poses), best.poses):
            gaps = gaps_in([each for each in pairings if each.link == i], best.poses)
            yield best.rank, Closure(poses=best.poses, gaps=gaps, backward=links[i])


def _exchange(
    pairings: Sequence[Pairing], links: Sequence[Link], accused: Collection[int], root: str
) -> Iterator[_Simple]:
    """Yield the first closure with two links' second ends exchanged, if one closes so."""
    tried = 0
    for i, j in combinations(sorted(accused), 2):
        one, other = links[i], links[j]
        alike = one.kind == other.kind and len(one.a.features) == len(other.a.features)
        if tried == _TRIED or not alike or not _share(one, other):
            continue
        first, second = exchanged(one, other)
        if not first.ways or not second.ways or first.a.piece == first.b.piece:
            continue
        tried += 1
        changed = [{i: first, j: second}.get(n, link) for n, link in enumerate(links)]
        best = walk(changed, root)[0]
        if not gaps_in(pairings_of(changed, best.ways, best.poses), best.poses):
            theirs = [each for each in pairings if each.link in (i, j)]
            gaps = gaps_in(theirs, best.poses)
            yield best.rank, Closure(poses=best.poses, gaps=gaps, exchange=(one, other))
            return


def _share(one: Link, other: Link) -> bool:
    return one.b.piece == other.b.piece or one.a.piece == other.a.piece


def bridges(links: Sequence[Link]) -> tuple[int, ...]:
    """Return the links that no loop holds: nothing checks where they put a piece.

    A link of two or more pairs is a loop of its own.
    """
    return tuple(
        index
        for index, link in enumerate(links)
        if len(link.ways[0].pairs) == 1 and not _reaches(links, index)
    )


def _reaches(links: Sequence[Link], without: int) -> bool:
    """Tell whether the ends of a link hang together without it."""
    reached, waiting = {links[without].a.piece}, [links[without].a.piece]
    while waiting:
        for other in _neighbours(links, waiting.pop(), without):
            if other not in reached:
                reached.add(other)
                waiting.append(other)
    return links[without].b.piece in reached


def _neighbours(links: Sequence[Link], piece: str, without: int) -> Iterator[str]:
    for index, link in enumerate(links):
        if index != without and piece in (link.a.piece, link.b.piece):
            yield link.b.piece if link.a.piece == piece else link.a.piece
