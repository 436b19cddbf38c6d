"""Asks the packing library `packingsolver`; runs in a process of its own, see ``child``."""

from __future__ import annotations

from typing import Any

from kerfolio.layouts.question import Answer, AskedKind, Question, Ring

_FREE = 1e-3
"""What an offcut at hand costs against the dearest sheet: little, yet not nothing."""


def solve_sheets(question: Question) -> Answer:
    """Return the best sheets found in the time given, none when not all pieces were placed."""
    from packingsolver import irregular  # only where it is installed

    instance = _instance(question, irregular)
    parameters = irregular.OptimizeParameters()
    parameters.time_limit = question.seconds
    parameters.messages_to_stdout = False
    parameters.verbosity_level = 0
    solution = irregular.optimize(instance, parameters).solution
    if not solution.full():
        return ()
    sheets = []
    for number in range(solution.number_of_different_bins()):
        used = solution.bin(number)
        places = tuple(
            (each.item_type_id, each.angle, each.bl_corner.x, each.bl_corner.y)
            for each in used.items
        )
        sheets += [(used.bin_type_id, places)] * used.copies
    return tuple(sheets)


def _instance(question: Question, irregular: Any) -> Any:
    builder = irregular.InstanceBuilder()
    builder.set_objective(irregular.Objective.VariableSizedBinPacking)
    builder.set_item_item_minimum_spacing(question.gap)
    pieces = sum(kind.count for kind in question.kinds)
    dearest = max(room.worth for room in question.rooms) or 1.0
    for room in question.rooms:
        number = builder.add_bin_type(
            irregular.build_rectangle(room.width, room.height),
            cost=room.worth / dearest + _FREE,
            copies=pieces if room.count is None else min(room.count, pieces),
        )
        for x0, y0, x1, y1 in room.zones:
            zone = irregular.ShapeWithHoles(irregular.build_rectangle(x0, x1, y0, y1), [])
            defect = builder.add_defect(number, 0, zone)
            builder.set_item_defect_minimum_spacing(number, defect, question.gap)
    for kind in question.kinds:
        turns = [(turn, turn, False) for turn in kind.turns]
        builder.add_item_type(_shape(kind, irregular), copies=kind.count, allowed_rotations=turns)
    return builder.build()


def _shape(kind: AskedKind, irregular: Any) -> Any:
    openings = [irregular.build_shape(_ccw(each)) for each in kind.openings]
    return irregular.ShapeWithHoles(irregular.build_shape(_ccw(kind.outer)), openings)


def _ccw(ring: Ring) -> list[tuple[float, float]]:
    """Return a ring counter-clockwise, as the library wants it."""
    following = (*ring[1:], ring[0])
    doubled = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, following, strict=True))
    return list(ring) if doubled > 0 else list(reversed(ring))
