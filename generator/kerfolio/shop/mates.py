"""What a part goes into: the openings of other parts that its joints name."""

from __future__ import annotations

from kerfolio.basis.said import stated_name
from kerfolio.settling.clearance import features_named
from kerfolio.settling.reopened import takers
from kerfolio.settling.settled import SettledPlan


def mates_of(part: str, settled: SettledPlan) -> tuple[str, ...]:
    """Return what of other parts this one goes into, as a plan names it: ``side.rail-slot``."""
    owners = {label: each.name for each in settled.plan.parts for label in each.labels}
    found: dict[str, None] = {}
    for joint, _ in settled.plan.fits:
        ends = tuple(features_named(joint, owners))
        if len(ends) != 2:
            continue
        for (mine, _), (other, feature) in (ends, ends[::-1]):
            named = [f for f in settled.part(other).features if stated_name(f.name) == feature]
            if mine == part and takers(named):
                found[f"{other}.{feature}"] = None
    return tuple(found)
