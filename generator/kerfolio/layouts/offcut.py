"""The tie-break between layouts of as many sheets: the largest useful offcut left over."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from kerfolio.layouts.crowd import Crowd
from kerfolio.layouts.easing import snug
from kerfolio.layouts.filling import Filling, Found
from kerfolio.layouts.first_fit import TASTES, Supply, Try, filled, orders
from kerfolio.layouts.pose import Kind
from kerfolio.layouts.room import Room
from kerfolio.layouts.thinning import filled_with, lattice_for

LAST = 0.02
"""The share of a job's moves for drawing its last sheet together."""

_SHRINK = 0.98
_STEP = 40.0
"""How far pieces are drawn at once, mm."""


def offcut(filling: Filling) -> float:
    """Return the area in mm2 of the largest strip left free across a sheet's whole side."""
    room, (right, top) = filling.room, reach(filling)
    return max((room.width - right) * room.height, (room.height - top) * room.width)


def reach(filling: Filling) -> tuple[float, float]:
    """Return how far the pieces of a sheet reach to the right and upward in its room, mm."""
    ends = [(each.x + each.pose.width, each.y + each.pose.height) for each in filling.places]
    return max((x for x, _ in ends), default=0.0), max((y for _, y in ends), default=0.0)


def drawn_together(
    fillings: Sequence[Filling], kinds: Sequence[Kind], chance: random.Random, moves: int
) -> tuple[Filling, ...]:
    """Return the same sheets, fullest first, the last with the largest offcut found.

    What fits on the fuller sheets is taken off the last one before.
    """
    full = topped_up(fillings, kinds)
    if full and len(full) == len(fillings):
        *others, last = full
        best = max((last, *_laid_anew(last, kinds)), key=offcut)
        full = (*others, _squeezed(best, kinds, chance, moves))
    return tuple(_snug(each, kinds) for each in full)


def topped_up(fillings: Sequence[Filling], kinds: Sequence[Kind]) -> tuple[Filling, ...]:
    """Return the sheets, fullest first; what fits on them is taken off the last, which may go."""
    ordered = sorted(fillings, key=lambda each: (each.room.worth, -each.area / each.room.area))
    if not ordered:
        return ()
    *others, last = ordered
    others, last = _topped_up(others, last, kinds)
    return (*others, last) if last.places else tuple(others)


def _snug(filling: Filling, kinds: Sequence[Kind]) -> Filling:
    poses = [found.pose for found in filling.places]
    before = np.array([[found.x, found.y] for found in filling.places])
    places = snug(poses, before, filling.room, _STEP).tolist()
    moved = [replace(f, x=x, y=y) for f, (x, y) in zip(filling.places, places, strict=True)]
    return filled_with([filling.room], [moved], kinds)[0]


def _topped_up(
    others: Sequence[Filling], last: Filling, kinds: Sequence[Kind]
) -> tuple[list[Filling], Filling]:
    """Move pieces of the last sheet to where others have room, the largest first."""
    kept = Filling(room=last.room)
    for found in sorted(last.places, key=lambda each: -kinds[each.kind].area):
        if not any(each.add(found.kind, kinds[found.kind], TASTES[0]) for each in others):
            kept.put(found, kinds[found.kind].area)
    return list(others), kept


def _laid_anew(last: Filling, kinds: Sequence[Kind]) -> list[Filling]:
    """Return the sheets that laying its pieces one by one gives, as far as one holds them all."""
    alone = Supply((last.room,), (1,))
    made = [
        filled(Try(order, taste, (0,)), kinds, alone)
        for order in orders(kinds, [found.kind for found in last.places])
        for taste in range(len(TASTES))
    ]
    return [each.fillings[0] for each in made if not each.left]


def _squeezed(best: Filling, kinds: Sequence[Kind], chance: random.Random, moves: int) -> Filling:
    """Narrow the room step by step from the side of the offcut, as long as the pieces part."""
    lattice, left = lattice_for([best.room]), moves
    while left > 0:
        room = _narrowed(best)
        if best.area > room.area or not all(kinds[each.kind].fits(room) for each in best.places):
            break
        starts = [(0, _fitting(each, room, kinds)) for each in best.places]
        crowd = Crowd(kinds, [room], starts, lattice, chance)
        made = crowd.parted(left)
        left -= crowd.work
        if made is None:
            break
        best = filled_with([best.room], made, kinds)[0]
    return best


def _narrowed(filling: Filling) -> Room:
    """Return the room without its offcut and a little less."""
    room, (right, top) = filling.room, reach(filling)
    if (room.width - right) * room.height >= (room.height - top) * room.width:
        width, height = right * _SHRINK, room.height
    else:
        width, height = room.width, top * _SHRINK
    return replace(room, width=width, height=height, area=width * height)


def _fitting(found: Found, room: Room, kinds: Sequence[Kind]) -> Found:
    if found.pose.fits(room):
        return found
    return replace(found, pose=next(p for p in kinds[found.kind].poses if p.fits(room)))
