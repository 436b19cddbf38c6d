"""Proves what an engine packed against what it was asked, whoever the engine is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from generator.geometry.packing import Flat, flats_too_close
from generator.layouts.engine import Bed, Blank, Job, Packed, Spot, Stack

TOLERANCE = 0.01
"""Gaps and margins may fall short by this, mm: coordinates are rounded, arcs flattened."""


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
