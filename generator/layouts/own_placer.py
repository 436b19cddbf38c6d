"""The placer of this program: true shapes, the best free place for each, many orders tried.

Pieces are placed one by one, each as far left or as low as it goes on the first sheet that has
room; windows and hollows are filled where a piece fits. The order of the pieces is what is
searched: first the usual ones (largest first), then small changes of the best order so far.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.geometry.slabs import Numbers
from generator.layouts.engine import Job, Packed, Spot
from generator.layouts.filling import Filling, Found, Taste
from generator.layouts.pose import Kind, Pose, frame, kinds_of

NAME = "own-1"


def _leftmost(x: Numbers, y: Numbers, pose: Pose) -> Numbers:
    return (x + pose.width) * 1e3 + y


def _lowest(x: Numbers, y: Numbers, pose: Pose) -> Numbers:
    return (y + pose.height) * 1e3 + x


def _cornered(x: Numbers, y: Numbers, pose: Pose) -> Numbers:
    return (x + pose.width) + 0.2 * (y + pose.height)


_TASTES: tuple[Taste, ...] = (_leftmost, _lowest, _cornered)


@dataclass(frozen=True, slots=True)
class _Try:
    """An order of kinds and the taste they are placed by."""

    order: tuple[int, ...]
    taste: int


@dataclass(frozen=True, slots=True)
class _Result:
    """What came of a try; ``rate`` is the less the better: sheets, then what the last one holds."""

    made: _Try
    fillings: tuple[Filling, ...]
    rate: tuple[float, ...]


class OwnPlacer:
    """The engine; see the module."""

    name = NAME

    def pack(self, job: Job) -> Packed:
        """Place all blanks on as few sheets as it finds; see ``Engine``."""
        kinds = kinds_of(job)
        too_large = tuple(label for kind in kinds if not kind.poses for label in kind.labels)
        numbers = [number for number, kind in enumerate(kinds) if kind.poses]
        if not numbers:
            return Packed(spots=(), too_large=too_large)
        best = _search(job, kinds, numbers)
        return Packed(spots=_spots(job, kinds, best.fillings), too_large=too_large)


def _search(job: Job, kinds: Sequence[Kind], numbers: Sequence[int]) -> _Result:
    chance = random.Random(job.seed)
    room = frame(job)
    pieces = [number for number in numbers for _ in kinds[number].labels]
    fewest = math.ceil(sum(kinds[number].area for number in pieces) / (room[0] * room[1]) - 1e-6)
    best, work = None, 0
    tries = _usual(kinds, pieces)
    while best is None or (best.rate[0] > fewest and work < job.moves):
        made = next(tries, None) or _changed(best, chance)
        result = _filled(made, kinds, room)
        work += sum(each.work for each in result.fillings)
        if best is None or result.rate <= best.rate:
            best = result
    return best


def _usual(kinds: Sequence[Kind], pieces: Sequence[int]) -> Iterator[_Try]:
    """Yield the tries everyone would make: by area, longest side, box and narrowest side."""

    def box(number: int) -> Pose:
        return kinds[number].poses[0]

    orders = (
        sorted(pieces, key=lambda n: -kinds[n].area),
        sorted(pieces, key=lambda n: -max(box(n).width, box(n).height)),
        sorted(pieces, key=lambda n: -box(n).width * box(n).height),
        sorted(pieces, key=lambda n: -min(box(n).width, box(n).height)),
    )
    for order in dict.fromkeys(tuple(order) for order in orders):
        for taste in range(len(_TASTES)):
            yield _Try(order, taste)


def _changed(best: _Result | None, chance: random.Random) -> _Try:
    """Return the best try with one to three changes in its order, now and then another taste."""
    assert best is not None, "the usual tries come first"
    order, taste = list(best.made.order), best.made.taste
    if chance.random() < 0.3:
        taste = chance.randrange(len(_TASTES))
    for _ in range(chance.randint(1, 3)):
        if chance.random() < 0.3:
            last = best.fillings[-1].places
            kind = last[chance.randrange(len(last))].kind
            order.remove(kind)
            order.insert(chance.randrange(len(order) + 1), kind)
        else:
            _swap(order, chance)
    return _Try(tuple(order), taste)


def _swap(order: list[int], chance: random.Random) -> None:
    """Exchange two pieces of different kinds, if there are any."""
    one = chance.randrange(len(order))
    others = [place for place, kind in enumerate(order) if kind != order[one]]
    if others:
        other = others[chance.randrange(len(others))]
        order[one], order[other] = order[other], order[one]


def _filled(made: _Try, kinds: Sequence[Kind], room: tuple[float, float]) -> _Result:
    """Place all pieces in the order of a try, each on the first sheet that has room."""
    taste, fillings = _TASTES[made.taste], [Filling(width=room[0], height=room[1])]
    for number in made.order:
        if not any(each.add(number, kinds[number], taste) for each in fillings):
            fillings.append(Filling(width=room[0], height=room[1]))
            fillings[-1].add(number, kinds[number], taste)
    last = fillings[-1]
    reach = max(found.x + found.pose.width for found in last.places)
    return _Result(made, tuple(fillings), (len(fillings), round(last.area, 3), round(reach, 3)))


def _spots(job: Job, kinds: Sequence[Kind], fillings: Sequence[Filling]) -> tuple[Spot, ...]:
    """Give the places to the labels of each kind in turn: by sheet, from left to right."""
    edge = job.bed.margin - job.bed.gap / 2
    labels = [iter(kind.labels) for kind in kinds]
    spots = []
    for sheet, filling in enumerate(fillings):
        for found in sorted(filling.places, key=_across):
            pose = found.pose
            spots.append(
                Spot(
                    label=next(labels[found.kind]),
                    sheet=sheet,
                    x=found.x - pose.corner[0] + edge,
                    y=found.y - pose.corner[1] + edge,
                    turn=pose.turn,
                )
            )
    return tuple(spots)


def _across(found: Found) -> tuple[float, float]:
    return found.x, found.y
