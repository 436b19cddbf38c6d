"""Hypotheses tried: the changed plan is put together, and what is wrong with that is looked for."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from kerfolio.assembly.blocking import blocking
from kerfolio.assembly.go_together import clashes
from kerfolio.assembly.hypotheses import Hypothesis, Slip
from kerfolio.assembly.links import links_of
from kerfolio.assembly.pairing import gaps_in, pairings_of
from kerfolio.assembly.placing import walk
from kerfolio.assembly.posing import assembled_of, panels_of
from kerfolio.assembly.split import stuck
from kerfolio.geometry.rigid import Rigid
from kerfolio.settling.settled import SettledPlan

_MOST = 160
"""So many hypotheses are tried at most: each is a walk over all joints."""

_PROVED = 6
"""Of so many that close every loop the pieces are looked at."""

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

    Those whose pieces then do not go together are left out where others' do.
    """
    known = len(links_of(settled)[0])
    found: list[Trial] = []
    for index, each in enumerate(proposed):
        if index == _MOST or len(found) == _PROVED:
            break
        changed = each.change(settled)
        shaped = each.slip is not Slip.TURNED
        made = standing_of(changed, root, known, each.parts if shaped else frozenset())
        if made is not None:
            found.append(Trial(hypothesis=each, standing=made))
    sound = [each for each in found if each.standing.is_sound]
    kept = sound or found
    return tuple(sorted(kept, key=lambda t: (t.standing.unusual, t.hypothesis.slip)))


def standing_of(
    settled: SettledPlan, root: str, links: int, parts: Collection[str]
) -> Standing | None:
    """Return how a plan stands; None where a joint cannot be made, or some loop does not close.

    ``links`` is how many joints it must have; ``parts`` those whose pieces must be clear of others.
    """
    found, faults = links_of(settled)
    if faults or len(found) != links:
        return None
    best = walk(found, root)[0]
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
