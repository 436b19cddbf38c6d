"""Loops of joints that do not close: how far they are off, and what to blame."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.assembly.adjustment import LEVER, least_deviations, least_squares
from kerfolio.assembly.blame import Blame, blamed
from kerfolio.assembly.links import Link
from kerfolio.assembly.pairing import Gap, gaps_in, pairings_of, walked
from kerfolio.assembly.placing import Walk, walk
from kerfolio.assembly.suspects import suspects_of
from kerfolio.assembly.trying import Trial
from kerfolio.geometry.rigid import Rigid, length

_WALKS = 3
"""In so many other ways round the whole is looked at where the likeliest explains nothing."""

_SLIGHT = 12.0
"""A length that is wrong by more, mm, is rather something else: a word, a count, a mirror image."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Closure:
    """Where the pieces lie, the pairs of features that do not meet there, and what explains them.

    ``ways`` is the way that each joint goes. ``blames`` are the explanations of equal count of
    culprits, the likeliest first; ``trials`` are those by other slips than a length. ``poses`` are
    those of the first. Where there is none of these, the gaps are those of the placements that fit
    most pairs.
    """

    poses: Mapping[str, Rigid]
    ways: Mapping[int, int]
    gaps: tuple[Gap, ...] = ()
    blames: tuple[Blame, ...] = ()
    trials: tuple[Trial, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Hearing:
    """How explanations are judged: only asked where something is wrong.

    ``ranked`` puts cures of places and lengths in order, those that prove wrong left out; ``tried``
    returns other slips, near the links that are accused, without which all joints agree.
    ``explains`` is False where another thickness has been explained already.
    """

    ranked: Callable[[Sequence[Blame]], tuple[Blame, ...]]
    tried: Callable[[Collection[int]], tuple[Trial, ...]]
    explains: bool = True


def closed(walks: Sequence[Walk], links: Sequence[Link], root: str, hearing: Hearing) -> Closure:
    """Return placements in which as many pairs as can be meet; as they are where all do."""
    best = walks[0]
    pairings = pairings_of(links, best.ways, best.poses)
    if not gaps_in(pairings, best.poses):
        return Closure(poses=best.poses, ways=best.ways)
    first = _Misses(best, links, root)
    if not hearing.explains:
        return first.fitting_most()
    single = first.blamed((1,), hearing)
    if single is None:
        others = _differing(best, [*walk(links, root, patient=True), *walks])
        found = (_Misses(each, links, root).blamed((1,), hearing) for each in others)
        single = next((each for each in found if each is not None), None)
    if single is not None and _largest(single.blames[0]) <= _SLIGHT:
        return single
    trials = hearing.tried(first.accused)
    if trials:
        poses = trials[0].poses
        gaps = gaps_in(pairings, poses) or gaps_in(pairings, first.fitted)
        return Closure(poses=poses, ways=best.ways, gaps=gaps, trials=trials)
    if single is not None:
        return single
    # A single joint that is all wrong speaks for itself.
    several = first.blamed((2, 3), hearing) if len(first.accused) > 1 else None
    return several or first.fitting_most()


def _differing(best: Walk, walks: Sequence[Walk]) -> list[Walk]:
    """Return the first few walks in which joints go other ways than in the best one."""
    found: list[Walk] = []
    for each in walks:
        if all(each.ways != other.ways for other in (best, *found)):
            found.append(each)
    return found[:_WALKS]


def _largest(blame: Blame) -> float:
    return max(abs(v) for each in blame.culprits for v in each.by)


class _Misses:
    """What does not meet when the joints go the ways of a walk."""

    def __init__(self, walk: Walk, links: Sequence[Link], root: str) -> None:
        self._ways, self._links, self._root = walk.ways, links, root
        self._pairings = pairings_of(links, walk.ways, walk.poses)
        self.fitted = least_squares(walk.poses, self._pairings, root)
        self._deviating = least_deviations(walk.poses, self._pairings, root)
        missing = gaps_in(self._pairings, self._deviating)
        self.accused = frozenset(gap.pairing.link for gap in missing)
        self._most = _all_wrong(missing, links)
        self._missing = missing

    def blamed(self, counts: Sequence[int], hearing: Hearing) -> Closure | None:
        """Return the explanations by places and lengths, None where there is none."""
        suspects = suspects_of(self._pairings, self._links)
        found = hearing.ranked(
            blamed(self.fitted, self._pairings, suspects, self._root, counts, self._most)
        )
        if not found:
            return None
        first = found[0]
        return Closure(poses=first.poses, ways=self._ways, gaps=first.gaps, blames=found)

    def fitting_most(self) -> Closure:
        """Return the placements in which all pairs meet exactly but those that missed most."""
        missing = {(g.pairing.link, g.pairing.index) for g in self._missing}
        trusted = [each for each in self._pairings if (each.link, each.index) not in missing]
        # A piece that only those hold keeps the place the fit gave it.
        whole = {**self._deviating, **walked(trusted, self._root)}
        return Closure(poses=whole, ways=self._ways, gaps=gaps_in(self._pairings, whole))


def _all_wrong(gaps: Sequence[Gap], links: Sequence[Link]) -> float:
    """Return by how much features miss each other altogether, mm; turns as far out as parts go."""
    sizes = (max(end.part.size) for link in links for end in (link.a, link.b))
    arm = max(1.0, max(sizes, default=0.0) / LEVER)
    return math.fsum(length(gap.off) + arm * gap.turned for gap in gaps)


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
