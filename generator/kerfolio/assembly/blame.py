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
from kerfolio.assembly.pairing import TOLERANCE, Gap, Pairing, gaps_in
from kerfolio.assembly.suspects import Suspect, columns, put_right
from kerfolio.geometry.rigid import Rigid

_LIKELY = 0.1
"""A likely explanation leaves less than this share of the misses."""

_TRIED = 24
_POOL = {2: 16, 3: 10}
"""How many of the best suspects are combined, by how many are to blame together."""

_ROUNDS = 8
_STILL = 1e-6

FURTHEST = 1.25
"""No cure is larger than all that is wrong together, by this factor: that would be absurd."""

_Unit = tuple[int, tuple[int, ...]]
"""A suspect's number, and which of its axes it may be off along."""


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
    most: float = math.inf,
) -> tuple[Blame, ...]:
    """Return all explanations with the fewest moves of the fewest suspects; perhaps none.

    ``counts`` says how many may be to blame together, up to three. No move is longer than ``most``,
    mm, nor than its part.
    """
    weighed = _Weighed(poses, pairings, suspects, root)
    for count in counts:
        found: list[Blame] = []
        known: set[tuple[int, ...]] = set()
        for units in weighed.rounds(count):
            likely = sorted((round(weighed.left(each), 3), each) for each in units)
            fresh = [
                each
                for left, each in likely
                if left < _LIKELY and tuple(i for i, _ in each) not in known
            ]
            for each in fresh[:_TRIED]:
                chosen = [(suspects[i], axes) for i, axes in each]
                made = _solved(chosen, poses, pairings, root, most)
                if made is not None:
                    found.append(made)
                    known.add(tuple(i for i, _ in each))
        if found:
            return tuple(found)
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
        self._wholes = [each.about is not None for each in suspects]
        self._off: Numbers = every[:, 0]
        self._theirs = [every[:, a:b] for a, b in pairwise(ends)]

    def left(self, chosen: Sequence[_Unit]) -> float:
        """Return the share of the misses that suspects, put right, leave."""
        held = np.column_stack([self._theirs[i][:, list(axes)] for i, axes in chosen])
        move = np.linalg.lstsq(held, -self._off, rcond=1e-6)[0]
        rest = self._off + held @ move
        return float(np.linalg.norm(rest) / max(float(np.linalg.norm(self._off)), 1e-12))

    def _may(self, number: int, axes: Sequence[int]) -> bool:
        """Tell whether a suspect is looked at along axes: as a whole, a set is only turned."""
        return not self._wholes[number] or 2 in axes

    def rounds(self, count: int) -> Iterator[list[tuple[_Unit, ...]]]:
        """Yield what may be to blame, simple moves first: along one axis, along two, in all ways.

        Of several at once none is off in more ways than one: else anything could be explained.
        """
        single = [
            (i, (k,))
            for i, each in enumerate(self._theirs)
            for k in range(each.shape[1])
            if self._may(i, (k,))
        ]
        if count == 1:
            for size in (1, 2, 3):
                yield [
                    ((i, axes),)
                    for i, each in enumerate(self._theirs)
                    for axes in combinations(range(each.shape[1]), size)
                    if self._may(i, axes)
                ]
            return
        ranked = sorted(single, key=lambda unit: (round(self.left((unit,)), 6), unit))
        pool = sorted(ranked[: _POOL[count]])
        yield [each for each in combinations(pool, count) if len({i for i, _ in each}) == count]


def _solved(
    chosen: Sequence[tuple[Suspect, tuple[int, ...]]],
    poses: Mapping[str, Rigid],
    pairings: Sequence[Pairing],
    root: str,
    most: float,
) -> Blame | None:
    """Return the explanation that blames the chosen ones, None when it does not explain all."""
    column = columns_of(poses, root)
    at = dict(poses)
    moves = [np.zeros(3) for _ in chosen]
    right = tuple(pairings)
    for _ in range(_ROUNDS):
        matrix, off = linearised(right, at, column)
        theirs = [columns(each, right, at)[:, list(axes)] for each, axes in chosen]
        every = np.column_stack([matrix, *theirs])
        step = -solved(every.T @ every, every.T @ off)
        at = nudged(at, column, step[: matrix.shape[1]])
        ends = np.cumsum([matrix.shape[1], *(len(axes) for _, axes in chosen)])
        for move, (_, axes), (a, b) in zip(moves, chosen, pairwise(ends), strict=True):
            move[list(axes)] += step[a:b]
        right = tuple(pairings)
        for (each, _), move in zip(chosen, moves, strict=True):
            right = put_right(each, [float(v) for v in move], right)
        if float(np.abs(step).max(initial=0.0)) < _STILL:
            break
        if any(_is_absurd(each, move, most) for (each, _), move in zip(chosen, moves, strict=True)):
            return None
    still = any(
        float(np.abs(move[list(axes)]).min()) < TOLERANCE
        for (_, axes), move in zip(chosen, moves, strict=True)
    )
    if still or gaps_in(right, at):
        return None
    gaps = gaps_in(pairings, at)
    return Blame(
        culprits=tuple(
            Culprit(
                suspect=each,
                by=tuple(float(v) for v in move),
                gaps=tuple(gap for gap in gaps if _at(gap, each, pairings)),
            )
            for (each, _), move in zip(chosen, moves, strict=True)
        ),
        poses=at,
    )


def _is_absurd(suspect: Suspect, move: Numbers, most: float) -> bool:
    """Tell whether a cure is larger than what is wrong, or than the part it is a cure of."""
    limit = max(min(FURTHEST * most, max(suspect.part.size)), TOLERANCE)
    return float(np.abs(move).max()) > limit


def _at(gap: Gap, suspect: Suspect, pairings: Sequence[Pairing]) -> bool:
    mine = ((pairings[number].link, pairings[number].index) for number, _ in suspect.seen)
    return (gap.pairing.link, gap.pairing.index) in mine
