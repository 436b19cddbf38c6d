"""Proves a plan: rules over what it states, settling over its range, rules over the results."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
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
from kerfolio.settling.points import in_order, is_oblique, more_points, proof_points
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant import drawn_variant, variants


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """A plan with all that was found; ``drawn`` and ``points`` only where all of it settles.

    ``points`` are the plan wherever it was proved, the thinnest first; ``corners`` are ``drawn``,
    then those of them with every sheet at its thinnest or its thickest. They have the pieces of
    everything the plan makes. ``sets`` are the points that files are made ready for. ``made`` are
    the things it makes, each put together by itself, ``together`` all that a set holds.
    """

    plan: Plan
    drawn: SettledPlan | None
    points: tuple[SettledPlan, ...]
    findings: tuple[Finding, ...]
    corners: tuple[SettledPlan, ...] = ()
    sets: tuple[FitVariant, ...] = ()
    made: tuple[Made, ...] = ()
    together: SetTogether | None = None


def prove_plan(plan: Plan, stock: Stock, trials: tuple[Trial, ...] = ()) -> Proof:
    """Prove a plan over the whole range it is published for.

    ``trials`` are the workshop's log: what came out clean there outranks published ranges.
    """
    stated = Stated(plan=plan, stock=stock, trials=trials)
    findings = [finding for rule in BEFORE for finding in rule.check(stated)]
    sets, faults = variants(plan, stock)
    findings += faults
    aim = drawn_variant(plan, stock)
    points = proof_points(plan, stock) if sets else ()
    settled, every, more = _settled(Settler(plan, stock), points, aim)
    findings += more
    drawn = next((each for each in settled if each.variant == aim), None)
    complete = drawn is not None and every
    # What is wrong so far would be blamed again on the joints it spoils.
    sound = complete and not plan.unread and not has_errors(findings)
    corners = tuple(_corners(drawn, settled)) if drawn and complete else ()
    made = made_of(drawn, _to_put_together(drawn, settled, corners)) if drawn and sound else ()
    builds = [each.build for each in made if each.build is not None]
    findings += [found for each in builds for rule in TOGETHER for found in rule.check(each)]
    together = set_together(made, drawn) if drawn and plan.is_set else None
    if together is not None:
        findings += [found for rule in AS_SET for found in rule.check(together)]
    whole = {id(each): set_of(each) for each in settled} if complete else {}
    return Proof(
        plan=plan,
        drawn=whole.get(id(drawn)),
        points=tuple(whole.values()),
        sets=sets,
        corners=tuple(whole[id(each)] for each in corners),
        findings=as_told(findings, plan, complete=complete),
        made=made,
        together=together,
    )


def as_told(findings: Iterable[Finding], plan: Plan, *, complete: bool) -> tuple[Finding, ...]:
    """Return findings as they are told: silences heard, in the plan's unit, shortened."""
    return shortened(in_unit(heard(findings, plan, SEVERITIES, complete=complete), plan.units))


def _corners(drawn: SettledPlan, points: Sequence[SettledPlan]) -> Iterator[SettledPlan]:
    yield drawn
    for each in points:
        ends = zip((mm for _, mm in each.variant.thickness), each.sheets, strict=True)
        if not each.variant.fit and all(mm in sheet.published for mm, sheet in ends):
            yield each


def _to_put_together(
    drawn: SettledPlan, settled: Sequence[SettledPlan], corners: Sequence[SettledPlan]
) -> Sequence[SettledPlan]:
    """Return the plan as it is put together: in its corners and as drawn; oblique, everywhere."""
    if is_oblique(drawn):
        return settled
    return sorted(corners, key=lambda each: in_order(each.variant))


def looked_at(
    settler: Settler, point: FitVariant
) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
    """Settle a plan at a point, and look at what comes of it by itself."""
    made, faults = settler.at(point)
    if made is None:
        return None, faults
    return made, (*faults, *(each for rule in AFTER for each in rule.check(made)))


def _settled(
    settler: Settler, points: Sequence[FitVariant], aim: FitVariant | None
) -> tuple[list[SettledPlan], bool, tuple[Finding, ...]]:
    """Settle at every point and look at each result; the same remark is made once.

    Tells besides whether all of them settle. Where the thinnest sheets fail only the thickest are
    tried besides: what is wrong at both is wrong at all.
    """
    settled: list[SettledPlan] = []
    found: list[tuple[FitVariant, Finding]] = []
    waiting, tried = list(points), list[FitVariant]()
    while waiting:
        point = waiting.pop(0)
        tried.append(point)
        made, faults = looked_at(settler, point)
        found += [(point, fault) for fault in faults]
        if made is not None:
            settled.append(made)
            more = more_points(made) if point == aim else ()
            waiting += [each for each in more if each not in (*tried, *waiting)]
        elif not settled:
            waiting = [each for each in waiting[-1:] if each.label != point.label]
    settled.sort(key=lambda each: in_order(each.variant))
    return settled, len(settled) == len(tried), folded(found, sorted(tried, key=in_order))
