"""Whole figures of a list that add up to the whole figure of their sum."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.basis.digits import steps


def adding_up(values: Sequence[float]) -> tuple[int, ...]:
    """Return values of 0 and up as whole ones whose sum is that of the values, rounded.

    Each is rounded down, then those with the largest remainders are rounded up (the method of
    largest remainders, as seats are shared out), the first of equals first.
    """
    floors = [math.floor(each) for each in values]
    rest = steps(math.fsum(values), 0) - sum(floors)
    by_remainder = sorted(range(len(values)), key=lambda at: floors[at] - values[at])
    up = frozenset(by_remainder[:rest])
    return tuple(floor + (at in up) for at, floor in enumerate(floors))
