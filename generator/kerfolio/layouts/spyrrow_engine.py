"""Asks the strip packing library `spyrrow`; runs in a process of its own, see ``child``."""

from __future__ import annotations

from kerfolio.layouts.question import Answer, Question

_SLACK = 0.001
"""A piece exactly as wide as the strip is refused without it, mm."""


def solve_strip(question: Question) -> Answer:
    """Return all pieces on one sheet, packed to the left as a strip as high as its room.

    Windows count as solid. Returns no sheet when the strip is longer than the room.
    """
    import spyrrow

    room = question.rooms[0]
    items = [
        spyrrow.Item(str(number), list(kind.outer), kind.count, list(kind.turns))
        for number, kind in enumerate(question.kinds)
    ]
    instance = spyrrow.StripPackingInstance("strip", room.height + _SLACK, items)
    config = spyrrow.StripPackingConfig(
        total_computation_time=max(1, round(question.seconds)), seed=question.seed, num_workers=2
    )
    solution = instance.solve(config)
    if solution.width > room.width:
        return ()
    places = tuple(
        (int(each.id), float(each.rotation), float(each.translation[0]), float(each.translation[1]))
        for each in solution.placed_items
    )
    return ((0, places),)
