"""Checks of the chip load against what tables publish and what the maker's own log says."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import chip, chips, feed, number
from kerfolio.basis.said import Words, enumerated, said, strung
from kerfolio.basis.tolerance import NOISE
from kerfolio.model.plan import CutSetting
from kerfolio.model.router import Router
from kerfolio.model.statement import Amount
from kerfolio.model.stock import MACHINES, SHAPED, CutterStock
from kerfolio.model.trial import Trial
from kerfolio.proving.rule import Stated, before
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.shop.chip_load import (
    USUAL_MACHINE,
    Allowed,
    allowed_chips,
    chip_of,
    depth_share,
)
from kerfolio.shop.logged import same_pair

_ALIKE = 0.1
"""A clean trial speaks for settings whose chip load is within a tenth of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Chip:
    """A cut setting's chip load in mm, and what its class of machine may take off.

    ``usual`` is what a small shop's machine may, where the workshop does not say what its own is.
    ``share`` is what depth leaves of either (1 where the tables do not say), ``machine`` what the
    workshop says of its own. Speed in turns a minute, feed in mm/min.
    """

    cut: CutSetting
    cutter: CutterStock
    load: float
    allowed: Allowed
    usual: Allowed | None
    share: float
    machine: Router
    speed: float
    feed: float

    @property
    def bounds(self) -> tuple[float, float]:
        """The least and the most chip load at its depth, mm."""
        return self._at_depth(self.allowed)

    @property
    def fits(self) -> bool:
        """Whether it lies within them."""
        least, most = self.bounds
        return least * (1 - NOISE) <= self.load <= most * (1 + NOISE)

    @property
    def is_usual(self) -> bool:
        """Whether a small shop's machine may take so much off, where that is asked."""
        if self.usual is None:
            return True
        least, most = self._at_depth(self.usual)
        return least * (1 - NOISE) <= self.load <= most * (1 + NOISE)

    def _at_depth(self, allowed: Allowed) -> tuple[float, float]:
        return allowed.least * self.share, allowed.most * self.share


@before(
    "chip-too-thin",
    reason="A chip thinner than published for its machine rubs: the cutter burns and dulls.",
    source="published chip loads by material, cutter and class of machine, named in the remark",
    severity=Severity.WARNING,
)
def chips_not_thin(stated: Stated) -> Iterator[Finding]:
    """Look for chip loads below those of the machine's class: the cutter rubs, and burns.

    Ranges differ many times over from one class of machine to another: that which the workshop
    states counts, else all of them together. A clean trial outranks them.
    """
    for each in _chips(stated):
        least, _ = each.bounds
        if not each.fits and each.load < least:
            name = each.cut.name
            message = said("`{}`: a chip of {} rubs and burns", name, chip(each.load))
            advice = said("{} {}", _thicker(each, least), _published(each))
            yield warning("chip-too-thin", message, each.cut.place, advice, subject=name)


@before(
    "chip-too-thick",
    reason="A chip thicker than published for its machine breaks cutters and loses steps.",
    source="published chip loads by material, cutter and class of machine, named in the remark",
    severity=Severity.WARNING,
)
def chips_not_thick(stated: Stated) -> Iterator[Finding]:
    """Look for chip loads above those of the machine's class: the cutter is overloaded."""
    for each in _chips(stated):
        _, most = each.bounds
        if not each.fits and each.load > most:
            name = each.cut.name
            message = said("`{}`: a chip of {} overloads the cutter", name, chip(each.load))
            slower = feed("wanted", _rounded(each.feed * most / each.load, math.floor))
            advice = said("Feed {} or less, or take shallower passes. {}", slower, _published(each))
            yield warning("chip-too-thick", message, each.cut.place, advice, subject=name)


@before(
    "machine-unsaid",
    reason="Chip loads differ many times over from one class of machine to another.",
    source="published chip loads by material, cutter and class of machine, named in the remark",
    severity=Severity.NOTE,
)
def machine_said(stated: Stated) -> Iterator[Finding]:
    """Look for chip loads that are right on some machines only, where none is stated."""
    for each in _chips(stated):
        if each.fits and not each.is_usual and each.usual is not None:
            thin = each.load < each.usual.least
            kind = MACHINES[0 if thin else -1]
            name, load = each.cut.name, chip(each.load)
            message = said("`{}`: a chip of {} is right on {} machines alone", name, load, kind)
            own = f"If yours is one, write `machine: {{class: {kind}}}` into `workshop.yaml`"
            how = _thicker(each, each.usual.least * each.share) if thin else said("Feed slower.")
            advice = said("{}. {} {}", own, how, _published(each))
            yield note("machine-unsaid", message, each.cut.place, advice, subject=name)


def _thicker(each: _Chip, least: float) -> Words:
    """Return how to get a thicker chip with the machine at hand."""
    faster = _rounded(each.feed * least / each.load, math.ceil)
    slower = _rounded(each.speed * each.load / least, math.floor)
    ways: list[Words] = []
    if each.machine.feed is None or faster <= each.machine.feed:
        ways.append(said("feed {} or more", feed("wanted", faster)))
    if each.machine.speed is None or slower >= each.machine.speed[0]:
        ways.append(said("turn at {} rpm or less", number("slower", slower)))
    if each.cutter.flutes > 1:
        ways.append(said("take a cutter of fewer flutes"))
    if not ways:
        return said("No feed or speed of the workshop’s machine gives this cutter enough.")
    first, *more = ways
    return said("To thicken it, {}.", strung([first, *more], ", or "))


def _rounded(value: float, way: Callable[[float], int]) -> float:
    """Return a feed or a speed to a hundred, up or down."""
    return 100.0 * way(value / 100)


def _chips(stated: Stated) -> Iterator[_Chip]:
    sheets = {use.name: stated.stock.sheet(use.stock.name) for use in stated.plan.sheets}
    machine = stated.plan.machine
    for cut in stated.plan.cuts:
        cutter, sheet = stated.stock.cutter(cut.cutter.name), sheets.get(cut.sheet.name)
        if cutter is None or sheet is None or not cut.feed_mm_per_min or not cut.speed_rpm:
            continue
        if cutter.kind in SHAPED or not machine.turns(cut.speed_rpm):
            continue  # no table is about the tip of a V; a speed that is wrong is told itself
        ask = partial(allowed_chips, stated.stock, sheet.family, cutter.diameter)
        allowed = ask(machine.kind)
        load = chip_of(cut.feed_mm_per_min, cut.speed_rpm, cutter.flutes)
        if allowed and not _proven(load, sheet.name, cutter, stated.trials):
            depth = _deepest_step(cut, stated.plan.units)
            share = depth_share(stated.stock.depth_rules, depth, cutter.diameter)
            yield _Chip(
                cut=cut,
                cutter=cutter,
                load=load,
                allowed=allowed,
                usual=None if machine.kind else ask(USUAL_MACHINE),
                share=share or 1.0,
                machine=machine,
                speed=cut.speed_rpm,
                feed=cut.feed_mm_per_min,
            )


def _proven(load: float, sheet: str, cutter: CutterStock, trials: Sequence[Trial]) -> bool:
    """Tell whether the maker's log has a clean trial of such a chip on such a sheet."""
    for trial in same_pair(trials, sheet, cutter.name):
        if trial.outcome.clean and trial.feed_mm_per_min and trial.speed_rpm:
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
    """Return the ranges of the class of machine in words, each with its source."""
    words = [
        said("{} ({}; {})", chips(each.least, each.most), each.machine, each.source)
        for each in found.allowed.published
    ]
    return said("Published are {}.", enumerated(words))
