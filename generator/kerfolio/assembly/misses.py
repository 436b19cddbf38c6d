"""How far features miss each other, in words."""

from __future__ import annotations

from kerfolio.assembly.links import Link
from kerfolio.basis.measures import reading
from kerfolio.basis.said import Words, said
from kerfolio.basis.thickness import read_off
from kerfolio.geometry.rigid import Vector

PLAY = 0.1
"""How far, mm, features may miss each other that state no fit."""

_SEEN = 0.05


def as_drawn(off: Vector) -> list[Words]:
    """Return how a feature is misplaced that should be moved by ``off``, as its part is drawn."""
    x, y, _ = off
    words = []
    if abs(y) > _SEEN:
        way = "low" if y > 0 else "high"
        words.append(said("{} too {}", reading(f"too-{way}", read_off(abs(y))), way))
    if abs(x) > _SEEN:
        way = "left" if x > 0 else "right"
        words.append(said("{} too far {}", reading(f"too-far-{way}", read_off(abs(x))), way))
    return words


def fit_of(link: Link, index: int) -> float:
    """Return the clearance a side of a pair of features, mm, from what the joint makes of it."""
    for end in (link.b, link.a):
        if end.features:
            feature = end.features[min(index, len(end.features) - 1)]
            if feature.takes:
                return max(0.0, (feature.width.value - link.a.part.thickness) / 2) or PLAY
    return PLAY
