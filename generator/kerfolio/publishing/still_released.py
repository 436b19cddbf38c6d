"""Compares a plan with the record of its version."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.words import listed
from kerfolio.model.plan import Plan
from kerfolio.proving.prove import Proof
from kerfolio.releasing.change import ReleaseChange, State, change_between
from kerfolio.releasing.recording import corners_of, record_of
from kerfolio.releasing.stated import FIX, next_version
from kerfolio.releasing.weighing import step_for
from kerfolio.settling.settled import SettledPlan


def changed_in_proof(proof: Proof) -> tuple[Finding, ...]:
    """Return the error on a plan that was proved, if its version is not what its record says."""
    plan, drawn = proof.plan, proof.drawn
    if plan.record is None or drawn is None:
        return ()
    if all(each.count == 1 for each in plan.made):
        corners = tuple({id(each): each for each in proof.corners}.values())
    else:  # the proof has the pieces of each copy
        corners = corners_of(plan, drawn.stock)
    return changed_since(plan, corners)


def changed_since(plan: Plan, corners: Sequence[SettledPlan]) -> tuple[Finding, ...]:
    """Return an error where a plan, settled at its corners, is not what its record says.

    Texts besides those of the steps may change: nobody cuts or builds by them.
    """
    if plan.record is None or not corners:
        return ()  # what does not settle a proof tells
    change = change_between(plan.record, record_of(corners))
    told = what_changed(change)
    if not told:
        return ()
    step = step_for(change) or FIX
    following = next_version(plan.releases, step)
    message = f"release {plan.version} is recorded, and {listed(told)} changed since"
    advice = (
        f'Write the next one, {following}: `kerfolio release {plan.name} --{step} "what changed"`. '
        f"Or take the change back; whoever has {plan.version} has the files of its record."
    )
    release = next(each for each in plan.releases if each.version == plan.version)
    return (error("release-changed", message, release.place, advice, subject=plan.name),)


def what_changed(change: ReleaseChange) -> tuple[str, ...]:
    """Return what readers cut, buy or build by that changed, in words; none where nothing."""
    parts = [
        f"`{each.name}`"
        for each in change.parts
        if each.state is not State.SAME or each.cut or each.renamed or each.more or each.fewer
    ]
    told = [*parts]
    told += [f"the sheet `{each.name}`" for each in change.sheets]
    told += ["the hardware"] if change.hardware else []
    told += ["the boards"] if change.boards else []
    told += ["the steps"] if change.steps else []
    return tuple(told)
