"""Takes sheets away from a layout, or smaller ones for large, as long as all pieces find room."""

from __future__ import annotations

import math
import random
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.layouts.crowd import Crowd
from kerfolio.layouts.filling import Filling, Found
from kerfolio.layouts.first_fit import Supply
from kerfolio.layouts.lattice import Lattice
from kerfolio.layouts.pose import Kind
from kerfolio.layouts.room import Room

_PLACES = 200
"""Places of the lattice along a sheet's longest side."""

_FULL = 0.985
"""Footprints fill no more than this of the room they share."""


@dataclass(frozen=True, slots=True)
class _Goal:
    """The sheets to do with, when the one at ``index`` is given up or exchanged."""

    rooms: tuple[Room, ...]
    index: int
    exchanged: bool

    @property
    def price(self) -> tuple[float, int]:
        return round(math.fsum(room.worth for room in self.rooms), 6), len(self.rooms)


def lattice_for(rooms: Sequence[Room]) -> Lattice:
    """Return a lattice fine enough for sheets, coarse enough to look at all of its places."""
    return Lattice(max(max(room.width, room.height) for room in rooms) / _PLACES)


def thinned(
    fillings: Sequence[Filling],
    kinds: Sequence[Kind],
    supply: Supply,
    chance: random.Random,
    fewest: int,
    moves: int,
) -> tuple[Filling, ...]:
    """Return sheets of less worth, or fewer of the same, that hold the same pieces.

    Goes on until nothing cheaper is thinkable, until ``fewest`` sheets are reached where there is
    only one size, or until the moves are used up.
    """
    best, lattice, left = tuple(fillings), lattice_for(supply.rooms), moves
    while left > 0 and not (len(supply.rooms) == 1 and len(best) <= fewest):
        goals = list(_goals(best, kinds, supply))
        reached = None
        for number, goal in enumerate(goals):
            crowd = Crowd(kinds, goal.rooms, _starts(best, goal, kinds, chance), lattice, chance)
            reached = crowd.parted(left // (len(goals) - number))
            left -= crowd.work
            if reached is not None:
                best = filled_with(goal.rooms, reached, kinds)
                break
        if reached is None:
            break
    return best


def filled_with(
    rooms: Sequence[Room], places: Sequence[Sequence[Found]], kinds: Sequence[Kind]
) -> tuple[Filling, ...]:
    """Return sheets that hold pieces at places known to be free; empty ones are left out."""
    made = []
    for room, found in zip(rooms, places, strict=True):
        filling = Filling(room=room)
        for each in found:
            filling.put(each, kinds[each.kind].area)
        if found:
            made.append(filling)
    return tuple(made)


def _goals(best: Sequence[Filling], kinds: Sequence[Kind], supply: Supply) -> Iterator[_Goal]:
    """Yield cheaper sets of sheets that might do, the dearest first: it is the easiest."""
    rooms = tuple(each.room for each in best)
    dearest = _Goal(rooms, 0, exchanged=False).price
    weakest: dict[int, int] = {}
    for index in sorted(range(len(best)), key=lambda k: (best[k].area, k)):
        weakest.setdefault(rooms[index].stack, index)
    goals = [
        _Goal(rooms[:index] + rooms[index + 1 :], index, exchanged=False)
        for index in weakest.values()
    ]
    used = Counter(room.stack for room in rooms)
    for room, count in zip(supply.rooms, supply.counts, strict=True):
        if count is None or used[room.stack] < count:
            goals += [
                _Goal((*rooms[:index], room, *rooms[index + 1 :]), index, exchanged=True)
                for stack, index in weakest.items()
                if stack != room.stack
            ]
    held = {found.kind for each in best for found in each.places}
    area = math.fsum(each.area for each in best)
    for goal in sorted(goals, key=lambda each: each.price, reverse=True):
        enough = area <= _FULL * math.fsum(room.area for room in goal.rooms)
        if goal.price < dearest and enough and _hold(goal.rooms, held, kinds):
            yield goal


def _hold(rooms: Sequence[Room], held: set[int], kinds: Sequence[Kind]) -> bool:
    return all(any(kinds[kind].fits(room) for room in rooms) for kind in held)


def _starts(
    best: Sequence[Filling], goal: _Goal, kinds: Sequence[Kind], chance: random.Random
) -> list[tuple[int, Found]]:
    """Return every piece on a sheet of the goal: where it lay, or anywhere it fits."""
    starts = []
    for index, filling in enumerate(best):
        gone = index == goal.index and not goal.exchanged
        after = index > goal.index and not goal.exchanged
        for found in filling.places:
            sheet = index - after
            if gone or not found.pose.fits(goal.rooms[sheet]):
                sheet, found = _thrown(found, goal.rooms, kinds[found.kind], chance)
            starts.append((sheet, found))
    return starts


def _thrown(
    found: Found, rooms: Sequence[Room], kind: Kind, chance: random.Random
) -> tuple[int, Found]:
    choices = [
        (sheet, pose) for sheet, room in enumerate(rooms) for pose in kind.poses if pose.fits(room)
    ]
    sheet, pose = choices[chance.randrange(len(choices))]
    x = chance.random() * max(rooms[sheet].width - pose.width, 0.0)
    y = chance.random() * max(rooms[sheet].height - pose.height, 0.0)
    return sheet, Found(kind=found.kind, pose=pose, x=x, y=y)
