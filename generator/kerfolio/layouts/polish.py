"""Asks a strip packing library for a larger offcut on the last sheet, and takes it if it is one."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.layouts.engine import Bed, Blank, Engine, Job, Packed, Spot


def polished(packed: Packed, job: Job, strip: Engine) -> Packed:
    """Return a packing whose last sheet leaves no smaller an offcut than before.

    Raises EngineError when the engine fails.
    """
    if not packed.sheets:
        return packed
    last = len(packed.sheets) - 1
    blanks = {blank.label: blank for blank in job.blanks}
    old = [spot for spot in packed.spots if spot.sheet == last]
    stack = replace(job.bed.stacks[packed.sheets[last]], count=1)
    alone = replace(
        job,
        bed=Bed(stacks=(stack,), margin=job.bed.margin, gap=job.bed.gap),
        blanks=tuple(blanks[spot.label] for spot in old),
    )
    made = strip.pack(alone)
    if offcut_left(made.spots, blanks, stack.size) <= offcut_left(old, blanks, stack.size) + 1.0:
        return packed
    others = tuple(spot for spot in packed.spots if spot.sheet != last)
    moved = tuple(replace(spot, sheet=last) for spot in made.spots)
    engine = f"{packed.engine} + {made.engine}"
    return replace(packed, spots=(*others, *moved), engine=engine)


def offcut_left(
    spots: tuple[Spot, ...] | list[Spot], blanks: dict[str, Blank], size: tuple[float, float]
) -> float:
    """Return the area in mm2 of the largest strip beyond all pieces, across the whole sheet."""
    boxes = [blanks[s.label].shape.turned(s.turn).moved(s.x, s.y).box for s in spots]
    right, top = max(box[2] for box in boxes), max(box[3] for box in boxes)
    return max((size[0] - right) * size[1], (size[1] - top) * size[0])
