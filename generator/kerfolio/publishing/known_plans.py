"""What a plan knows of how it is cut, for who logs a cut of it: nothing is proved."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from kerfolio.basis.tolerance import SAME
from kerfolio.model.plan import CutSetting, Plan, SheetUse
from kerfolio.model.statement import Amount
from kerfolio.model.stock import Stock
from kerfolio.model.workshop import Workshop
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.shop.cut_setting import REST
from kerfolio.trials.known import Known, KnownPlan, UsedSetting


def known_of(workshop: Workshop) -> Known:
    """Return what of a workshop helps who writes a trial down."""
    return Known(
        stock=workshop.stock,
        plans=tuple(_plan(each, workshop.stock) for each in workshop.plans),
        trials=workshop.trials,
        machine=workshop.identity.machine.kind,
        reader=workshop.identity.reader,
    )


def _plan(plan: Plan, stock: Stock) -> KnownPlan:
    drawn = {each.name: _drawn(each, plan, stock) for each in plan.sheets}
    return KnownPlan(
        name=plan.name,
        title=plan.title,
        release=plan.version,
        sheets={
            each.stock.name: mm for each in plan.sheets if (mm := drawn[each.name]) is not None
        },
        cuts=tuple(_settings(plan, drawn)),
        parts=tuple(each.name for each in plan.parts),
    )


def _drawn(sheet: SheetUse, plan: Plan, stock: Stock) -> float | None:
    """Return what a sheet is drawn for, mm, where the plan or the stock says it in figures."""
    found = stock.sheet(sheet.stock.name)
    usual = found.actual if found else None
    if sheet.drawn_for is None:
        return usual
    return _mm(sheet.drawn_for, plan) or usual


def _mm(amount: Amount, plan: Plan) -> float | None:
    try:
        return Scope(unit=plan.units).mm(amount)
    except SettlingError:  # it hangs on the plan's sizes
        return None


def _settings(plan: Plan, drawn: dict[str, float | None]) -> Iterator[UsedSetting]:
    sheets = {each.name: each.stock.name for each in plan.sheets}
    for each in plan.cuts:
        if each.sheet.name in sheets:
            yield UsedSetting(
                stock=sheets[each.sheet.name],
                cutter=each.cutter.name,
                speed=each.speed_rpm,
                feed=each.feed_mm_per_min,
                plunge=each.plunge_mm_per_min,
                passes=_passes(each, plan, drawn[each.sheet.name]),
            )


def _passes(cut: CutSetting, plan: Plan, thickness: float | None) -> tuple[float, ...]:
    """Return how deep each pass goes below the one before, mm; none where a depth is not known."""
    skim = _mm(cut.skim, plan) if cut.skim else 0.0
    rest = None if thickness is None or skim is None else thickness + skim
    depths = [rest if each == REST else _mm(Amount(each), plan) for each in cut.passes]
    known = [each for each in depths if each is not None]
    if len(known) < len(depths):
        return ()
    steps = tuple(b - a for a, b in pairwise((0.0, *sorted(known))))
    return tuple(each for each in steps if each > SAME)
