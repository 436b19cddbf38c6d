"""How many sheets several copies of a plan take together."""

from __future__ import annotations

from dataclasses import replace

from generator.layouts.bound import fewest_sheets
from generator.layouts.engine import Job
from generator.layouts.own_placer import sheets_taken

COPIES = 6
"""The table goes up to this many copies."""


def sheets_for_copies(job: Job, one: int, most: int) -> tuple[int, ...]:
    """Return the sheets that 1, 2, ... ``most`` copies of a job's pieces take; ``one`` take one.

    Never more than what laying out fewer copies apart would take. ``job.moves`` bounds the work
    for the whole table.
    """
    found, left = [one], job.moves
    whole = all(stack.count is None for stack in job.bed.stacks)
    for count in range(2, most + 1):
        # Offcuts are used up by the first copies, so that counts with them do not add up.
        known = min((found[k] + found[count - 2 - k] for k in range(count - 1)), default=0)
        several = replace(_several(job, count), moves=left)
        if whole and (left <= 0 or known <= fewest_sheets(several)):
            found.append(known)
            continue
        taken, work = sheets_taken(several)
        left -= work
        found.append(known if taken is None or (whole and known < taken) else taken)
    return tuple(found)


def _several(job: Job, count: int) -> Job:
    blanks = [
        replace(blank, label=f"{number} {blank.label}")
        for number in range(1, count + 1)
        for blank in job.blanks
    ]
    return replace(job, blanks=tuple(blanks))
