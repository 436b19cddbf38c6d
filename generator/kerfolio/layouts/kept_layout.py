"""A layout of one copy as an engine would have packed it."""

from __future__ import annotations

from kerfolio.layouts.engine import Job, Packed, Spot
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.stacks import stacks_in_turn


def packed_of(layout: Layout, job: Job) -> Packed | None:
    """Return how the first copy of a job's blanks lies in a layout; None where it lacks one.

    ``1/side.left`` is the piece ``side.left`` of the layout.
    """
    first = min((blank.copy for blank in job.blanks), default=1)
    wanted = {blank.label for blank in job.blanks if blank.copy == first}
    found = [
        (sheet.size, [each for each in sheet.placements if f"{first}/{each.piece}" in wanted])
        for sheet in layout.sheets
    ]
    found = [(size, placed) for size, placed in found if placed]
    if sum(len(placed) for _, placed in found) < len(wanted):
        return None
    return Packed(
        spots=tuple(
            Spot(label=f"{first}/{each.piece}", sheet=number, x=each.x, y=each.y, turn=each.turn)
            for number, (_, placed) in enumerate(found)
            for each in placed
        ),
        engine=layout.engine,
        sheets=stacks_in_turn(job.bed.stacks, [size for size, _ in found]),
    )
