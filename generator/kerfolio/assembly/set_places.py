"""Where the things of a set stand: supports in rows, what lies on them, all else beside."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.geometry.rigid import Vector
from kerfolio.model.plan import Assembly

_BESIDE = 0.35
"""Air between things that stand beside each other, of the widest of them (tried on pictures)."""

_TOUCH = 1e-6  # mm

Spot = tuple[str, int]
"""An assembly's name and which of them, from 1."""
Sizes = Mapping[str, Vector]
Places = Mapping[Spot, Vector]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A ``lying`` thing and the ``supports`` under it, each with its size, mm.

    ``overhangs`` are how far it reaches past the outermost of them, at the left and the right;
    below zero it ends over them. ``crowded``: one of them stands in the next one.
    """

    lying: Assembly
    supports: tuple[Spot, ...]
    sizes: tuple[Vector, ...]
    overhangs: tuple[float, float]
    crowded: bool


def rows_of(stated: Mapping[str, Assembly], sizes: Sizes, places: Places) -> tuple[Row, ...]:
    """Return what lies on others, in the plan's order; twins lie alike and make one row."""
    return tuple(
        _row(each, supports_of(each, stated), sizes, places)
        for each in stated.values()
        if each.lies_on
    )


def _row(lying: Assembly, on: Sequence[Spot], sizes: Sizes, places: Places) -> Row:
    left, right = _reach([(lying.name, 1)], places, sizes)
    first, last = _reach(on, places, sizes)
    ends = sorted(_reach([spot], places, sizes) for spot in on)
    return Row(
        lying=lying,
        supports=tuple(on),
        sizes=tuple(sizes[name] for name, _ in on),
        overhangs=(first - left, right - last),
        crowded=any(one[1] > other[0] + _TOUCH for one, other in pairwise(ends)),
    )


def supports_of(assembly: Assembly, known: Mapping[str, Assembly]) -> tuple[Spot, ...]:
    """Return what an assembly lies on, each that is there once, in the order written."""
    found: dict[Spot, None] = {}
    for named in assembly.lies_on.supports if assembly.lies_on else ():
        name, _, number = named.name.partition(".")
        count = known[name].count if name in known else 0
        wanted = [int(number)] if number.isdigit() else [] if number else range(1, count + 1)
        found |= {(name, each): None for each in wanted if each <= count}
    return tuple(found)


def set_places(
    stated: Mapping[str, Assembly], sizes: Sizes, overhangs: Mapping[str, float]
) -> dict[Spot, Vector]:
    """Return where the lower left front corner of each thing comes to stand, mm.

    Supports stand in a row from left to right under what lies on them, the outermost ``overhangs``
    (mm) inside its ends, the others evenly between. Things that lie on the same supports lie side
    by side from front to back; all else stands beside.
    """
    places: dict[Spot, Vector] = {}
    lying: dict[Spot, tuple[Spot, ...]] = {}
    beside = _BESIDE * max(size[0] for size in sizes.values())
    edge = 0.0
    spots = [(name, n) for name, each in stated.items() for n in range(1, each.count + 1)]
    for spot in spots:
        under = supports_of(stated[spot[0]], stated)
        if under:
            lying[spot] = under
            places |= _borne(spot, under, places, sizes, edge, overhangs.get(spot[0], 0.0))
            edge = _reach(list(places), places, sizes)[1] + beside
    for spot in spots:
        if spot not in places:
            places[spot] = (edge, -sizes[spot[0]][1] / 2, 0.0)
            edge += sizes[spot[0]][0] + beside
    return places | _in_lanes(lying, places, sizes)


def _borne(
    lying: Spot, under: Sequence[Spot], places: Places, sizes: Sizes, edge: float, overhang: float
) -> dict[Spot, Vector]:
    """Return the places of a lying thing and of those of its supports that have none yet.

    Where some stand already, since something else lies on them too, it begins over the first of
    them, and the others follow; where all do, it lies over the middle of their row.
    """
    standing = [spot for spot in under if spot in places]
    new = [spot for spot in under if spot not in places]
    wide = sizes[lying[0]][0]
    left = _reach(standing, places, sizes)[0] - overhang if standing else edge
    first = places[standing[-1]][0] if standing else left + overhang
    last = left + wide - overhang - sizes[under[-1][0]][0]
    if not new:
        left = (math.fsum(_reach(standing, places, sizes)) - wide) / 2
    elif len(under) == 1:
        first = last = left + (wide - sizes[under[0][0]][0]) / 2
    row = [*standing[-1:], *new]
    step = (last - first) / max(1, len(row) - 1)
    found: dict[Spot, Vector] = {
        spot: (first + step * index, -sizes[spot[0]][1] / 2, 0.0)
        for index, spot in enumerate(row)
        if spot in new
    }
    return {**found, lying: (left, 0.0, max(sizes[name][2] for name, _ in under))}


def _reach(spots: Sequence[Spot], places: Places, sizes: Sizes) -> tuple[float, float]:
    """Return how far things reach from left to right."""
    ends = [(places[spot][0], places[spot][0] + sizes[spot[0]][0]) for spot in spots]
    return min(low for low, _ in ends), max(high for _, high in ends)


def _in_lanes(
    lying: Mapping[Spot, Sequence[Spot]], places: Places, sizes: Sizes
) -> dict[Spot, Vector]:
    """Return the places of what lies on the same supports: side by side from front to back.

    Those that do not reach into each other share a lane; the lanes together lie over the middle.
    """
    found: dict[Spot, Vector] = {}
    for group in _sharing(lying):
        lanes: list[list[Spot]] = []
        for spot in group:
            free = [lane for lane in lanes if not _meets(spot, lane, places, sizes)]
            (free[0] if free else _opened(lanes)).append(spot)
        deep = [max(sizes[name][1] for name, _ in lane) for lane in lanes]
        front = -math.fsum(deep) / 2
        for lane, depth in zip(lanes, deep, strict=True):
            for spot in lane:
                x, _, z = places[spot]
                found[spot] = (x, front + (depth - sizes[spot[0]][1]) / 2, z)
            front += depth
    return found


def _opened(lanes: list[list[Spot]]) -> list[Spot]:
    lanes.append([])
    return lanes[-1]


def _sharing(lying: Mapping[Spot, Sequence[Spot]]) -> list[list[Spot]]:
    """Return the lying things in lots that share supports, one with the next."""
    lots: list[tuple[frozenset[Spot], list[Spot]]] = []
    for spot, under in lying.items():
        joined = [lot for lot in lots if not lot[0].isdisjoint(under)]
        lots = [lot for lot in lots if lot not in joined]
        shared = frozenset(under).union(*(lot[0] for lot in joined))
        lots.append((shared, [*(each for lot in joined for each in lot[1]), spot]))
    return [group for _, group in lots]


def _meets(spot: Spot, lane: Sequence[Spot], places: Places, sizes: Sizes) -> bool:
    low, high = _reach([spot], places, sizes)
    ends = [_reach([each], places, sizes) for each in lane]
    return any(low < right - _TOUCH and left < high - _TOUCH for left, right in ends)
