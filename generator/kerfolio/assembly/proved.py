"""Cures proved before they are offered: the plan is settled with them and put together again."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.assembly.amended import amended, settled_as
from kerfolio.assembly.blame import Blame
from kerfolio.assembly.trying import standing_of
from kerfolio.model.plan import Plan
from kerfolio.settling.settled import SettledPlan

_MOST = 8
"""Of so many cures the pieces are looked at: no more than four are told."""


def proved(
    settled: SettledPlan, root: str, links: int, blames: Sequence[Blame]
) -> tuple[Blame, ...]:
    """Return the explanations that prove right on the pieces, in their order.

    Left out are those with which some joint still does not agree or pieces of the part that is
    changed do not go together, unless that is so of all. What no amount of the plan says, and so
    cannot be tried, is kept.
    """
    first = blames[:_MOST]
    sound = [each for each in first if _proves(settled, root, links, each)]
    return tuple(sound or blames)


def _proves(settled: SettledPlan, root: str, links: int, blame: Blame) -> bool:
    plan: Plan | None = settled.plan
    for each in blame.culprits:
        plan = None if plan is None else amended(plan, each)
    if plan is None:
        return True
    made = settled_as(settled, plan)
    if made is None:
        return False
    parts = {each.suspect.part.name for each in blame.culprits}
    found = standing_of(made, root, links, parts)
    return found is not None and found.is_sound
