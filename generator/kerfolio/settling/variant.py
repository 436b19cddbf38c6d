"""Which thicknesses a plan is published for, and which sets of cut files are made ready."""

from __future__ import annotations

from itertools import product
from math import prod

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import number, reading, readings, sold
from kerfolio.basis.said import said
from kerfolio.basis.thickness import read_off
from kerfolio.basis.tolerance import NOISE
from kerfolio.model.plan import Ladder, Plan, SheetUse
from kerfolio.model.stock import SheetStock, Stock
from kerfolio.settling.scope import Scope, SettlingError, unsettled
from kerfolio.settling.settled import FitVariant
from kerfolio.settling.variant_name import labelled

MOST_SETS = 40
"""Sets of cut files that a plan is published with, at most: each is a folder to choose from."""


def variants(plan: Plan, stock: Stock) -> tuple[tuple[FitVariant, ...], tuple[Finding, ...]]:
    """Return the points that files are made ready for: each combination of ``ready_made``.

    None at all, with a finding, where there are more than 40.
    """
    names, choices, findings = [], [], []
    for use in plan.sheets:
        found = stock.sheet(use.stock.name)
        if found is None:
            continue
        try:
            choices.append(ready_made(use, found, plan.units))
            names.append(use.name)
        except SettlingError as trouble:
            findings.append(trouble.about(use.name))
    if findings:
        return (), tuple(findings)
    count = prod(map(len, choices))
    if count > MOST_SETS:
        counts = number("sets", count), number("most", MOST_SETS)
        message = said("{} sets of cut files, at most {}", *counts)
        advice = "List fewer thicknesses as `ready-made`: the page of a bundle makes all others."
        return (), (error("too-many-variants", message, plan.place, advice),)
    every = product(*choices)
    made = (_variant(tuple(zip(names, each, strict=True)), plan.units) for each in every)
    return tuple(made), ()


def ready_made(use: SheetUse, stock: SheetStock, unit: str) -> tuple[float, ...]:
    """Return the thicknesses of a sheet that files are made ready for, thinnest first, in mm.

    They are the one it is drawn for and those of ``ready-made``. Raises SettlingError.
    """
    return tuple(sorted({drawn_thickness(use, stock, unit), *listed(use, stock, unit)}))


def published_range(use: SheetUse, stock: SheetStock, unit: str) -> tuple[float, float]:
    """Return the thinnest and the thickest that a sheet is published for: readings, to 0.01 mm.

    Raises SettlingError.
    """
    if use.published_for is None:
        return read_off(stock.actual), read_off(stock.actual)
    first, last = _ends(use.published_for, unit)
    return read_off(first), read_off(last)


def coupon_step(use: SheetUse, unit: str) -> float | None:
    """Return the step of ``published-for``, mm, in which the coupon tries thicknesses; None where
    it states none. Raises SettlingError.
    """
    if use.published_for is None or use.published_for.step is None:
        return None
    scope = Scope(unit=unit)
    return scope.positive(use.published_for.step, "step")


def listed(use: SheetUse, stock: SheetStock, unit: str) -> tuple[float, ...]:
    """Return the thicknesses of ``ready-made``, mm; raises SettlingError for one out of range."""
    scope = Scope(unit=unit)
    first, last = published_range(use, stock, unit)
    made = []
    for amount in use.ready_made:
        mm = read_off(scope.positive(amount, "thickness"))
        if not first <= mm <= last:
            ends = readings(("first", first), ("last", last))
            message = said("{} is not within {}", sold("ready-made", mm), ends)
            advice = "Name thicknesses that it is `published-for`, or publish for more."
            raise unsettled("ready-made-outside", message, amount.place, advice)
        made.append(mm)
    return tuple(made)


def _ends(ladder: Ladder, unit: str) -> tuple[float, float]:
    """Return the ends of a range, mm."""
    scope = Scope(unit=unit)
    first, last = (scope.positive(each, "thickness") for each in (ladder.first, ladder.last))
    if abs(last - first) < NOISE:
        return first, first
    if last < first:
        ends = reading("first", first), reading("last", last)
        message = said("`published-for` runs from {} down to {}", *ends)
        raise unsettled("backwards-ladder", message, ladder.place, "Put the thinner one first.")
    return first, last


def drawn_thickness(use: SheetUse, stock: SheetStock, unit: str) -> float:
    """Return the thickness a sheet is drawn for, mm; raises SettlingError.

    It is ``drawn-for``, else the stock's actual thickness, brought into the published range.
    """
    scope = Scope(unit=unit)
    wanted = scope.mm(use.drawn_for) if use.drawn_for else stock.actual
    first, last = published_range(use, stock, unit)
    return min(max(read_off(wanted), first), last)


def drawn_variant(plan: Plan, stock: Stock) -> FitVariant | None:
    """Return the point a plan is drawn for, None when a sheet's stock or range is wrong."""
    chosen = []
    for use in plan.sheets:
        found = stock.sheet(use.stock.name)
        if found is None:
            continue
        try:
            chosen.append((use.name, drawn_thickness(use, found, plan.units)))
        except SettlingError:
            return None
    return _variant(tuple(chosen), plan.units)


def _variant(chosen: tuple[tuple[str, float], ...], unit: str) -> FitVariant:
    return labelled(FitVariant(label="", thickness=chosen), unit)
