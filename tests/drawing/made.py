"""The steps of a plan's text as they are shown."""

from __future__ import annotations

from functools import cache

from kerfolio.assembly.fitting import fittings_in
from kerfolio.assembly.lying import Shown, shown_steps
from kerfolio.assembly.wall import wall_behind
from tests.plans import proved


@cache
def shown_of(plan: str) -> tuple[Shown, ...]:
    """The steps of a plan of one thing with their hardware, boards and wall."""
    (made,) = proved(plan).made
    assert made.build is not None
    settled, assembled = made.settled, made.build.drawn.assembled
    fittings = fittings_in(settled, assembled, made.build.order)
    wall = wall_behind(settled, assembled)
    return shown_steps(assembled, made.build.order, settled.plan.steps, fittings, wall)
