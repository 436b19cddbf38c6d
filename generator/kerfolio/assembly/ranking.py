"""Which of several explanations of the same misses is named first.

All of them close every loop. The least change that leaves the most regular plan is the likeliest
cause: fewer moves before more, small ones before large ones, and of what geometry cannot tell apart
the one after which numbers are rounder and features more in line (``regular.py``). The weights are
our own; ``tests/bench/named_first.py`` measures what they do.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import degrees, log2

from kerfolio.assembly.adjustment import LEVER
from kerfolio.assembly.blame import Blame, Culprit
from kerfolio.assembly.feature_kinds import Freedom
from kerfolio.assembly.pairing import TOLERANCE
from kerfolio.assembly.regular import Regularity
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import added, scaled

_A_MOVE = 3.0
"""What one more move or turn costs, in steps of roundness."""

_TWICE = 2.0
"""What a change twice as large costs."""


def ranked(blames: Sequence[Blame], regularity: Regularity) -> tuple[Blame, ...]:
    """Return explanations, the likeliest first."""
    least = min((_size(each) for each in blames), default=1.0)
    return tuple(sorted(blames, key=lambda each: _price(each, least, regularity)))


def _price(blame: Blame, least: float, regularity: Regularity) -> tuple[float, int, int]:
    moves = [v for each in blame.culprits for v in each.by if abs(v) > TOLERANCE]
    gained = sum(_gained(each, regularity) for each in blame.culprits)
    along = [each for each in blame.culprits if each.suspect.freedom is Freedom.OUTLINE]
    price = _A_MOVE * len(moves) + _TWICE * log2(_size(blame) / least) - gained
    return (
        round(price, 2),
        len(blame.gaps),
        sum(abs(each.by[1]) > TOLERANCE for each in along),
    )


def _size(blame: Blame) -> float:
    return sum(abs(v) for each in blame.culprits for v in each.by)


def _gained(culprit: Culprit, regularity: Regularity) -> int:
    """Return how much more regular its part is once a culprit is put right."""
    suspect, by = culprit.suspect, culprit.by
    part, names = suspect.part.name, suspect.features
    along = scaled(suspect.axes[0], by[0])
    gained = 0
    if suspect.freedom.on_edge:
        along = (0.0, 0.0, 0.0)
        if abs(by[0]) > TOLERANCE and suspect.freedom is Freedom.OUTLINE:
            across = abs(suspect.outward[0]) > abs(suspect.outward[1])
            gained += regularity.of_length(part, 0 if across else 1, by[0])
        elif abs(by[0]) > TOLERANCE:
            gained += regularity.of_depth(part, names, -by[0])
    if abs(by[2]) > TOLERANCE:
        gained += regularity.of_turn(part, names, degrees(by[2] / LEVER))
    off = added(along, scaled(suspect.axes[1], by[1]))
    flat: Point = (off[0], off[1])
    return gained + regularity.of_move(part, names, flat)
