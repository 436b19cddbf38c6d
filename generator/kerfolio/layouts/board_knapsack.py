"""The bounded knapsack: the most value that fits a board."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Sizes = NDArray[np.int64]
Values = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Step:
    """One decision: whether ``count`` more of a kind go in; where each state came from."""

    kind: int
    count: int
    origin: NDArray[np.int64]
    taken: NDArray[np.bool_]


class Knapsack:
    """Every filling that no smaller one betters: by rising size, of rising value."""

    def __init__(
        self, sizes: Sequence[int], counts: Sequence[int], values: Sequence[float], room: int
    ) -> None:
        self._kinds = len(sizes)
        self._steps: list[_Step] = []
        self.sizes: Sizes = np.zeros(1, dtype=np.int64)
        self.values: Values = np.zeros(1)
        for kind, (size, count, value) in enumerate(zip(sizes, counts, values, strict=True)):
            if value > 0.0:
                for chunk in _chunks(min(count, room // size)):
                    self._add(kind, chunk, size * chunk, value * chunk, room)

    def best(self, room: int) -> int:
        """Return the index of the most valuable filling of a room no larger than the first."""
        return int(np.searchsorted(self.sizes, room, side="right")) - 1

    def take(self, index: int) -> tuple[int, ...]:
        """Return how many of each kind a filling has."""
        counts = [0] * self._kinds
        for step in reversed(self._steps):
            if step.taken[index]:
                counts[step.kind] += step.count
            index = int(step.origin[index])
        return tuple(counts)

    def _add(self, kind: int, count: int, size: int, value: float, room: int) -> None:
        old = len(self.sizes)
        fits = int(np.searchsorted(self.sizes, room - size, side="right"))
        sizes = np.concatenate((self.sizes, self.sizes[:fits] + size))
        values = np.concatenate((self.values, self.values[:fits] + value))
        order = np.lexsort((-values, sizes))
        ranked = values[order]
        ahead = np.concatenate(([-1.0], np.maximum.accumulate(ranked)[:-1]))
        order = order[ranked > ahead + 1e-12]
        self.sizes, self.values = sizes[order], values[order]
        taken = order >= old
        self._steps.append(_Step(kind, count, np.where(taken, order - old, order), taken))


def _chunks(count: int) -> Iterator[int]:
    """Split a count so that sums of chunks make every number up to it: 1, 2, 4, ..., the rest."""
    chunk = 1
    while count > 0:
        yield min(chunk, count)
        count -= chunk
        chunk *= 2
