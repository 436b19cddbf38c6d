"""Which features are in the wrong place when loops of joints do not close.

The fewest suspects are looked for that, put elsewhere in their sheets, let every joint agree: one,
else two, else three. Residuals are linear in small moves of pieces and suspects alike, so all
suspects are weighed at once: what the pieces' own moves can mend is taken out of their columns and
of the residuals (orthogonal projection), and what is left must be in the span of the suspects'.
What looks likely is then solved without that approximation.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np

from kerfolio.assembly.adjustment import Numbers, columns_of, linearised, nudged, solved
from kerfolio.assembly.feature_kinds import Freedom
from kerfolio.assembly.pairing import TOLERANCE, Gap, Pairing, gaps_in
from kerfolio.assembly.suspects import Suspect, columns, put_right
from kerfolio.geometry.rigid import Rigid, length

_LIKELY = 0.1
"""A likely explanation leaves less than this share of the misses."""

_TRIED = 8
_POOL = {1: 1000, 2: 14, 3: 9}
"""How many of the best suspects are combined, by how many are to blame together."""

_MOVES = 2
"""Of several at once, none is off in more ways: else anything could be explained."""

_ROUNDS = 8
_STILL = 1e-6

_FURTHEST = 5.0
"""A suspect is moved no further than so many times all misses: else it moves what hardly counts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Culprit:
    """A suspect and the move that puts it right: mm along its axes, then the turn at 200 mm.

    ``gaps`` are the pairs that it spoils.
    """

    suspect: Suspect
    by: tuple[float, ...]
    gaps: tuple[Gap, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Blame:
    """An explanation: who is to blame, and where the pieces lie once that is put right."""

    culprits: tuple[Culprit, ...]
    poses: Mapping[str, Rigid]

    @property
    def gaps(self) -> tuple[Gap, ...]:
        """All pairs that do not meet."""
        return tuple(gap for each in self.culprits for gap in each.gaps)


def blamed(
    poses: Mapping[str, Rigid],
    pairings: Sequence[Pairing],
    suspects: Sequence[Suspect],
    root: str,
    counts: Sequence[int],
) -> tuple[Blame, ...]:
    """Return all explanations with the fewest suspects, the simplest ones first; perhaps none.

    ``counts`` says how many may be to blame together, up to three.
    """
    weighed = _Weighed(poses, pairings, suspects, root)
    for count in counts:
        most = _POOL[count]
        likely = sorted(
            (round(weighed.left(each), 3), each) for each in weighed.combined(count, most)
        )
        made = [
            _solved([suspects[i] for i in each], poses, pairings, root)
            for left, each in likely[:_TRIED]
            if left < _LIKELY
        ]
        found = [each for each in made if each is not None and (count == 1 or _plausible(each))]
        if found:
            return tuple(sorted(found, key=_complexity))
    return ()


class _Weighed:
    """The residuals and the suspects' columns, without what the pieces' own moves can mend."""

    def __init__(
        self,
        poses: Mapping[str, Rigid],
        pairings: Sequence[Pairing],
        suspects: Sequence[Suspect],
        root: str,
    ) -> None:
        matrix, off = linearised(pairings, poses, columns_of(poses, root))
        theirs = [columns(each, pairings, poses) for each in suspects]
        every = np.column_stack([off, *theirs])
        every -= matrix @ solved(matrix.T @ matrix, matrix.T @ every)
        ends = np.cumsum([1, *(each.shape[1] for each in theirs)])
        self._off: Numbers = every[:, 0]
        self._theirs = [every[:, a:b] for a, b in pairwise(ends)]

    def left(self, chosen: Sequence[int]) -> float:
        """Return the share of the misses that suspects, put right, leave."""
        held = np.column_stack([self._theirs[i] for i in chosen])
        move = np.linalg.lstsq(held, -self._off, rcond=1e-6)[0]
        rest = self._off + held @ move
        return float(np.linalg.norm(rest) / max(float(np.linalg.norm(self._off)), 1e-12))

    def combined(self, count: int, most: int) -> Iterator[tuple[int, ...]]:
        """Yield combinations of the suspects that explain most by themselves."""
        ranked = sorted(range(len(self._theirs)), key=lambda i: (self.left((i,)), i))[:most]
        return combinations(sorted(ranked), count)


def _solved(
    chosen: Sequence[Suspect],
    poses: Mapping[str, Rigid],
    pairings: Sequence[Pairing],
    root: str,
) -> Blame | None:
    """Return the explanation that blames the chosen ones, None when it does not explain all."""
    column = columns_of(poses, root)
    furthest = _FURTHEST * math.fsum(length(g.off) + g.turned for g in gaps_in(pairings, poses))
    at = dict(poses)
    moves = [np.zeros(3 if each.turns else 2) for each in chosen]
    right = tuple(pairings)
    for _ in range(_ROUNDS):
        matrix, off = linearised(right, at, column)
        every = np.column_stack([matrix, *(columns(each, right, at) for each in chosen)])
        step = -solved(every.T @ every, every.T @ off)
        at = nudged(at, column, step[: matrix.shape[1]])
        ends = np.cumsum([matrix.shape[1], *(len(each) for each in moves)])
        moves = [m + step[a:b] for m, (a, b) in zip(moves, pairwise(ends), strict=True)]
        right = tuple(pairings)
        for each, move in zip(chosen, moves, strict=True):
            right = put_right(each, [float(v) for v in move], right)
        if float(np.abs(step).max(initial=0.0)) < _STILL:
            break
        if max(float(np.abs(move).max()) for move in moves) > furthest:
            return None
    if gaps_in(right, at) or any(float(np.abs(move).max()) < TOLERANCE for move in moves):
        return None
    gaps = gaps_in(pairings, at)
    return Blame(
        culprits=tuple(
            Culprit(
                suspect=each,
                by=tuple(float(v) for v in move),
                gaps=tuple(gap for gap in gaps if _at(gap, each, pairings)),
            )
            for each, move in zip(chosen, moves, strict=True)
        ),
        poses=at,
    )


def _at(gap: Gap, suspect: Suspect, pairings: Sequence[Pairing]) -> bool:
    mine = ((pairings[number].link, pairings[number].index) for number, _ in suspect.seen)
    return (gap.pairing.link, gap.pairing.index) in mine


def _plausible(blame: Blame) -> bool:
    return all(sum(abs(v) > TOLERANCE for v in each.by) <= _MOVES for each in blame.culprits)


def _complexity(blame: Blame) -> tuple[int, int, int]:
    """Return how much an explanation needs: moves and turns, joints spoilt, tabs along edges."""
    moves = [v for each in blame.culprits for v in each.by]
    along = [each for each in blame.culprits if each.suspect.freedom is Freedom.OUTLINE]
    return (
        sum(abs(v) > TOLERANCE for v in moves),
        len(blame.gaps),
        sum(abs(each.by[1]) > TOLERANCE for each in along),
    )
