"""Curves in few straight facets: as many as the eye needs, and which of them make one curve."""

from __future__ import annotations

import math
from collections.abc import Sequence

SMOOTH = 25.0
"""Neighbouring faces that turn less than this, degrees, are facets of one curve."""

_STRAY = 0.1
_FACET = 22.5
"""Facets of a curve are joined while they stray less than this, mm, and turn less, degrees."""


def thinned(ring: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return a ring with the many short facets of its curves joined to fewer.

    A corner sharper than ``SMOOTH`` stays; so does every point of a curve after which the chord
    would stray by 0.1 mm or turn by 22.5 degrees.
    """
    count = len(ring)
    turns = [_turn(ring[i - 1], ring[i], ring[(i + 1) % count]) for i in range(count)]
    sharp = [i for i in range(count) if abs(turns[i]) >= SMOOTH]
    first = sharp[0] if sharp else 0
    kept, since, size = [ring[first]], 0.0, 0.0
    for step in range(1, count):
        here, before = (first + step) % count, ring[(first + step - 1) % count]
        size += math.dist(before, ring[here])
        since += turns[here]
        stray = (size + math.dist(ring[here], ring[(here + 1) % count])) * abs(math.radians(since))
        if abs(turns[here]) < 1e-6 and abs(since) < 1e-6:
            continue
        turn = abs(turns[here])
        if turn >= SMOOTH or abs(since) + turn > _FACET or stray / 8 > _STRAY:
            kept.append(ring[here])
            since, size = 0.0, 0.0
    return kept if len(kept) > 2 else list(ring)


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Return by how many degrees the way from a through b to c turns left."""
    one, two = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
    cross, dot = one[0] * two[1] - one[1] * two[0], one[0] * two[0] + one[1] * two[1]
    return math.degrees(math.atan2(cross, dot))
