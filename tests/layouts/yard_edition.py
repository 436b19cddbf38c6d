"""An edition as far as the yard card needs it."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.edition.edition import Edition
from kerfolio.layouts.count import sheets_by_size
from kerfolio.layouts.layout import Layout
from kerfolio.model.carrying import Carries
from kerfolio.model.workshop import Identity
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.lists import sheet_list


def edition_in(
    carries: Carries,
    settled: SettledPlan,
    layout: Layout,
    bed: tuple[float, float] | None = None,
    units: str = "mm",
) -> Edition:
    """Return a plan laid out in a workshop whose car and bed are of those sizes."""
    identity = Identity(title="Yard", maker="Ada", carries=carries, bed=bed, units_first=units)
    plan = settled.plan
    sheets = tuple(replace(each, grade="BB/BB") for each in plan.sheets)
    settled = replace(settled, plan=replace(plan, sheets=sheets))
    return Edition(
        identity=identity,
        plan=settled.plan,
        settled=settled,
        variants=(settled,),
        corners=(settled,),
        layout=layout,
        parts=(),
        hardware=(),
        sheets=sheet_list(settled, sheets_by_size(layout)),
        boards=(),
        trials=(),
        pictures={},
    )
