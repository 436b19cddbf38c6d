"""What is laid into a joint that is too loose: slips as large as its walls, cut from scrap."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import floor

from kerfolio.basis.tolerance import NOISE
from kerfolio.model.feature_kind import FINGERS, NOTCH
from kerfolio.settling.reopened import takers
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

LEAST_LOOSE = 0.1
"""mm: less than a sheet of paper is left alone, or taken up by glue (common practice)."""

SLIPS = (("veneer", 0.6), ("card", 0.3), ("paper", 0.1))
"""What is at hand, and how thick it usually is, mm; common practice, no single source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shim:
    """A slip for each opening of a feature, ``count`` of them; mm.

    ``length`` runs along the wall, ``width`` into the opening, as deep as that is.
    """

    feature: str
    count: int
    length: float
    width: float


def shims(
    settled: SettledPlan, part: SettledPart, features: Iterable[SettledFeature]
) -> tuple[Shim, ...]:
    """Return the slips for features of a part that a sheet goes into, one for each opening.

    They lie against one wall, and are as long as what goes in.
    """
    return tuple(_shim(each, part, settled.sheet(each.takes).fit) for each in takers(features))


def _shim(feature: SettledFeature, part: SettledPart, fit: float) -> Shim:
    ends = {FINGERS: 0, NOTCH: 1}.get(feature.kind, 2)
    return Shim(
        feature=feature.name,
        count=len(feature.shape),
        length=feature.length.value - ends * (feature.room.ends if feature.room else fit),
        width=feature.depth.value if feature.depth else part.thickness,
    )


def made_of(thickness: float) -> tuple[tuple[str, int], ...]:
    """Return what makes up a thickness, mm, to a sheet of paper less: a word, and how many."""
    left, found = floor(thickness / LEAST_LOOSE + NOISE), list[tuple[str, int]]()
    for name, each in SLIPS:
        count, left = divmod(left, round(each / LEAST_LOOSE))
        if count:
            found.append((name, count))
    return tuple(found)
