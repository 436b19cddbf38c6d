"""The thickness at which joints agree that are off at another: the one lengths were drawn for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.assembly.building import Build
from kerfolio.assembly.poses import put_together
from kerfolio.basis.finding import Finding
from kerfolio.basis.measures import precise
from kerfolio.basis.said import Words, enumerated, said
from kerfolio.basis.thickness import read_off
from kerfolio.model.outline import Drawn
from kerfolio.model.plan import Plan
from kerfolio.settling.scope import Scope
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPlan, SettledSheet

_OFF = "joint-off"


def told_thickness(findings: Sequence[Finding], build: Build) -> tuple[Finding, ...]:
    """Return findings on joints that are off, with the thickness at which all of them agree.

    Lengths that are right for one thickness of sheet alone miss by its change, or part of it, at
    another. So the plan is tried at what its drawings were made for and its sheets are sold as,
    and, where it agrees as drawn, at that.
    """
    if not any(each.rule == _OFF for each in findings):
        return tuple(findings)
    for trial in _trials(build):
        changed = _changed(trial, build)
        if changed and _agrees(trial, build):
            return tuple(_with(each, changed, build.settled.plan) for each in findings)
    return tuple(findings)


def _trials(build: Build) -> Iterator[SettledPlan]:
    """Yield the plan at each thickness that it may have been drawn for."""
    drawn = build.settled
    if all(each.rule != _OFF for each in build.drawn.findings):
        yield drawn
        return
    for thickness in dict.fromkeys((_stated(drawn), _sold(drawn))):
        variant = FitVariant(label="", thickness=thickness)
        made, _ = settle(drawn.plan, drawn.stock, variant)
        if made is not None:
            yield made


def _stated(settled: SettledPlan) -> tuple[tuple[str, float], ...]:
    """Return each sheet with the thickness that its first drawn part was drawn for, if one is."""
    plan = settled.plan
    scope = Scope(unit=plan.units)
    meant = {
        part.sheet.name: scope.mm(part.shape.drawn_for)
        for part in reversed(plan.parts)
        if isinstance(part.shape, Drawn) and part.shape.drawn_for is not None
    }
    sheets = settled.sheets
    return tuple((s.name, read_off(meant.get(s.name, s.stock.nominal))) for s in sheets)


def _sold(settled: SettledPlan) -> tuple[tuple[str, float], ...]:
    return tuple((each.name, read_off(each.stock.nominal)) for each in settled.sheets)


def _agrees(trial: SettledPlan, build: Build) -> bool:
    together = build.drawn if trial is build.settled else put_together(trial, build.drawn)
    return together is not None and not together.gaps


def _changed(trial: SettledPlan, build: Build) -> list[SettledSheet]:
    """Return the trial's sheets that are as thick nowhere that joints are off."""
    looked = (build.drawn, *(each.together for each in build.fitted))
    off = [w for w in looked if any(each.rule == _OFF for each in w.findings)]
    known = {(n, round(t, 2)) for w in off for n, t in w.assembled.variant.thickness}
    used = {part.sheet for part in trial.parts}
    fresh = (each for each in trial.sheets if each.name in used)
    return [each for each in fresh if (each.name, round(each.thickness, 2)) not in known]


def _with(finding: Finding, sheets: Sequence[SettledSheet], plan: Plan) -> Finding:
    if finding.rule != _OFF:
        return finding
    at = [said("`{}` {} thick", each.name, precise("agrees-at", each.thickness)) for each in sheets]
    names = " and ".join(f"`{_size_of(each.name, plan)}`" for each in sheets)
    words = "{} All joints agree with {}: let lengths that were made for that depend on {}."
    return replace(finding, counsel=said(words, _words(finding), enumerated(at), names))


def _words(finding: Finding) -> Words:
    return said("{}", finding.counsel)


def _size_of(sheet: str, plan: Plan) -> str:
    """Return the size that is a sheet's thickness, else how an expression says it."""
    thickness = f"thickness({sheet})"
    sizes = (each.name for each in plan.sizes if each.amount.text.replace(" ", "") == thickness)
    return next(sizes, thickness)
