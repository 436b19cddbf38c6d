"""What expressions may use, once a plan is settled."""

from __future__ import annotations

from kerfolio.settling.scope import Scope
from kerfolio.settling.settled import SettledPlan


def scope_of_settled(settled: SettledPlan) -> Scope:
    """Return the scope of a settled plan: its sizes, thicknesses and fits in the plan's unit."""
    bare = Scope(unit=settled.plan.units)
    per = bare.mm_per_unit
    return Scope(
        unit=bare.unit,
        names={name: size.value for name, size in settled.sizes},
        thickness={each.name: each.thickness / per for each in settled.sheets},
        fit={each.name: each.fit / per for each in settled.sheets},
    )
