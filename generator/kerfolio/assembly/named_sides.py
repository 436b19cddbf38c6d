"""What pieces' names say of where they stand: left of the right one, before the rear one.

Two names that are alike but for opposite words (``side.left`` and ``side.right``, ``front`` and
``rear``) say how the two lie to each other, seen by a person in front of the thing (our own rule;
common practice of naming, no single source).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from kerfolio.geometry.rigid import Rigid, Vector
from kerfolio.settling.settled import SettledPart

_SIDES = {
    "left": (0, -1),
    "right": (0, 1),
    "front": (1, -1),
    "rear": (1, 1),
    "back": (1, 1),
    "bottom": (2, -1),
    "top": (2, 1),
}
"""Words for sides: the axis in the world, and to which end of it."""

_APART = 1.0
"""Nearer to each other, mm, two pieces are in line."""


@dataclass(frozen=True, slots=True)
class Opposites:
    """Two pieces of which the first, by its name, lies on the lower side along a world axis."""

    low: str
    high: str
    axis: int


def opposites(pieces: Iterable[str]) -> tuple[Opposites, ...]:
    """Return the pieces whose names are alike but for opposite words."""
    found = (_opposed(one, other) for one, other in combinations(pieces, 2))
    return tuple(each for each in found if each is not None)


def _opposed(one: str, other: str) -> Opposites | None:
    mine, theirs = re.split(r"[.-]", one), re.split(r"[.-]", other)
    differing = [pair for pair in zip(mine, theirs, strict=False) if pair[0] != pair[1]]
    if len(mine) != len(theirs) or len(differing) != 1:
        return None
    a, b = (_SIDES.get(word) for word in differing[0])
    if a is None or b is None or a[0] != b[0] or a[1] == b[1]:
        return None
    return Opposites(one, other, a[0]) if a[1] < 0 else Opposites(other, one, a[0])


def agreement(
    named: Iterable[Opposites], poses: Mapping[str, Rigid], parts: Mapping[str, SettledPart]
) -> int:
    """Return how many names agree with how the whole stands, less those that do not."""
    offs = _offs(named, poses, parts)
    return sum((off > _APART) - (off < -_APART) for _, off in offs)


def contradicted(
    named: Iterable[Opposites], poses: Mapping[str, Rigid], parts: Mapping[str, SettledPart]
) -> tuple[Opposites, ...]:
    """Return the names that say otherwise than how the whole stands."""
    return tuple(each for each, off in _offs(named, poses, parts) if off < -_APART)


def _offs(
    named: Iterable[Opposites], poses: Mapping[str, Rigid], parts: Mapping[str, SettledPart]
) -> Iterator[tuple[Opposites, float]]:
    """Yield how much further up its axis each higher piece lies, mm."""
    for each in named:
        if each.low in poses and each.high in poses:
            low, high = (_middle(poses[name], parts[name]) for name in (each.low, each.high))
            yield each, high[each.axis] - low[each.axis]


def _middle(pose: Rigid, part: SettledPart) -> Vector:
    width, height = part.size
    return pose.point((width / 2, height / 2, part.thickness / 2))
