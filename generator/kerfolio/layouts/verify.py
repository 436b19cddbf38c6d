"""Proves what an engine is asked, and what it packed against that, whoever the engine is."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator

from kerfolio.geometry.packing import Flat, flat_fault, flats_too_close
from kerfolio.layouts.engine import Bed, Blank, Job, Packed, Spot, Stack

TOLERANCE = 0.01
"""Gaps and margins may fall short by this, mm: coordinates are rounded, arcs flattened."""


def job_faults(job: Job) -> tuple[str, ...]:
    """Return what nobody should be asked: broken outlines, no turns, sheets of no size."""
    return tuple(_job(job))


def _job(job: Job) -> Iterator[str]:
    faults = {each: flat_fault(each) for each in dict.fromkeys(blank.shape for blank in job.blanks)}
    for blank in job.blanks:
        if faults[blank.shape]:
            yield f"`{blank.label}` {faults[blank.shape]}"
        if not blank.turns:
            yield f"`{blank.label}` may be turned no way"
    for each, count in Counter(blank.label for blank in job.blanks).items():
        if count > 1:
            yield f"`{each}` is there {count} times"
    for stack in job.bed.stacks:
        if not all(0 < side < math.inf for side in stack.size):
            yield "a sheet has no size"
    if not (0 <= job.bed.gap < math.inf and 0 <= job.bed.margin < math.inf):
        yield "gap and margin are no lengths"


def packing_faults(job: Job, packed: Packed) -> tuple[str, ...]:
    """Return what is wrong with a packing; nothing when it is as asked.

    Every blank lies once, in a turn it may take, inside the margin, off the barred zones and no
    nearer to another than the gap; no more sheets of a stack are used than there are.
    """
    return (*_counts(job, packed), *_sheets(job, packed))


def _counts(job: Job, packed: Packed) -> Iterator[str]:
    wanted = Counter(blank.label for blank in job.blanks)
    laid = Counter((*(spot.label for spot in packed.spots), *packed.too_large))
    for label in sorted(wanted.keys() | laid.keys()):
        if wanted[label] != laid[label]:
            yield f"`{label}` lies {laid[label]} times"
    for number, count in sorted(Counter(packed.sheets).items()):
        if not 0 <= number < len(job.bed.stacks):
            yield f"there is no stack {number}"
            continue
        most = job.bed.stacks[number].count
        if most is not None and count > most:
            yield f"{count} sheets of a stack of {most} are used"


def _sheets(job: Job, packed: Packed) -> Iterator[str]:
    blanks = {blank.label: blank for blank in job.blanks}
    known = [spot for spot in packed.spots if spot.label in blanks]
    for number, which in enumerate(packed.sheets):
        spots = [spot for spot in known if spot.sheet == number]
        if 0 <= which < len(job.bed.stacks):
            yield from _sheet(job.bed, job.bed.stacks[which], spots, blanks)
    for spot in known:
        if not 0 <= spot.sheet < len(packed.sheets):
            yield f"`{spot.label}` lies on no sheet"


def _sheet(bed: Bed, stack: Stack, spots: list[Spot], blanks: dict[str, Blank]) -> Iterator[str]:
    lying = [blanks[spot.label].shape.turned(spot.turn).moved(spot.x, spot.y) for spot in spots]
    for spot, flat in zip(spots, lying, strict=True):
        if not any(abs(spot.turn - turn) < 1e-6 for turn in blanks[spot.label].turns):
            yield f"`{spot.label}` is turned by {spot.turn}"
        x0, y0, x1, y1 = flat.box
        if min(x0, y0, stack.size[0] - x1, stack.size[1] - y1) < bed.margin - TOLERANCE:
            yield f"`{spot.label}` lies in the margin"
    zones = [Flat(((x0, y0), (x1, y0), (x1, y1), (x0, y1))) for x0, y0, x1, y1 in stack.barred]
    for one, other, _ in flats_too_close((*lying, *zones), bed.gap - TOLERANCE):
        if one < len(lying):
            end = f"`{spots[other].label}`" if other < len(lying) else "a zone kept clear"
            yield f"`{spots[one].label}` lies too near to {end}"
