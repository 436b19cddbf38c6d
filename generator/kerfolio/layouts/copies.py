"""Several copies of a plan: in which groups they are laid out, and the sheets that takes.

There is one way to lay copies out: the table of a layout counts the sheets of the very groups that
a batch is cut from.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.engine import Blank, Engine, Job, Packed

COPIES = 6
"""The table goes up to this many copies."""

_MOST = 8
"""Groups of more copies are not tried, but for all copies as one."""

_CROWD = 80
"""Copies of more pieces together than this are laid out in smaller groups: a search over more takes
long and seldom saves a sheet."""

SHARE = 5
"""Several copies are packed with this part of the moves that one has."""


@dataclass(frozen=True, slots=True)
class Group:
    """So many copies on sheets of their own; ``packed`` holds the blanks of the first copies."""

    size: int
    packed: Packed


Groups = tuple[Group, ...]


def groups_of(job: Job, engine: Engine, one: Packed | None = None) -> tuple[Groups | None, ...]:
    """Return the groups for no copy, one, two and so on up to all copies of a job.

    None from where on a piece finds no sheet. ``one`` is how a single copy lies, where that is
    known. More copies never cost more than fewer of them apart; where two ways cost the same the
    smaller groups are taken, so that the pieces of a copy keep together. Where a bed has offcuts,
    which are there only once, all copies are one group, or a copy more lies on sheets bought for
    it.
    """
    count = len({blank.copy for blank in job.blanks})
    best: list[Groups | None] = [()]
    made: dict[int, Packed] = {} if one is None else {1: one}
    endless = all(stack.count is None for stack in job.bed.stacks)
    bought = () if endless or count < 2 else _bought(job, engine)
    for k in range(1, count + 1):
        known = _apart(best, made) if endless else _one_more(best[-1], bought)
        first = min(known, key=lambda groups: _cost(job, groups), default=None)
        few = (k <= _MOST or k == count) and (k == 1 or len(_of(job, k).blanks) <= _CROWD)
        tried = few and not (first and _least(job, k, first))
        if k not in made and (tried or not known):
            made[k] = engine.pack(_of(job, k))
        if k in made and not made[k].too_large:
            known = [*known, (Group(k, made[k]),)]
        best.append(min(known, key=lambda groups: _cost(job, groups), default=None))
    return tuple(best)


def sheets_by_stack(job: Job, groups: Groups) -> tuple[int, ...]:
    """Return how many sheets of each stack of the bed the groups take."""
    counts = _counts(groups)
    return tuple(counts[number] for number in range(len(job.bed.stacks)))


def copied(blanks: Sequence[Blank], count: int) -> tuple[Blank, ...]:
    """Return the blanks of so many copies of what is given, twins together; ``2/label``."""
    twins = dict.fromkeys(blank.twin for blank in blanks)
    return tuple(
        replace(blank, label=f"{copy}/{blank.label}", copy=copy)
        for twin in twins
        for copy in range(1, count + 1)
        for blank in blanks
        if blank.twin == twin
    )


def _apart(best: Sequence[Groups | None], made: Mapping[int, Packed]) -> list[Groups]:
    """Return the ways to lay a copy more, with groups that are packed already."""
    k = len(best)
    sized = [(size, packed) for size, packed in made.items() if size < k and not packed.too_large]
    return [
        tuple(sorted((*rest, Group(size, packed)), key=lambda group: -group.size))
        for size, packed in sized
        if (rest := best[k - size]) is not None
    ]


def _one_more(before: Groups | None, bought: Groups) -> list[Groups]:
    """Return the way with one copy more on sheets bought for it, where there is one."""
    return [(*before, *bought)] if before and bought else []


def _bought(job: Job, engine: Engine) -> Groups:
    """Return one copy on sheets bought for it, offcuts left; nothing where they hold it not."""
    stacks = [n for n, stack in enumerate(job.bed.stacks) if stack.count is None]
    if not stacks:
        return ()
    bed = replace(job.bed, stacks=tuple(job.bed.stacks[number] for number in stacks))
    packed = engine.pack(replace(_of(job, 1), bed=bed))
    if packed.too_large:
        return ()
    sheets = tuple(stacks[number] for number in packed.sheets)
    return (Group(1, replace(packed, sheets=sheets)),)


def _of(job: Job, count: int) -> Job:
    """Return the job of the first so many copies."""
    wanted = sorted({blank.copy for blank in job.blanks})[:count]
    blanks = tuple(blank for blank in job.blanks if blank.copy in wanted)
    return replace(job, blanks=blanks, moves=job.moves if count == 1 else job.moves // SHARE)


def _counts(groups: Groups) -> Counter[int]:
    return Counter(sheet for group in groups for sheet in group.packed.sheets)


def _cost(job: Job, groups: Groups) -> tuple[tuple[float, int], list[int]]:
    sizes = sorted((group.size for group in groups), reverse=True)
    return job.bed.price(_counts(groups)), sizes


def _least(job: Job, count: int, groups: Groups) -> bool:
    """Tell whether nothing cheaper is thinkable; where sizes differ, nobody knows."""
    if len(job.bed.stacks) > 1:
        return False
    return sum(_counts(groups).values()) <= fewest_sheets(_of(job, count))
