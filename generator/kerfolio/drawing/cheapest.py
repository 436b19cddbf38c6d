"""The cheapest of many places, where a part of the cost takes long to find."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import inf

_AT_ONCE = 24
_SAME = 1e-9


def cheapest(known: Sequence[float], more: Callable[[list[int]], Sequence[float]]) -> int:
    """Return the number of what costs least, the first of equal ones.

    ``known`` is a part of each cost; ``more`` returns the rest, 0 or more, for some numbers, and
    is asked only for what may still be the cheapest. Raises ValueError where there is nothing.
    """
    if not known:
        raise ValueError("nothing to choose from")
    order = sorted(range(len(known)), key=lambda each: (known[each], each))
    best, least = order[0], inf
    for start in range(0, len(order), _AT_ONCE):
        some = [each for each in order[start : start + _AT_ONCE] if known[each] <= least + _SAME]
        if not some:
            break
        for each, rest in zip(some, more(some), strict=True):
            cost = known[each] + rest
            if cost < least - _SAME or (cost < least + _SAME and each < best):
                best, least = each, min(cost, least)
    return best
