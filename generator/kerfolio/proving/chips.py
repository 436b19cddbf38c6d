"""Checks of the chip load against what tables publish and what the maker's own log says."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import chip, chips
from kerfolio.basis.said import Words, enumerated, said
from kerfolio.model.plan import CutSetting
from kerfolio.model.statement import Amount
from kerfolio.model.stock import MACHINES, ChipLoad, CutterStock
from kerfolio.model.trial import Trial
from kerfolio.proving.rule import Stated, before
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.shop.chip_load import chip_of, chip_ranges, depth_share

_CLEAN = "clean"
_ALIKE = 0.1
"""A clean trial speaks for settings whose chip load is within a tenth of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Chip:
    """A cut setting's chip load in mm with the ranges published for it, lightest machine first.

    ``share`` is what depth leaves of a range (1 where the tables do not say).
    """

    cut: CutSetting
    load: float
    ranges: tuple[ChipLoad, ...]
    share: float


@before(
    "chip-too-thin",
    reason="A chip thinner than any published one rubs: the cutter burns and dulls.",
    source="published chip loads, each named with its class of machine in the remark",
    severity=Severity.WARNING,
)
def chips_not_thin(stated: Stated) -> Iterator[Finding]:
    """Look for chip loads below every published range: the cutter rubs, and burns.

    Ranges differ many times over from one class of machine to another, and a plan does not say
    which it was cut on: only what lies below all of them is told. A clean trial outranks them.
    """
    for each in _chips(stated):
        least = min(known.least for known in each.ranges) * each.share
        if each.load < least:
            message = said("`{}`: a chip of {} rubs and burns", each.cut.name, chip(each.load))
            advice = said("Raise the feed or lower the speed. {}", _published(each))
            name = each.cut.name
            yield warning("chip-too-thin", message, each.cut.place, advice, subject=name)


@before(
    "chip-too-thick",
    reason="A chip thicker than any published one breaks cutters and loses steps.",
    source="published chip loads, each named with its class of machine in the remark",
    severity=Severity.WARNING,
)
def chips_not_thick(stated: Stated) -> Iterator[Finding]:
    """Look for chip loads above every published range: the cutter is overloaded."""
    for each in _chips(stated):
        most = max(known.most for known in each.ranges) * each.share
        if each.load > most:
            name = each.cut.name
            message = said("`{}`: a chip of {} overloads the cutter", name, chip(each.load))
            advice = said("Lower the feed or take shallower passes. {}", _published(each))
            yield warning("chip-too-thick", message, each.cut.place, advice, subject=name)


def _chips(stated: Stated) -> Iterator[_Chip]:
    sheets = {use.name: stated.stock.sheet(use.stock.name) for use in stated.plan.sheets}
    for cut in stated.plan.cuts:
        cutter, sheet = stated.stock.cutter(cut.cutter.name), sheets.get(cut.sheet.name)
        if cutter is None or sheet is None or not cut.feed_mm_per_min or not cut.speed_rpm:
            continue
        ranges = tuple(
            each
            for machine in MACHINES
            for each in chip_ranges(stated.stock, sheet.family, cutter.diameter, machine)
        )
        load = chip_of(cut.feed_mm_per_min, cut.speed_rpm, cutter.flutes)
        if ranges and not _proven(load, sheet.name, cutter, stated.trials):
            depth = _deepest_step(cut, stated.plan.units)
            share = depth_share(stated.stock.depth_rules, depth, cutter.diameter)
            yield _Chip(cut=cut, load=load, ranges=ranges, share=share or 1.0)


def _proven(load: float, sheet: str, cutter: CutterStock, trials: Sequence[Trial]) -> bool:
    """Tell whether the maker's log has a clean trial of such a chip on such a sheet."""
    for trial in trials:
        same = (
            trial.outcome == _CLEAN
            and trial.stock is not None
            and trial.stock.name == sheet
            and trial.cutter is not None
            and trial.cutter.name == cutter.name
        )
        if same and trial.feed_mm_per_min and trial.speed_rpm:
            tried = chip_of(trial.feed_mm_per_min, trial.speed_rpm, cutter.flutes)
            if abs(tried - load) <= _ALIKE * tried:
                return True
    return False


def _deepest_step(cut: CutSetting, unit: str) -> float:
    """Return the deepest stated step in mm; 0 where depths need the plan's sizes."""
    scope = Scope(unit=unit)
    try:
        depths = [0.0, *(scope.mm(Amount(each)) for each in cut.passes if each != "rest")]
    except SettlingError:
        return 0.0
    return max((b - a for a, b in pairwise(depths)), default=0.0)


def _published(found: _Chip) -> Words:
    """Return the ranges in words, each with its class of machine and its source."""
    words = [
        said("{} ({}; {})", chips(each.least, each.most), each.machine, each.source)
        for each in found.ranges
    ]
    return said("Published are {}.", enumerated(words))
