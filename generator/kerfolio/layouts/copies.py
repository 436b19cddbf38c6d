"""How many sheets several copies of a plan take together."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.engine import Job
from kerfolio.layouts.own_placer import sheets_taken

COPIES = 6
"""The table goes up to this many copies."""

Taken = tuple[int, ...]
"""How many sheets of each stack of a bed."""


def sheets_for_copies(job: Job, one: Taken, most: int) -> tuple[Taken, ...]:
    """Return the sheets that 1, 2, ... ``most`` copies of a job's pieces take; ``one`` take one.

    Never dearer than what laying out fewer copies apart would take; where there are offcuts, than
    one copy fewer and a copy on sheets bought for it. ``job.moves`` bounds the work for the whole
    table. The table ends early where offcuts are used up and no sheet that can be
    bought holds every piece.
    """
    found, left = [one], job.moves
    endless = all(stack.count is None for stack in job.bed.stacks)
    alone, work = (one, 0) if endless or most < 2 else _without_offcuts(job)
    left -= work
    for count in range(2, most + 1):
        apart = [_added(found[k], found[count - 2 - k]) for k in range(count - 1) if endless]
        # Offcuts go to the first copies, so that those after them have sheets bought for them.
        apart += [_added(found[-1], alone)] if alone else []
        known = min(apart, key=lambda taken: _price(job, taken), default=None)
        several = replace(_several(job, count), moves=left)
        if known and (left <= 0 or _least(several, known)):
            found.append(known)
            continue
        together, work = sheets_taken(several)
        left -= work
        choices = [taken for taken in (together, known) if taken]
        if not choices:
            break
        found.append(min(choices, key=lambda taken: _price(job, taken)))
    return tuple(found)


def _without_offcuts(job: Job) -> tuple[Taken | None, int]:
    """Return the bought sheets that one copy takes, None if they do not do, and the work spent."""
    stacks = job.bed.stacks
    bought = [number for number, stack in enumerate(stacks) if stack.count is None]
    bed = replace(job.bed, stacks=tuple(stacks[number] for number in bought))
    taken, work = sheets_taken(replace(job, bed=bed)) if bought else (None, 0)
    if taken is None:
        return None, work
    counts = dict(zip(bought, taken, strict=True))
    return tuple(counts.get(number, 0) for number in range(len(stacks))), work


def _added(one: Taken, other: Taken) -> Taken:
    return tuple(a + b for a, b in zip(one, other, strict=True))


def _price(job: Job, taken: Taken) -> tuple[float, int]:
    return job.bed.price(dict(enumerate(taken)))


def _least(job: Job, taken: Taken) -> bool:
    """Tell whether nothing cheaper is thinkable; where sizes differ, nobody knows."""
    return len(taken) == 1 and taken[0] <= fewest_sheets(job)


def _several(job: Job, count: int) -> Job:
    blanks = [
        replace(blank, label=f"{number} {blank.label}")
        for number in range(1, count + 1)
        for blank in job.blanks
    ]
    return replace(job, blanks=tuple(blanks))
