"""Several copies laid out together, the pieces of one copy side by side where it costs nothing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from kerfolio.layouts.engine import Blank, Engine, Job, Packed, Spot

_MOST = 8


@dataclass(frozen=True, slots=True)
class KeptTogether:
    """An engine for the blanks of several copies; ``engine`` packs as many as it is given.

    Among layouts of the least worth it takes one whose copies come in the smallest groups, every
    group on sheets of its own; groups of more than eight are not tried. In a group, blanks alike
    are dealt to the copies in the order in which they lie. Where a bed has offcuts, which are there
    only once, all copies are one group.
    """

    engine: Engine

    def pack(self, job: Job) -> Packed:
        """Place all blanks; see ``Engine``."""
        copies = sorted({blank.copy for blank in job.blanks})
        whole = self.engine.pack(job)
        if whole.too_large or len(copies) < 2:
            return whole
        made = {len(copies): whole}
        sizes = self._sizes(job, copies, made)
        taken = iter(copies)
        spots: list[Spot] = []
        sheets: list[int] = []
        for size in sizes:
            blanks = _of(job, [next(taken) for _ in range(size)])
            packed, first = made[size], len(sheets)
            dealt = _dealt(packed.spots, job.blanks, blanks)
            spots += [replace(spot, sheet=spot.sheet + first) for spot in dealt]
            sheets += packed.sheets
        engine = ", ".join(dict.fromkeys(made[size].engine for size in sizes))
        return replace(whole, spots=tuple(spots), sheets=tuple(sheets), engine=engine)

    def _sizes(self, job: Job, copies: Sequence[int], made: dict[int, Packed]) -> Sequence[int]:
        """Return how many copies each group has; packs groups into ``made`` as they are asked for.

        The first size is tried that lets all copies be packed in groups of it, and smaller ones,
        for no more than together.
        """
        count = len(copies)
        if any(stack.count is not None for stack in job.bed.stacks):
            return (count,)
        least = job.price(made[count])
        for most in range(1, min(count, _MOST + 1)):
            part = replace(job, blanks=_of(job, copies[:most]))
            made[most] = self.engine.pack(part)
            prices = {size: job.price(made[size]) for size in range(1, most + 1)}
            sizes = _cheapest(prices, count)
            if job.bed.price(Counter(n for size in sizes for n in made[size].sheets)) <= least:
                return sizes
        return (count,)


def _of(job: Job, copies: Iterable[int]) -> tuple[Blank, ...]:
    wanted = set(copies)
    return tuple(blank for blank in job.blanks if blank.copy in wanted)


def _cheapest(prices: dict[int, tuple[float, int]], count: int) -> tuple[int, ...]:
    """Return the groups of the sizes priced in which ``count`` copies cost least."""
    best: list[tuple[tuple[float, int], tuple[int, ...]]] = [((0.0, 0), ())]
    for number in range(1, count + 1):
        best.append(
            min(
                (_sum(best[number - size][0], each), (*best[number - size][1], size))
                for size, each in prices.items()
                if size <= number
            )
        )
    return best[count][1]


def _sum(one: tuple[float, int], other: tuple[float, int]) -> tuple[float, int]:
    return round(one[0] + other[0], 6), one[1] + other[1]


def _dealt(spots: Sequence[Spot], known: Sequence[Blank], blanks: Sequence[Blank]) -> list[Spot]:
    """Return the spots of one group, given to its blanks: twins in the order in which they lie."""
    twin = {blank.label: blank.twin for blank in known}
    dealt: list[Spot] = []
    for name in dict.fromkeys(blank.twin for blank in blanks):
        lying = [spot for spot in spots if twin[spot.label] == name]
        lying.sort(key=lambda spot: (spot.sheet, spot.x, spot.y))
        labels = [blank.label for blank in blanks if blank.twin == name]
        dealt += [replace(s, label=label) for s, label in zip(lying, labels, strict=True)]
    return dealt
