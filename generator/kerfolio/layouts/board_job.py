"""What the search for boards is given and gives back: whole numbers throughout."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd

_TINY = 1e-7
_SUMS = 200_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Kinds of piece by falling size, and boards by rising room.

    A size has the kerf in it, and so has a room: then sizes add up without one. ``prices`` are
    what is to be least in all, here the lengths bought.
    """

    sizes: tuple[int, ...]
    counts: tuple[int, ...]
    rooms: tuple[int, ...]
    prices: tuple[int, ...]

    def left(self, fills: Sequence[Fill]) -> tuple[int, ...]:
        """Return how many of each kind some boards leave to be cut."""
        given = [sum(fill.take[kind] for fill in fills) for kind in range(len(self.sizes))]
        return tuple(max(0, n - has) for n, has in zip(self.counts, given, strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """One board: the index of its room, and how many it gives of each kind."""

    room: int
    take: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """Prices as small whole numbers, so that a bound rounds up to what boards can come to."""

    unit: int
    costs: tuple[int, ...]

    @classmethod
    def of(cls, job: Job) -> Scale:
        """Return the scale of a job: prices in units of their greatest common divisor."""
        unit = gcd(*job.prices)
        return cls(unit=unit, costs=tuple(each // unit for each in job.prices))

    def cost(self, fills: Sequence[Fill]) -> int:
        """Return the cost of boards on this scale."""
        return sum(self.costs[each.room] for each in fills)

    def rank(self, fills: Sequence[Fill]) -> tuple[int, int]:
        """Return the cost of boards, then their number."""
        return self.cost(fills), len(fills)

    def reached(self, bound: float) -> int:
        """Return the least total of whole boards that is not below a bound.

        Where the totals are too many to list, the bound itself, rounded up.
        """
        least = _up(bound)
        return min((each for each in self._totals(least) if each >= least), default=least)

    def below(self, cost: int) -> int:
        """Return the greatest total of whole boards below a cost; ``cost - 1`` if too many."""
        return max((each for each in self._totals(cost) if each < cost), default=cost - 1)

    def _totals(self, least: int) -> set[int]:
        """Return all totals below ``least`` and the next above; none where they are too many."""
        sums = {0}
        for cost in self.costs:
            sums = {each + cost * n for each in sums for n in range((least - each) // cost + 2)}
            if len(sums) > _SUMS:
                return set()
        return sums


def _up(value: float) -> int:
    """Round a bound up, forgiving what floating numbers add to it."""
    return int(-((_TINY * max(1.0, abs(value)) - value) // 1))
