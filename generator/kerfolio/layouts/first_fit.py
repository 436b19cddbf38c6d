"""Pieces laid one by one, each in the best free place of the first sheet that has room.

Windows and hollows are filled where a piece fits. Searched are the orders of the pieces, three
tastes for places, and which sheets are opened first: the usual ones, then small changes of the
best so far.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

from kerfolio.geometry.slabs import Numbers
from kerfolio.layouts.engine import Stack
from kerfolio.layouts.filling import Filling, Taste
from kerfolio.layouts.pose import Kind, Pose
from kerfolio.layouts.room import Room


def _leftmost(x: Numbers, y: Numbers, pose: Pose) -> Numbers:
    return (x + pose.width) * 1e3 + y


def _lowest(x: Numbers, y: Numbers, pose: Pose) -> Numbers:
    return (y + pose.height) * 1e3 + x


def _cornered(x: Numbers, y: Numbers, pose: Pose) -> Numbers:
    return (x + pose.width) + 0.2 * (y + pose.height)


TASTES: tuple[Taste, ...] = (_leftmost, _lowest, _cornered)


@dataclass(frozen=True, slots=True)
class Supply:
    """The sheets there are: a room and how many of it, None for any number."""

    rooms: tuple[Room, ...]
    counts: tuple[int | None, ...]


def supply_of(stacks: Sequence[Stack], rooms: Sequence[Room]) -> Supply:
    """Return the sheets of a bed."""
    return Supply(tuple(rooms), tuple(stack.count for stack in stacks))


@dataclass(frozen=True, slots=True)
class Try:
    """An order of kinds, the taste they are placed by, and the order in which sheets are opened."""

    order: tuple[int, ...]
    taste: int
    opening: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """What came of a try; ``left`` are kinds of pieces for which there is no sheet.

    ``rate`` is the less the better: worth of the sheets, their number, what the last one holds and
    how far it reaches.
    """

    made: Try
    fillings: tuple[Filling, ...]
    left: tuple[int, ...]
    rate: tuple[float, ...]


def first_fit(
    kinds: Sequence[Kind],
    pieces: Sequence[int],
    supply: Supply,
    chance: random.Random,
    fewest: int,
    moves: int,
) -> Laid:
    """Return the best of many tries; stops at ``fewest`` sheets of one stack, or when moves end.

    ``pieces`` holds the number of its kind for each piece. All usual tries are made if the moves
    last so long.
    """
    best: Laid | None = None
    tries, work, plain = iter(usual_tries(kinds, pieces, supply)), 0, len(supply.rooms) == 1
    while best is None or (work < moves and not (plain and best.rate[1] <= fewest)):
        made = next(tries, None) or _changed(best, chance)
        laid = filled(made, kinds, supply)
        work += sum(each.work for each in laid.fillings)
        if best is None or (len(laid.left), laid.rate) <= (len(best.left), best.rate):
            best = laid
    return best


def orders(kinds: Sequence[Kind], pieces: Sequence[int]) -> list[tuple[int, ...]]:
    """Return the orders everyone would try: by area, longest side, box and narrowest side."""

    def box(number: int) -> Pose:
        return kinds[number].poses[0]

    found = (
        sorted(pieces, key=lambda n: -kinds[n].area),
        sorted(pieces, key=lambda n: -max(box(n).width, box(n).height)),
        sorted(pieces, key=lambda n: -box(n).width * box(n).height),
        sorted(pieces, key=lambda n: -min(box(n).width, box(n).height)),
    )
    return list(dict.fromkeys(tuple(order) for order in found))


def usual_tries(kinds: Sequence[Kind], pieces: Sequence[int], supply: Supply) -> list[Try]:
    """Return the tries everyone would make: the usual orders, every taste and opening."""
    return [
        Try(order, taste, opening)
        for order in orders(kinds, pieces)
        for taste in range(len(TASTES))
        for opening in _openings(supply)
    ]


def _openings(supply: Supply) -> list[tuple[int, ...]]:
    """Return orders of stacks: offcuts first or none at all; each kind of sheet bought first."""
    rooms = supply.rooms
    offcuts = sorted(
        (n for n, count in enumerate(supply.counts) if count is not None),
        key=lambda n: (rooms[n].worth, rooms[n].area),
    )
    bought = [n for n, count in enumerate(supply.counts) if count is None]
    heads = [tuple(offcuts), tuple(reversed(offcuts)), ()]
    tails = [(n, *(other for other in bought if other != n)) for n in bought] or [()]
    return list(dict.fromkeys((*head, *tail, *offcuts) for tail in tails for head in heads))


def _changed(best: Laid | None, chance: random.Random) -> Try:
    """Return the best try with one to three changes in its order, now and then another taste."""
    assert best is not None, "the usual tries come first"
    order, taste = list(best.made.order), best.made.taste
    if chance.random() < 0.3:
        taste = chance.randrange(len(TASTES))
    for _ in range(chance.randint(1, 3)):
        last = best.fillings[-1].places if best.fillings else []
        if last and chance.random() < 0.3:
            kind = last[chance.randrange(len(last))].kind
            order.remove(kind)
            order.insert(chance.randrange(len(order) + 1), kind)
        else:
            _swap(order, chance)
    return replace(best.made, order=tuple(order), taste=taste)


def _swap(order: list[int], chance: random.Random) -> None:
    """Exchange two pieces of different kinds, if there are any."""
    one = chance.randrange(len(order))
    others = [place for place, kind in enumerate(order) if kind != order[one]]
    if others:
        other = others[chance.randrange(len(others))]
        order[one], order[other] = order[other], order[one]


def filled(made: Try, kinds: Sequence[Kind], supply: Supply, most: float = math.inf) -> Laid:
    """Place all pieces in the order of a try, each on the first sheet that has room.

    What is not reached with about ``most`` work is left.
    """
    taste = TASTES[made.taste]
    fillings: list[Filling] = []
    left: list[int] = []
    unused = list(supply.counts)
    for number in made.order:
        if sum(each.work for each in fillings) > most:
            left.append(number)
            continue
        if any(each.add(number, kinds[number], taste) for each in fillings):
            continue
        fresh = _opened(number, kinds, supply, unused, made)
        if fresh is None:
            left.append(number)
        else:
            fillings.append(fresh)
    return Laid(made, tuple(fillings), tuple(left), rate(fillings))


def rate(fillings: Sequence[Filling]) -> tuple[float, ...]:
    """Return what sheets are judged by, the less the better."""
    if not fillings:
        return (0.0, 0.0, 0.0, 0.0)
    last = fillings[-1]
    reach = max((found.x + found.pose.width for found in last.places), default=0.0)
    worth = math.fsum(each.room.worth for each in fillings)
    return (round(worth, 6), len(fillings), round(last.area, 3), round(reach, 3))


def _opened(
    number: int, kinds: Sequence[Kind], supply: Supply, unused: list[int | None], made: Try
) -> Filling | None:
    """Return a new sheet with the piece on it, from the first stack that can hold it."""
    for stack in made.opening:
        count = unused[stack]
        if count == 0 or not kinds[number].fits(supply.rooms[stack]):
            continue
        fresh = Filling(room=supply.rooms[stack])
        if fresh.add(number, kinds[number], TASTES[made.taste]):
            unused[stack] = None if count is None else count - 1
            return fresh
    return None
