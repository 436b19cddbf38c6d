"""How much a plan gives hands to do: metres to saw, holes and corners to drill."""

from __future__ import annotations

from dataclasses import dataclass
from math import fsum

from kerfolio.geometry.measure import length
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.settled import SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Handwork:
    """One copy by hand: ``saw`` metres of edges, how many ``holes`` and inside ``corners``."""

    saw: float
    holes: int
    corners: int


def handwork_of(settled: SettledPlan) -> Handwork:
    """Return what there is to do on all pieces; rims of holes are bored, not sawn."""
    parts = [(each, len(each.pieces)) for each in settled.parts]
    return Handwork(
        saw=fsum(_sawn(each) * count for each, count in parts) / 1000,
        holes=sum(count * sum(f.kind is HOLE for f in each.features) for each, count in parts),
        corners=sum(count * len(each.drill_centres) for each, count in parts),
    )


def _sawn(part: SettledPart) -> float:
    bored = (each for each in part.features if each.kind is HOLE and not each.depth)
    return length(part.plain) - fsum(length(rim) for each in bored for rim in each.shape)
