"""Proves a plan: rules over what it states, settling over its range, rules over the results."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.made import Made, made_of
from kerfolio.assembly.set_together import SetTogether, set_together
from kerfolio.basis.finding import Finding, in_unit
from kerfolio.basis.shortened import shortened
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.proving.judged import log_words
from kerfolio.proving.looking import Looked, looks
from kerfolio.proving.rule import Stated
from kerfolio.proving.rules import AS_SET, BEFORE, SEVERITIES
from kerfolio.proving.silence import heard
from kerfolio.proving.standing import holes_blamed, keep_from_building, of_what_stands, what_stands
from kerfolio.proving.way_round import found_in
from kerfolio.settling.making import set_of
from kerfolio.settling.points import in_order, is_oblique
from kerfolio.settling.settled import FitVariant, SettledPlan


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

    ``trials`` are the workshop's log: what came out clean there outranks published ranges. What is
    wrong with a part hides nothing that is found about the others.
    """
    log = log_words(plan, stock, trials)
    stated = Stated(plan=plan, stock=stock, trials=trials, log=log)
    findings = [finding for rule in BEFORE for finding in rule.check(stated)]
    first, *further = looks(plan, stock)
    findings += [found for each in (first, *further) for found in each.findings]
    drawn, settled, complete = first.drawn, first.settled, first.complete
    sound = complete and not plan.unread and not keep_from_building(findings, plan)
    corners = tuple(_corners(drawn, settled)) if drawn and complete else ()
    made = made_of(drawn, _to_put_together(drawn, settled, corners)) if drawn and sound else ()
    builds = [each.build for each in made if each.build is not None]
    blamed = holes_blamed(findings, plan)
    findings += [found for each in builds for found in found_in(each, blamed)]
    together = set_together(made, drawn) if drawn and plan.is_set and sound else None
    if together is not None:
        findings += [found for rule in AS_SET for found in rule.check(together)]
    if not sound:
        findings += _of_the_rest(further[-1] if further else first, findings)
    whole = {id(each): set_of(each) for each in settled} if complete else {}
    return Proof(
        plan=drawn.plan if drawn and complete else plan,
        drawn=whole.get(id(drawn)),
        points=tuple(whole.values()),
        sets=first.sets,
        corners=tuple(whole[id(each)] for each in corners),
        findings=as_told(findings, plan, complete=complete),
        made=made,
        together=together,
    )


def _of_the_rest(looked: Looked, findings: Sequence[Finding]) -> Iterator[Finding]:
    """Yield what is wrong with the joints of those pieces that nothing wrong is known of."""
    if looked.drawn is None or not looked.complete:
        return
    left = {id(each): what_stands(each, findings) for each in looked.settled}
    drawn = left[id(looked.drawn)]
    corners = tuple(_corners(drawn, tuple(left.values())))
    for each in made_of(drawn, _to_put_together(drawn, tuple(left.values()), corners)):
        if each.build is not None:
            yield from of_what_stands(each.build)


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
