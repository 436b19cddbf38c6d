"""The placer of this program: true shapes, as few sheets as it finds, always at hand.

First the pieces are laid one by one in many orders. Then the weakest sheet is given up again and
again: its pieces are crowded in with the others until all lie free. At last what lies on the last
sheet is drawn together, so that the largest offcut is left. All work is counted, never timed.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.layouts.engine import OWN, Job, Packed
from kerfolio.layouts.filling import Filling
from kerfolio.layouts.first_fit import first_fit, supply_of
from kerfolio.layouts.offcut import LAST, drawn_together, topped_up
from kerfolio.layouts.pose import Kind, kinds_of
from kerfolio.layouts.room import Room, rooms_of
from kerfolio.layouts.spots import spots
from kerfolio.layouts.thinning import thinned

NAME = f"{OWN}2"

_FIRST = 0.15
"""Share of the moves for laying one by one; the rest is for giving sheets up."""


@dataclass(frozen=True, slots=True)
class _Sheets:
    kinds: tuple[Kind, ...]
    fillings: tuple[Filling, ...]
    too_large: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OwnPlacer:
    """The engine; see the module. ``counting``: as many sheets, none of them drawn together."""

    counting: bool = False

    def pack(self, job: Job) -> Packed:
        """Place all blanks on as few sheets as it finds; see ``Engine``."""
        chance = random.Random(job.seed)
        found = _sheets(job, chance)
        if self.counting:
            fillings = topped_up(found.fillings, found.kinds)
        else:
            moves = int(LAST * job.moves)
            fillings = drawn_together(found.fillings, found.kinds, chance, moves)
        places = [each.places for each in fillings]
        return Packed(
            spots=tuple(spots(job.bed, found.kinds, places)),
            engine=NAME,
            sheets=tuple(each.room.stack for each in fillings),
            too_large=found.too_large,
        )


def _fewest(kinds: Sequence[Kind], pieces: Sequence[int], rooms: Sequence[Room]) -> int:
    """Return the sheets that the area of the footprints asks for."""
    total, most = math.fsum(kinds[n].area for n in pieces), max(room.area for room in rooms)
    return math.ceil(total / most - 1e-6) if most > 0 else 1


def _sheets(job: Job, chance: random.Random) -> _Sheets:
    rooms = rooms_of(job.bed)
    kinds = kinds_of(job, rooms)
    large = [label for kind in kinds if not kind.poses for label in kind.labels]
    pieces = [n for n, kind in enumerate(kinds) if kind.poses for _ in kind.labels]
    if not pieces:
        return _Sheets(kinds, (), tuple(large))
    supply = supply_of(job.bed.stacks, rooms)
    fewest = _fewest(kinds, pieces, rooms)
    laid = first_fit(kinds, pieces, supply, chance, fewest, int(_FIRST * job.moves))
    large += [label for n in dict.fromkeys(laid.left) for label in kinds[n].labels]
    moves = int((1 - _FIRST) * job.moves)
    fillings = thinned(laid.fillings, kinds, supply, chance, fewest, moves)
    return _Sheets(kinds, fillings, tuple(large))
