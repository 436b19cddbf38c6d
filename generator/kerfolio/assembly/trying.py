"""Hypotheses tried: the changed plan is put together, and what is wrong with that is looked for."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice

from kerfolio.assembly.blocking import blocking
from kerfolio.assembly.go_together import clashes
from kerfolio.assembly.hypotheses import Hypothesis, Slip, both, ways_round
from kerfolio.assembly.links import links_of, root_of
from kerfolio.assembly.pairing import CLOSES, TOLERANCE, gaps_in, pairings_of
from kerfolio.assembly.placing import walk
from kerfolio.assembly.posing import assembled_of, panels_of
from kerfolio.assembly.split import stuck
from kerfolio.geometry.rigid import Rigid
from kerfolio.settling.settled import SettledPlan

_MOST = 160
"""So many hypotheses are tried at most: each is a walk over all joints."""

_PROVED = 6
"""Of so many that close every loop the pieces are looked at."""

_PAIRED = (Slip.BACKWARD, Slip.WAY, Slip.EXCHANGED)
"""The kinds of slips of which two are tried at once, what is counted backwards first."""

_UNCUT = (Slip.TURNED, Slip.FAR_END)
"""Of these only where features meet is changed, not what is cut."""

_FIRSTS, _SECONDS = 4, 24
"""So many that leave less wrong are tried, each with so many others."""

_LARGEST = 60
"""Whether pieces get past each other is looked at for so many of them at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A changed plan put together: where its pieces lie, and how much space they share, mm3.

    ``unusual`` tells how unusual the ways are that its joints go; ``locked`` whether some pieces
    hold each other.
    """

    poses: Mapping[str, Rigid]
    unusual: tuple[int, int]
    shared: float
    locked: bool

    @property
    def is_sound(self) -> bool:
        """Whether its pieces go together."""
        return not self.shared and not self.locked


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """A hypothesis under which every loop closes, and how the plan stands then."""

    hypothesis: Hypothesis
    standing: Standing

    @property
    def poses(self) -> Mapping[str, Rigid]:
        """Where the pieces lie."""
        return self.standing.poses


def tried(settled: SettledPlan, root: str, proposed: Iterable[Hypothesis]) -> tuple[Trial, ...]:
    """Return the hypotheses under which all joints agree, the most usual whole first.

    Two slips at once are tried only where no single one mends all.

    Those whose pieces then do not go together are left out where others' do.
    """
    known = len(links_of(settled)[0])
    every = tuple(islice(proposed, _MOST))
    found = tuple(islice(_closing(settled, root, known, every), _PROVED))
    if not found:
        pairs = _in_pairs(settled, root, every)
        found = tuple(islice(_closing(settled, root, known, pairs), _PROVED))
    sound = [each for each in found if each.standing.is_sound]
    kept = sound or found
    kept = [each for each in kept if not each.hypothesis.mixed] or kept
    return tuple(sorted(kept, key=_price))


def _price(trial: Trial) -> tuple[bool, int, bool, tuple[int, int], Slip]:
    """Return how unlikely a trial is: the same slip twice is likelier than two kinds of them.

    What is numbered alike belongs together (our own rule).
    """
    made = trial.hypothesis
    return made.mixed, -made.alike, made.aside, trial.standing.unusual, made.slip


def ways_tried(settled: SettledPlan) -> Iterator[Trial]:
    """Yield the ways round and the counts, other than stated, under which all joints agree."""
    links = links_of(settled)[0]
    for each in _closing(settled, root_of(links), len(links), ways_round(links)):
        if each.standing.is_sound:
            yield each


def _closing(
    settled: SettledPlan, root: str, links: int, proposed: Iterable[Hypothesis]
) -> Iterator[Trial]:
    """Yield the hypotheses under which every loop closes."""
    for each in proposed:
        changed = each.change(settled)
        shaped = each.slip not in _UNCUT
        made = standing_of(changed, root, links, each.parts if shaped else frozenset())
        if made is not None:
            yield Trial(hypothesis=each, standing=made)


def _in_pairs(
    settled: SettledPlan, root: str, proposed: Sequence[Hypothesis]
) -> Iterator[Hypothesis]:
    """Yield two slips at once: one that by itself leaves less wrong, with each of the others."""
    now = _wrong(settled, root, math.inf)
    small = (n for n, each in enumerate(proposed) if each.slip in _PAIRED)
    wrong = {n: _wrong(proposed[n].change(settled), root, now) for n in small}
    firsts = sorted((left, n) for n, left in wrong.items() if left < now - TOLERANCE)[:_FIRSTS]
    others = sorted(
        (n for n, left in wrong.items() if left < math.inf),
        key=lambda n: (_PAIRED.index(proposed[n].slip), n),
    )[:_SECONDS]
    for one, other in dict.fromkeys(
        (min(one, other), max(one, other)) for _, one in firsts for other in others if one != other
    ):
        yield both(proposed[one], proposed[other])


def _wrong(settled: SettledPlan, root: str, most: float) -> float:
    """Return how far joints are from agreeing, mm, at the most; infinite where one cannot be."""
    found, faults = links_of(settled)
    if faults or not found:
        return math.inf
    walks = walk(found, root, within=most)
    return walks[0].cost if walks else most


def standing_of(
    settled: SettledPlan, root: str, links: int, parts: Collection[str]
) -> Standing | None:
    """Return how a plan stands; None where a joint cannot be made, or some loop does not close.

    ``links`` is how many joints it must have; ``parts`` those whose pieces must be clear of others.
    """
    found, faults = links_of(settled)
    if faults or len(found) != links:
        return None
    walks = walk(found, root, within=CLOSES * len(found))
    if not walks:
        return None
    best = walks[0]
    pairings = pairings_of(found, best.ways, best.poses)
    if gaps_in(pairings, best.poses):
        return None
    assembled = assembled_of(settled, best.poses, panels_of(settled), pairings, found)
    concerned = {each.label for each in assembled.pieces if each.part in parts}
    spaces = [
        each.volume for each in clashes(assembled) if not concerned.isdisjoint((each.a, each.b))
    ]
    locked = False
    if not spaces and concerned and len(assembled.pieces) <= _LARGEST:
        graphs = blocking(assembled)
        locked = bool(stuck(graphs, [1 << n for n in range(len(graphs.labels))]))
    return Standing(poses=best.poses, unusual=best.rank, shared=math.fsum(spaces), locked=locked)
