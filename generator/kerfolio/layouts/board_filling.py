"""Quick ways to fill boards: each piece where it fits best, and each board as full as can be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from kerfolio.layouts.board_job import Fill, Job, Scale
from kerfolio.layouts.board_knapsack import Knapsack

_GRAIN = 20_000
"""Boards are filled on a grid of this many steps, sizes rounded up."""


def quick_fills(job: Job) -> Iterator[tuple[Fill, ...]]:
    """Yield some sets of boards that hold every piece of a job."""
    for room in range(len(job.rooms)):
        if max(_asked(job), default=0) <= job.rooms[room]:
            yield _shrunk(job, _best_fit(job, job.rooms[room]))
            yield _shrunk(job, _fullest(job, job.rooms[room]))


def _best_fit(job: Job, room: int) -> list[list[int]]:
    """Put each piece, the longest first, on the fullest board with room for it."""
    boards: list[list[int]] = []
    free: list[int] = []
    for kind, (size, count) in enumerate(zip(job.sizes, job.counts, strict=True)):
        for _ in range(count):
            spots = [(rest, index) for index, rest in enumerate(free) if rest >= size]
            if not spots:
                spots = [(room, len(boards))]
                boards.append([0] * len(job.sizes))
                free.append(room)
            index = min(spots)[1]
            boards[index][kind] += 1
            free[index] -= size
    return boards


def _fullest(job: Job, room: int) -> list[list[int]]:
    """Fill one board after the other: the longest piece left, and what best fills the rest."""
    left, boards = list(job.counts), []
    grain = max(1, room // _GRAIN)
    coarse = [-(-size // grain) for size in job.sizes]
    while any(left):
        first = next(kind for kind, count in enumerate(left) if count)
        left[first] -= 1
        rest = (room - job.sizes[first]) // grain
        values = [float(size) for size in coarse]
        knapsack = Knapsack(coarse, left, values, rest)
        take = list(knapsack.take(knapsack.best(rest)))
        left = [count - used for count, used in zip(left, take, strict=True)]
        take[first] += 1
        boards.append(take)
    return boards


def _shrunk(job: Job, boards: list[list[int]]) -> tuple[Fill, ...]:
    """Give each board the shortest room that holds its pieces."""
    rooms = [_room(job, take) for take in boards]
    return tuple(
        Fill(room=room, take=tuple(take))
        for room, take in zip(rooms, boards, strict=True)
        if room is not None
    )


def trimmed(job: Job, fills: Sequence[Fill]) -> tuple[Fill, ...]:
    """Leave out what boards give beyond the counts; shorten boards that this leaves emptier."""
    left, takes = list(job.counts), []
    for fill in fills:
        take = [min(count, rest) for count, rest in zip(fill.take, left, strict=True)]
        left = [rest - count for rest, count in zip(left, take, strict=True)]
        if any(take):
            takes.append(take)
    return _shrunk(job, takes)


def joined(job: Job, scale: Scale, fills: Sequence[Fill]) -> tuple[Fill, ...]:
    """Cut from one longer board what two gave, wherever that is sold and costs no more."""
    boards = list(fills)
    while len(job.rooms) > 1:
        found = next(_unions(job, scale, boards), None)
        if found is None:
            break
        one, other, union = found
        boards = [*(each for n, each in enumerate(boards) if n not in (one, other)), union]
    return tuple(boards)


def _unions(job: Job, scale: Scale, boards: Sequence[Fill]) -> Iterator[tuple[int, int, Fill]]:
    for one, other in combinations(range(len(boards)), 2):
        pair = (boards[one], boards[other])
        take = [a + b for a, b in zip(pair[0].take, pair[1].take, strict=True)]
        room = _room(job, take)
        if room is not None and scale.costs[room] <= scale.cost(pair):
            yield one, other, Fill(room=room, take=tuple(take))


def _room(job: Job, take: Sequence[int]) -> int | None:
    """Return the shortest room that holds some pieces, None when none does."""
    size = sum(each * count for each, count in zip(job.sizes, take, strict=True))
    return next((index for index, each in enumerate(job.rooms) if each >= size), None)


def _asked(job: Job) -> Iterator[int]:
    return (size for size, count in zip(job.sizes, job.counts, strict=True) if count)
