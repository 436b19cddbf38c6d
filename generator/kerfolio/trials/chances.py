"""What a few graded cuts allow to say. Grades are ordered words: they are counted, never averaged.

Counts alone go into the exact binomial tail and its inversion, both of the library.
"""

from __future__ import annotations

import statistics
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from kerfolio.model.outcome import Grade

RISK = 0.1
"""How often a claim about more than half of all cuts may be wrong; one cut in ten is judged wrong
anyhow (from experience of such logs, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """How many cuts came out as what; ``counts`` begin with the worst grade."""

    counts: tuple[int, ...]

    @property
    def total(self) -> int:
        """How many there are."""
        return sum(self.counts)

    @property
    def seen(self) -> tuple[tuple[Grade, int], ...]:
        """Return each grade that was given, the best first, and how often."""
        pairs = zip(Grade, self.counts, strict=True)
        return tuple((grade, count) for grade, count in pairs if count)[::-1]

    @property
    def median(self) -> Grade:
        """The middle one, the worse of two middle ones. Raises StatisticsError for none."""
        each = (grade for grade, count in self.seen for _ in range(count))
        return Grade(statistics.median_low(each))

    def at_least(self, grade: Grade) -> int:
        """Return how many came out so, or better."""
        return sum(self.counts[grade - 1 :])


def tally(grades: Iterable[Grade]) -> Tally:
    """Count grades."""
    counted = Counter(grades)
    return Tally(counts=tuple(counted[each] for each in Grade))


@cache
def chance_of(hits: int, total: int) -> float:
    """Return how often so many of all or more would come out so, were it half of such cuts.

    The sign test (exact; W. J. Conover, Practical Nonparametric Statistics).
    """
    from scipy.special import bdtrc  # takes long to load, and is seldom needed

    return float(bdtrc(hits - 1, total, 0.5)) if hits else 1.0


def is_most(hits: int, total: int, risk: float = RISK) -> bool:
    """Tell whether more than half of all such cuts may be said to come out so.

    Were it half of them or fewer, so many hits would be seen no oftener than ``risk``.
    """
    return chance_of(hits, total) <= risk


def assured(counted: Tally) -> Grade | None:
    """Return the best grade that more than half of all such cuts may be said to reach.

    It is the lower end of the exact interval of the median. None where nothing can be said.
    """
    reached = (each for each in reversed(Grade) if is_most(counted.at_least(each), counted.total))
    return next(reached, None)


@cache
def share_within(hits: int, total: int) -> tuple[float, float]:
    """Return between which shares of all such cuts come out so, by as many as did.

    C. J. Clopper and E. S. Pearson, Biometrika 26 (1934): exact, with ``RISK`` of lying outside.
    """
    from scipy.special import betaincinv

    low = float(betaincinv(hits, total - hits + 1, RISK / 2)) if hits else 0.0
    high = float(betaincinv(hits + 1, total - hits, 1 - RISK / 2)) if hits < total else 1.0
    return low, high


def more_needed(counted: Tally, grade: Grade) -> int:
    """Return how many more must come out so, one after the other, until most may be said to."""
    more = 0
    while not is_most(counted.at_least(grade) + more, counted.total + more):
        more += 1
    return more
