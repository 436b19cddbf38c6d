"""All patterns that a cheaper choice of boards could use."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.layouts.board_job import Fill, Job, Scale

_TINY = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Duals:
    """Prices of a piece of each kind that no pattern undercuts, and what all pieces come to."""

    prices: tuple[float, ...]
    bound: float


def by_size(job: Job, scale: Scale) -> Duals:
    """Return prices that go by size alone, at the rate of the room that is cheapest for its size.

    Their bound is what the pieces would cost if nothing were wasted.
    """
    rate = min(cost / room for cost, room in zip(scale.costs, job.rooms, strict=True))
    total = sum(size * count for size, count in zip(job.sizes, job.counts, strict=True))
    return Duals(prices=tuple(rate * size for size in job.sizes), bound=rate * total)


def cheap_patterns(
    job: Job, scale: Scale, duals: Duals, target: int, most: int
) -> list[Fill] | None:
    """Return the patterns that a choice of a total cost within ``target`` may use.

    A choice that costs no more than a bound plus a gap has no pattern in it whose reduced cost,
    at the prices of that bound, is above the gap (reduced cost fixing). It must hold for ``duals``
    and for the prices by size. ``most`` bounds the steps of the search: None when they run out.
    """
    plain, found = by_size(job, scale), []
    for room, cost in enumerate(scale.costs):
        least = [cost - (target - each.bound) - _TINY * (cost + target) for each in (duals, plain)]
        listing = _Listing(job, duals.prices, plain.prices, job.rooms[room], least, most)
        if not listing.run():
            return None
        found += [Fill(room=room, take=take) for take in listing.takes]
    return found


class _Listing:
    """Depth-first, a piece at a time, by falling price for its size, which bounds the hope."""

    def __init__(
        self,
        job: Job,
        prices: Sequence[float],
        plain: Sequence[float],
        room: int,
        least: Sequence[float],
        most: int,
    ) -> None:
        kinds = range(len(job.sizes))
        order = sorted(kinds, key=lambda kind: (-prices[kind] / job.sizes[kind], kind))
        self._kinds = [(kind, job.sizes[kind], prices[kind], plain[kind]) for kind in order]
        self._counts, self._room, self._least, self._left = job.counts, room, least, most
        self._take = [0] * len(job.sizes)
        self.takes: list[tuple[int, ...]] = []

    def run(self) -> bool:
        """List them; False when the steps run out."""
        self._go(0, self._room, 0.0, 0.0)
        return self._left > 0

    def _go(self, first: int, room: int, worth: float, plain: float) -> None:
        if worth >= self._least[0] and plain >= self._least[1]:
            self.takes.append(tuple(self._take))
        for place in range(first, len(self._kinds)):
            kind, size, price, more = self._kinds[place]
            self._left -= 1
            if self._left <= 0 or worth + price / size * room < self._least[0]:
                return
            if size <= room and self._take[kind] < self._counts[kind]:
                self._take[kind] += 1
                self._go(place, room - size, worth + price, plain + more)
                self._take[kind] -= 1
