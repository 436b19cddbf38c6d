"""The sets of files that stand ready in a bundle: which points they are for, and the plan there."""

from __future__ import annotations

from kerfolio.proving.prove import Proof
from kerfolio.settling.making import set_of
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import FitVariant, SettledPlan


def ready_made_sets(proof: Proof) -> tuple[SettledPlan, ...]:
    """Return a proved plan at every point that files are made ready for.

    Where it was proved it is taken from there; the others lie between points that were.
    """
    assert proof.drawn is not None, "only proved plans have files"
    known = {each.variant.label: each for each in proof.points}
    settler = Settler(proof.drawn.plan, proof.drawn.stock)
    return tuple(known.get(each.label) or _settled(settler, each) for each in proof.sets)


def _settled(settler: Settler, there: FitVariant) -> SettledPlan:
    made, findings = settler.at(there)
    assert made is not None, f"it settles around {there.label}, not there: {findings[0]}"
    return set_of(made)
