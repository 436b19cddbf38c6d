"""Where seams lie along one side of a drawing: each by itself, off what should stay whole."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import floor

from kerfolio.paper.tiling import OVERLAP

CLEAR = 2.5
"""How far a seam keeps from what it must not cross, mm: its crosses reach 2 mm, and scissors and
tape stray."""
_RIM = 1.0
"""How far the drawing keeps from the rim of the outer tiles, mm, where there is room."""
_TRIED = 1.0
"""How far apart, mm, the places are that are tried."""
_LEAST = 40.0
"""How near seams may come to one another, mm."""
_EVEN = 1e-4
"""What it costs to leave the even place, for a mm: little beside what is crossed."""


@dataclass(frozen=True, slots=True)
class Along:
    """What lies along one side of a drawing: where its parts begin and where they end, in order."""

    length: float
    begin: tuple[float, ...]
    end: tuple[float, ...]

    @classmethod
    def of(cls, length: float, spans: Iterable[tuple[float, float]], most: float) -> Along:
        """Return the spans, mm, but for those longer than ``most``, which some seam must cross."""
        kept = [(a - CLEAR, b + CLEAR) for a, b in spans if b - a <= most]
        return cls(length, tuple(sorted(a for a, _ in kept)), tuple(sorted(b for _, b in kept)))

    def crossed(self, at: float) -> int:
        """Count the spans that a seam crosses."""
        return bisect_left(self.begin, at) - bisect_right(self.end, at)


@dataclass(frozen=True, slots=True)
class SeamRun:
    """Where the windows of tiles begin, mm from the low end, and how much their seams cross."""

    starts: tuple[float, ...]
    crossed: int


def seam_run(along: Sequence[Along], count: int, window: float) -> SeamRun:
    """Return how ``count`` windows, mm, lie on drawings at the ends of a range, and all between.

    Neighbours share ``OVERLAP`` at least, with the seam in its middle. A seam may leave its last
    possible place by as much as is to spare, but by no more than the one before it does; so the
    best places are found seam by seam.
    """
    length = max(each.length for each in along)
    if count == 1:
        return SeamRun(((length - window) / 2,), 0)
    step = window - OVERLAP
    spare = count * step + OVERLAP - length
    rim = min(_RIM, spare / 2)
    backs = _backs(spare - 2 * rim, step - _LEAST)
    ends = [number * step + OVERLAP / 2 - rim for number in range(1, count)]
    places = _best([[_cost(along, end - back, back, backs) for back in backs] for end in ends])
    seams = [end - backs[place] for end, place in zip(ends, places, strict=True)]
    starts = (seams[0] + OVERLAP / 2 - window, *(at - OVERLAP / 2 for at in seams))
    return SeamRun(starts, sum(max(each.crossed(at) for each in along) for at in seams))


def _backs(room: float, most: float) -> list[float]:
    """Return by how much a seam may lie before its last place, evenly about the middle of it."""
    reach = min(room, most) / 2
    tried = floor(reach / _TRIED)
    return [room / 2 + _TRIED * number for number in range(-tried, tried + 1)]


def _cost(along: Sequence[Along], at: float, back: float, backs: Sequence[float]) -> float:
    even = backs[len(backs) // 2]
    return max(each.crossed(at) for each in along) + _EVEN * abs(back - even)


def _best(costs: Sequence[Sequence[float]]) -> list[int]:
    """Return the cheapest place in each row, none before that of the row above."""
    totals, chosen = list(costs[0]), []
    for row in costs[1:]:
        before, least = [], 0
        for place in range(len(row)):
            least = min(least, place, key=lambda each: (totals[each], each))
            before.append(least)
        chosen.append(before)
        totals = [cost + totals[before[place]] for place, cost in enumerate(row)]
    places = [min(range(len(totals)), key=totals.__getitem__)]
    for before in reversed(chosen):
        places.append(before[places[-1]])
    return places[::-1]
