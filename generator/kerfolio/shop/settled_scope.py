"""What expressions may use, once a plan is settled."""

from __future__ import annotations

from kerfolio.settling.scope import Scope
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.sizes import scope_of


def scope_of_settled(settled: SettledPlan) -> Scope:
    """Return the scope of a settled plan: its sizes, thicknesses and fits in the plan's unit."""
    thickness = {each.name: each.thickness for each in settled.sheets}
    fit = {each.name: each.fit for each in settled.sheets}
    return scope_of(settled.plan, thickness, fit)[0]
