"""Which relief each inside corner gets: the style asked for, unless it eats a wall that bears.

A wall bears where a corner that a mating part fills stands at one of its ends: the walls of slots,
notches and pockets, the shoulders and sides of tabs, the walls and bottoms between fingers.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist, floor, fsum, inf

from kerfolio.basis.tolerance import NOISE, SAME
from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.relief import DOG_BONE, SIDEWAYS, InsideCorner, opened
from kerfolio.settling.settled import MovedRelief, Relieving
from kerfolio.settling.shaped import Mating

NO_RELIEF = "none"
SIDEWAYS_OTHER = "sideways-other"
"""Sideways, in the walls that a sideways relief usually leaves whole."""

KEPT = 1 / 3
"""The share of its length that every wall that bears keeps at least.

Between two reliefs of one size the wall that is left is then no shorter than either of them: its
mate lies against a flat and not against a cusp. Common practice, no single source.
"""

_ORDER = {
    DOG_BONE: (DOG_BONE, SIDEWAYS, SIDEWAYS_OTHER),
    SIDEWAYS: (SIDEWAYS, DOG_BONE, SIDEWAYS_OTHER),
}
"""What is tried after the style asked for. The other walls come last: the roots of tabs and fingers
would grow narrow there, and the bottom of a notch deep."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatingCorner:
    """An inside corner that a mating part fills, and which of the features it belongs to."""

    corner: InsideCorner
    owner: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Relieved:
    """Corners with the style each of them gets, and what had to differ from the style asked for."""

    corners: tuple[tuple[InsideCorner, str], ...]
    moved: tuple[MovedRelief, ...]


@dataclass(frozen=True, slots=True)
class _Wall:
    """A straight wall with the mating corners at its ends, each with which of its walls it is."""

    length: float
    ends: tuple[tuple[int, int], ...]


def mating_corners(
    corners: Iterable[InsideCorner], mating: Sequence[Sequence[Mating]]
) -> tuple[MatingCorner, ...]:
    """Return the corners that a mating part fills, each knowing which wall to eat.

    ``mating`` are the corners of each feature.
    """
    known: dict[tuple[int, int], list[tuple[int, Mating]]] = {}
    for owner, own in enumerate(mating):
        for each in own:
            known.setdefault(_cell(each.at), []).append((owner, each))
    found = []
    for corner in corners:
        owned = next(iter(_near(corner.at, known)), None)
        if owned is not None:
            owner, mate = owned
            found.append(MatingCorner(corner=_eating(corner, mate.eaten), owner=owner))
    return tuple(found)


def _cell(point: Point) -> tuple[int, int]:
    return floor(point[0]), floor(point[1])


def _near(
    point: Point, known: dict[tuple[int, int], list[tuple[int, Mating]]]
) -> Iterable[tuple[int, Mating]]:
    """Yield the mating corners at a point, those of the first feature first."""
    x, y = _cell(point)
    cells = [(x + a, y + b) for a in (-1, 0, 1) for b in (-1, 0, 1)]
    around = (each for cell in cells for each in known.get(cell, ()))
    here = (each for each in around if dist(each[1].at, point) < SAME)
    return sorted(here, key=lambda each: each[0])


def _eating(corner: InsideCorner, eaten: Point) -> InsideCorner:
    first, second = (abs(eaten[0] * x + eaten[1] * y) for x, y in (corner.first, corner.second))
    return replace(corner, relieve="first" if first >= second else "second")


def relieved(
    contours: Iterable[Contour],
    corners: Sequence[MatingCorner],
    names: Sequence[str],
    asked: Relieving,
) -> Relieved:
    """Return how the mating corners of contours are relieved.

    Features that share walls get one style: the first, in the order of ``_ORDER``, that leaves
    every wall its share, or else the one that leaves most. ``names`` are those of the features.
    """
    if asked.style == NO_RELIEF:
        return Relieved(corners=(), moved=())
    styles = dict.fromkeys((each.owner for each in corners), asked.style)
    moved: list[MovedRelief] = []
    for owners, walls in _groups(_walls(contours, corners), corners):
        change = _changed(walls, corners, asked)
        if change is not None:
            styles.update(dict.fromkeys(owners, change.style))
            moved.append(replace(change, features=tuple(names[each] for each in owners)))
    return Relieved(
        corners=tuple(_styled(each.corner, styles[each.owner]) for each in corners),
        moved=tuple(moved),
    )


def _walls(contours: Iterable[Contour], corners: Sequence[MatingCorner]) -> Iterator[_Wall]:
    """Yield the straight walls that a mating corner stands at an end of."""
    known = {each.corner.at: number for number, each in enumerate(corners)}
    for contour in contours:
        for edge in edges(contour):
            # A corner is arrived at by its first wall and left by its second one.
            ends = ((edge.start, 1), (edge.end, 0))
            bearing = tuple((known[at], which) for at, which in ends if at in known)
            if bearing and not edge.bulge:
                yield _Wall(dist(edge.start, edge.end), bearing)


def _groups(
    walls: Iterable[_Wall], corners: Sequence[MatingCorner]
) -> Iterator[tuple[tuple[int, ...], tuple[_Wall, ...]]]:
    """Yield the features that hang together by walls they share, with all their walls."""
    owned: dict[int, list[_Wall]] = {}
    for wall in walls:
        for owner in {corners[number].owner for number, _ in wall.ends}:
            owned.setdefault(owner, []).append(wall)
    seen: set[int] = set()
    for first in sorted(owned):
        group, waiting = list[int](), [first]
        while waiting:
            owner = waiting.pop()
            if owner not in seen:
                seen.add(owner)
                group.append(owner)
                ends = (end for wall in owned[owner] for end in wall.ends)
                waiting += [corners[number].owner for number, _ in ends]
        if group:
            yield tuple(sorted(group)), tuple(wall for each in group for wall in owned[each])


def _changed(
    walls: Sequence[_Wall], corners: Sequence[MatingCorner], asked: Relieving
) -> MovedRelief | None:
    """Return what features have instead of the style asked for, None where that does."""
    widest = {style: _widest(walls, corners, style) for style in _ORDER[asked.style]}
    limit, wall, gone = widest[asked.style]
    if limit >= asked.diameter:
        return None
    good = (style for style, (most, _, _) in widest.items() if most >= asked.diameter)
    best = max(widest, key=lambda style: widest[style][0])
    return MovedRelief(
        features=(),
        style=next(good, best),
        wall=wall,
        left=max(0.0, wall - gone * asked.diameter),
        widest=widest[best][0],
    )


def _widest(
    walls: Iterable[_Wall], corners: Sequence[MatingCorner], style: str
) -> tuple[float, float, float]:
    """Return how wide arcs of a style may be so that all walls keep their share, mm.

    And the wall that says so: its length in mm, and how much of it arcs eat, in diameters.
    """
    found = [(inf, 0.0, 0.0)]
    for wall in walls:
        ends = ((corners[number].corner, which) for number, which in wall.ends)
        gone = fsum(_eaten(corner, style)[which] for corner, which in ends)
        if gone > NOISE:
            found.append(((1 - KEPT) * wall.length / gone, wall.length, gone))
    return min(found)


def _eaten(corner: InsideCorner, style: str) -> tuple[float, float]:
    """Return how much of its walls a relief of a diameter of 1 mm takes, mm."""
    eating, shape = _styled(corner, style)
    return opened(eating, 0.5, shape)


def _styled(corner: InsideCorner, style: str) -> tuple[InsideCorner, str]:
    """Return a corner with the walls it eats, and the style of its relief."""
    if style != SIDEWAYS_OTHER:
        return corner, style
    other = "second" if corner.relieve == "first" else "first"
    return replace(corner, relieve=other), SIDEWAYS
