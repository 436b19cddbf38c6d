"""What can be asked about: a sheet, a cutter and what is cut; the log sorted by it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from kerfolio.model.outcome import Operation
from kerfolio.model.stock import CutterStock, SheetStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.operation import operation_counted
from kerfolio.trials.log import newest_first

_AS_THICK = 1.2
"""Sheets of a family whose thicknesses differ by no more than this ratio are alike."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What is asked about."""

    sheet: SheetStock
    cutter: CutterStock
    operation: Operation = Operation.THROUGH


Sorted = Mapping[Subject, tuple[Trial, ...]]
"""The log by subject, in the order of their names; the trials of each newest first."""


def sorted_log(trials: Iterable[Trial], stock: Stock) -> Sorted:
    """Return the trials of sheets and cutters that the stock knows, by what was tried."""
    sheets = {each.name: each for each in stock.sheets}
    cutters = {each.name: each for each in stock.cutters}
    found: dict[tuple[str, str, int], list[Trial]] = {}
    order = list(Operation)
    for trial in newest_first(trials):
        names = (trial.stock.name if trial.stock else "", trial.cutter.name if trial.cutter else "")
        if names[0] in sheets and names[1] in cutters:
            found.setdefault((*names, order.index(operation_counted(trial, stock))), []).append(
                trial
            )
    return {
        Subject(sheet=sheets[sheet], cutter=cutters[cutter], operation=order[operation]): (*each,)
        for (sheet, cutter, operation), each in sorted(found.items())
    }


def on_alike_sheets(subject: Subject, log: Sorted) -> tuple[Subject, ...]:
    """Return the same cut on sheets of the same family, about as thick, the nearest first."""
    own = subject.sheet
    found = [
        each
        for each in log
        if (each.cutter, each.operation) == (subject.cutter, subject.operation)
        and each.sheet != own
        and each.sheet.family == own.family
        and _ratio(each.sheet, own) <= _AS_THICK
    ]
    return tuple(sorted(found, key=lambda each: (_ratio(each.sheet, own), each.sheet.name)))


def _ratio(one: SheetStock, other: SheetStock) -> float:
    return max(one.nominal, other.nominal) / min(one.nominal, other.nominal)
