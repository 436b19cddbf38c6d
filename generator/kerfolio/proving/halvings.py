"""Checks of pieces that cross by halves: as high as each other, they come level."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import dist

from kerfolio.assembly.ends import End
from kerfolio.assembly.frames import at_ends, nominal_bottom
from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length, precise, reading
from kerfolio.basis.said import Words, said, stated_name
from kerfolio.basis.thickness import read_off
from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.crossing import crossings
from kerfolio.model.feature_kind import NOTCH
from kerfolio.model.joint_kind import NOTCH_JOINT
from kerfolio.proving.flush import UNEVEN
from kerfolio.proving.marks import about
from kerfolio.proving.meeting import Met, meetings, pairs
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_AS_HIGH = 0.05
"""Pieces are as high as each other where they cross within this, mm."""

_BEYOND = 1e-3
"""So far past a notch's bottom, mm, the wood behind it is looked for."""

_Set = tuple[str, str]
"""A part and the notches of it that are stated together, which are all as deep."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Half:
    """A notch that crosses another, ``depth`` mm as stated, where its piece is ``high`` mm."""

    end: End
    notch: SettledFeature
    depth: float
    high: float

    @property
    def set(self) -> _Set:
        return self.end.part.name, stated_name(self.notch.name)

    @property
    def is_half(self) -> bool:
        """Whether it goes half way through the piece."""
        return abs(self.depth - self.high / 2) < _AS_HIGH


@dataclass(frozen=True, slots=True, kw_only=True)
class _Crossing:
    """Two notches of pieces that are as high as each other where they cross."""

    met: Met
    a: _Half
    b: _Half

    @property
    def too_deep(self) -> float:
        """By how much the notches are too deep together for the edges to come level, mm."""
        return self.a.depth + self.b.depth - self.a.high


@after(
    "halving-uneven",
    reason="Two pieces as high as each other come level where they cross by halves.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def halvings_level(settled: SettledPlan) -> Iterator[Finding]:
    """Look for crossings whose notches together are not as deep as the pieces are high.

    Of the two the one is accused that elsewhere does not come level either, and does not go half
    way through; the other may be meant all the same.
    """
    crossed = tuple(_crossings(settled))
    level = {h.set for c in crossed if abs(c.too_deep) <= UNEVEN for h in (c.a, c.b)}
    told: set[frozenset[_Set]] = set()
    for each in crossed:
        sets = frozenset((each.a.set, each.b.set))
        if abs(each.too_deep) > UNEVEN and sets not in told:
            told.add(sets)
            first, second = sorted((each.b, each.a), key=lambda h: (h.set in level, h.is_half))
            yield _uneven(settled, each, first, second)


def _uneven(settled: SettledPlan, crossing: _Crossing, first: _Half, second: _Half) -> Finding:
    off = reading("off", read_off(abs(crossing.too_deep)))
    how = "deep" if crossing.too_deep > 0 else "shallow"
    message = said(
        "`{}.{}` is {} too {} for `{}` to come level with `{}`",
        *first.set,
        off,
        how,
        first.end.piece,
        second.end.piece,
    )
    high = length("high", first.high)
    made = precise("depth", first.depth - crossing.too_deep)
    advice: Words = said("Both are {} high there: make it {} deep.", high, made)
    advice = said("{} Or else `{}.{}` is, by as much.", advice, *second.set)
    what = about(settled, first.end.part, first.notch)
    return warning("halving-uneven", message, first.notch.place, advice, **what)


def _crossings(settled: SettledPlan) -> Iterator[_Crossing]:
    for met in meetings(settled, NOTCH_JOINT):
        for one, other in pairs(met):
            if one.kind is NOTCH and other.kind is NOTCH:
                a, b = _half(met.a, one), _half(met.b, other)
                if a and b and abs(a.high - b.high) < _AS_HIGH:
                    yield _Crossing(met=met, a=a, b=b)


def _half(end: End, notch: SettledFeature) -> _Half | None:
    behind = _behind(end.part, notch)
    if behind is None:
        return None
    depth = notch.length.value - at_ends(notch)
    return _Half(end=end, notch=notch, depth=depth, high=depth + behind)


def _behind(part: SettledPart, notch: SettledFeature) -> float | None:
    """Return how far it is from a notch's bottom to the far edge, mm; None where there is none.

    Openings on the way take nothing off how high a piece is.
    """
    (x, y), (dx, dy) = notch.at, notch.direction
    start = x - _BEYOND * dx, y - _BEYOND * dy
    reach = sum(part.size)
    ray = Edge(start, (x - reach * dx, y - reach * dy))
    hit = [dist(start, point) for edge in edges(part.plain.outer) for point in crossings(ray, edge)]
    return max(hit) + dist(start, nominal_bottom(notch)) if hit else None
