"""What a plan knows of how it is cut, for who logs a cut of it: nothing is proved."""

from __future__ import annotations

from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.workshop import Workshop
from kerfolio.shop.settings import drawn_thickness, settings_stated
from kerfolio.trials.known import Known, KnownPlan, Used


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
    sheets = {each.name: each.stock.name for each in plan.sheets}
    return KnownPlan(
        name=plan.name,
        title=plan.title,
        release=plan.version,
        sheets={
            of: mm
            for name, of in sheets.items()
            if (mm := drawn_thickness(plan, stock, name)) is not None
        },
        cuts=tuple(
            Used(
                stock=sheets[each.sheet.name],
                cutter=each.cutter.name,
                settings=settings_stated(each, plan, stock),
            )
            for each in plan.cuts
            if each.sheet.name in sheets
        ),
        parts=tuple(each.name for each in plan.parts),
    )
