"""Proves a plan: rules over what it states, settling at every variant, rules over the results."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.made import Made, made_of
from kerfolio.assembly.set_together import SetTogether, set_together
from kerfolio.basis.finding import Finding, has_errors, in_unit
from kerfolio.basis.shortened import shortened
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.proving.folding import folded
from kerfolio.proving.rule import Stated
from kerfolio.proving.rules import AFTER, AS_SET, BEFORE, SEVERITIES, TOGETHER
from kerfolio.proving.silence import heard
from kerfolio.settling.making import set_of
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant import drawn_variant, variants


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """A plan with all that was found; ``drawn`` and ``variants`` only where all of it settles.

    ``drawn`` and ``variants`` have the pieces of everything the plan makes; ``made`` are the things
    it makes, each put together by itself, ``together`` all that a set holds. ``corners`` are
    ``drawn``, then those variants with every sheet at its thinnest or its thickest.
    """

    plan: Plan
    drawn: SettledPlan | None
    variants: tuple[SettledPlan, ...]
    findings: tuple[Finding, ...]
    corners: tuple[SettledPlan, ...] = ()
    made: tuple[Made, ...] = ()
    together: SetTogether | None = None


def prove_plan(plan: Plan, stock: Stock, trials: tuple[Trial, ...] = ()) -> Proof:
    """Prove a plan at every thickness it is published for.

    ``trials`` are the workshop's log: what came out clean there outranks published ranges.
    """
    stated = Stated(plan=plan, stock=stock, trials=trials)
    findings = [finding for rule in BEFORE for finding in rule.check(stated)]
    choices, faults = variants(plan, stock)
    findings += faults
    settled, more = _settled(plan, stock, choices)
    findings += more
    aim = drawn_variant(plan, stock)
    drawn = next((each for each in settled if each.variant == aim), None)
    complete = drawn is not None and len(settled) == len(choices)
    # What is wrong so far would be blamed again on the joints it spoils.
    sound = complete and not plan.unread and not has_errors(findings)
    made = made_of(drawn, settled) if drawn is not None and sound else ()
    builds = [each.build for each in made if each.build is not None]
    findings += [found for each in builds for rule in TOGETHER for found in rule.check(each)]
    together = set_together(made, drawn) if drawn and plan.is_set else None
    if together is not None:
        findings += [found for rule in AS_SET for found in rule.check(together)]
    sets = {id(each): set_of(each) for each in settled} if complete else {}
    whole = sets.get(id(drawn))
    return Proof(
        plan=plan,
        drawn=whole,
        variants=tuple(sets.values()),
        corners=(whole, *_corners(tuple(sets.values()))) if whole else (),
        findings=shortened(
            in_unit(heard(findings, plan, SEVERITIES, complete=complete), plan.units)
        ),
        made=made,
        together=together,
    )


def _corners(variants: Sequence[SettledPlan]) -> Iterator[SettledPlan]:
    ends = [(min(mm), max(mm)) for mm in zip(*map(_thicknesses, variants), strict=True)]
    for each in variants:
        if all(mm in both for mm, both in zip(_thicknesses(each), ends, strict=True)):
            yield each


def _thicknesses(settled: SettledPlan) -> tuple[float, ...]:
    return tuple(mm for _, mm in settled.variant.thickness)


def _settled(
    plan: Plan, stock: Stock, choices: Sequence[FitVariant]
) -> tuple[list[SettledPlan], tuple[Finding, ...]]:
    """Settle at every variant and look at each result; the same remark is made once.

    Where the thinnest sheets fail only the thickest are tried besides: what is wrong at both is
    wrong at all.
    """
    settled: list[SettledPlan] = []
    found: list[tuple[FitVariant, Finding]] = []
    tried = choices
    for variant in choices:
        if variant not in tried:
            continue
        made, faults = settle(plan, stock, variant)
        found += [(variant, fault) for fault in faults]
        if made is not None:
            settled.append(made)
            found += [(variant, each) for rule in AFTER for each in rule.check(made)]
        elif not settled:
            tried = tuple(dict.fromkeys((choices[0], choices[-1])))
    return settled, folded(found, len(tried))
