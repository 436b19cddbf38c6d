"""Fit variants: every choice of thickness that a plan is published for."""

from __future__ import annotations

from itertools import product
from math import prod

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.ladder import MOST_SETS, rung_count
from kerfolio.basis.measures import number, reading
from kerfolio.basis.said import said
from kerfolio.basis.thickness import read_off
from kerfolio.basis.tolerance import NOISE
from kerfolio.model.plan import Ladder, Plan, SheetUse
from kerfolio.model.stock import SheetStock, Stock
from kerfolio.settling.scope import Scope, SettlingError, unsettled
from kerfolio.settling.settled import FitVariant
from kerfolio.settling.variant_name import labelled

LEAST_STEP = {"mm": 0.01, "in": 0.0254}
"""mm by which thicknesses differ in the names of files: two decimals of a mm, three of an inch."""

_MOST_RUNGS = 10_000  # of one ladder: beyond this they are only counted


def variants(plan: Plan, stock: Stock) -> tuple[tuple[FitVariant, ...], tuple[Finding, ...]]:
    """Return every combination of the sheets' published thicknesses, thinnest first.

    None at all, with a finding, where there are more than 40 or two would share a label.
    """
    names, choices, findings = [], [], []
    for use in plan.sheets:
        found = stock.sheet(use.stock.name)
        if found is None:
            continue
        try:
            choices.append(rungs(use, found, plan.units))
            names.append(use.name)
        except SettlingError as trouble:
            findings.append(trouble.about(use.name))
    if findings:
        return (), tuple(findings)
    count = prod(map(len, choices))
    if count > MOST_SETS:
        counts = number("sets", count), number("most", MOST_SETS)
        message = said("{} sets of cut files, at most {}", *counts)
        advice = "Publish for fewer thicknesses: shorten `published-for` or make its step larger."
        return (), (error("too-many-variants", message, plan.place, advice),)
    every = product(*choices)
    made = tuple(_variant(tuple(zip(names, each, strict=True)), plan.units) for each in every)
    if len({each.label for each in made}) < len(made):
        least = reading("least-step", LEAST_STEP[plan.units])
        same = said("two thicknesses have the same name, to {}", least)
        larger = said("Make the step of `published-for` {} or larger.", least)
        return (), (error("same-variant", same, plan.place, larger),)
    return made, ()


def rungs(use: SheetUse, stock: SheetStock, unit: str) -> tuple[float, ...]:
    """Return the published thicknesses of a sheet, thinnest first: readings, to 0.01 mm.

    Raises SettlingError.
    """
    if use.published_for is None:
        return (read_off(stock.actual),)
    first, last, step = _ladder(use.published_for, unit)
    count = rung_count(first, last, step) if step else 1
    if count > _MOST_RUNGS:
        message = f"`published-for` makes over {_MOST_RUNGS} thicknesses"
        raise unsettled("too-many-variants", message, use.published_for.place, "Widen its step.")
    return tuple(read_off(first + index * step) for index in range(count))


def _ladder(ladder: Ladder, unit: str) -> tuple[float, float, float]:
    scope = Scope(unit=unit, names={}, thickness={}, fit={})
    first, last = (scope.positive(each, "thickness") for each in (ladder.first, ladder.last))
    if abs(last - first) < NOISE:
        return first, first, 0.0
    if last < first:
        ends = reading("first", first), reading("last", last)
        message = said("`published-for` runs from {} down to {}", *ends)
        raise unsettled("backwards-ladder", message, ladder.place, "Put the thinner one first.")
    return first, last, scope.positive(ladder.step, "step")


def drawn_variant(plan: Plan, stock: Stock) -> FitVariant | None:
    """Return the variant a plan is drawn for, None when a sheet's stock or ladder is wrong.

    It is the published rung nearest to ``drawn-for``, else to the stock's actual thickness.
    """
    chosen = []
    scope = Scope(unit=plan.units, names={}, thickness={}, fit={})
    for use in plan.sheets:
        found = stock.sheet(use.stock.name)
        if found is None:
            continue
        try:
            wanted = scope.mm(use.drawn_for) if use.drawn_for else found.actual
            steps = rungs(use, found, plan.units)
        except SettlingError:
            return None
        chosen.append((use.name, min((abs(each - wanted), each) for each in steps)[1]))
    return _variant(tuple(chosen), plan.units)


def _variant(chosen: tuple[tuple[str, float], ...], unit: str) -> FitVariant:
    return labelled(FitVariant(label="", thickness=chosen), unit)
