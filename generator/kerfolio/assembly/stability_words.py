"""What a reader is told of size, weight and steadiness: rows for a table, and the cautions."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.assembly.stability import Stability, Tipping, tippings, weakest
from kerfolio.basis.figures import degrees_text
from kerfolio.basis.lengths import about_text, size_text
from kerfolio.basis.masses import force_text, mass_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.geometry.contour import Point
from kerfolio.model.plan import Plan
from kerfolio.model.use import TABLE, is_storage, is_unsaid

LOAD = 10.0
"""The load on an edge that the rows tell of, kg: a figure to compare by, no rating."""

TALL = 27 * 25.4
"""From this height, 27 in, the US rule for clothes storage (16 CFR 1261) asks for stability."""
SHALLOW = 2.5
"""What stores things and stands higher than so many times its depth tips easily (common practice,
no single source)."""

_SLANTING = math.sin(math.radians(22.5))

_ALONE = "Worked out for the pieces alone, stiff, empty and on a hard, level floor."
_WORSE = "A carpet, an uneven floor, {}loose joints{} make it worse."
_NO_APPROVAL = (
    "The angle is information, not approval: local codes and licensed practice come first."
)
NOTE = " ".join((_ALONE, _WORSE.format("", " and a load on one side"), _NO_APPROVAL))
STORING = " ".join((_ALONE, _WORSE.format("drawers, ", " and a climbing child"), _NO_APPROVAL))
WALL = "What is this tall or shallow and stores things belongs fixed to the wall."

Row = tuple[str, str]


def size_rows(stability: Stability, reader: Reader) -> tuple[Row, ...]:
    """Return (label, value) rows of size and weight, in the reader's unit first."""
    return (
        ("Put together, width × depth × height", size_text(stability.size, reader)),
        ("Flat, all pieces in one pile", size_text(stability.pile, reader)),
        ("Weight of the pieces", mass_text(stability.mass, reader)),
    )


def steady_rows(stability: Stability, reader: Reader, load: float = LOAD) -> tuple[Row, ...]:
    """Return (label, value) rows of how steady it stands, in the reader's unit first.

    ``load`` (kg) stands on the edge of the panel that carries in one of them.
    """
    left, front, height = (about_text(each, reader) for each in stability.centre)
    return (
        (
            "Centre of gravity",
            f"{height} above the floor, {left} from the left, {front} from the front",
        ),
        *_steadiness(stability, reader, load),
    )


def belongs_on_the_wall(stability: Stability, plan: Plan) -> bool:
    """Tell whether it is tall or shallow, and stores things for all that is said, on no table."""
    _, depth, height = stability.size
    stores = is_storage(plan) or is_unsaid(plan)
    shallow = is_storage(plan) and height > SHALLOW * depth
    return stores and plan.placed != TABLE and (height >= TALL or shallow)


def stability_cautions(stability: Stability, plan: Plan) -> tuple[str, ...]:
    """Return the sentences that must stand by the rows: those that fit what it is for."""
    if belongs_on_the_wall(stability, plan):
        return STORING, WALL
    return (STORING,) if is_storage(plan) else (NOTE,)


def _steadiness(stability: Stability, reader: Reader, load: float) -> tuple[Row, ...]:
    empty, loaded = weakest(tippings(stability)), weakest(tippings(stability, load))
    if not empty:
        return (("On the floor", "It does not stand by itself: nothing flat touches the floor."),)
    touched = size_text(_spread(stability.contact), reader)
    rows = (
        ("On the floor", f"{touched} around what touches it"),
        ("Tips, empty, when tilted by", _tilt(empty)),
        (
            "Tips, loaded on the edge of its panel, when tilted by",
            f"{_tilt(loaded)}, with {mass_text(load, reader)}",
        ),
    )
    if empty[0].angle <= 0:
        return rows
    top = size_text((stability.size[2],), reader)
    push = f"{force_text(empty[0].push, reader)} at the top, {top} up, {_towards(empty)}"
    return (*rows, ("Tips, empty, when pushed with", push))


def _tilt(found: Sequence[Tipping]) -> str:
    if found[0].angle <= 0:
        return f"nothing: it falls over by itself, {_towards(found[:1])}"
    return f"{degrees_text(found[0].angle)}, {_towards(found)}"


def _towards(found: Sequence[Tipping]) -> str:
    """Return ``to the front or back``."""
    return f"to the {listed(list(dict.fromkeys(_side(each.way) for each in found)), 'or')}"


def way_words(way: Point) -> str:
    """Return ``to the front left``: where a direction across the floor points."""
    return f"to the {_side(way)}"


def _side(way: Point) -> str:
    """Return where a direction points, in eight words: ``front``, ``front left``, ``left``."""
    sides = (("front", -way[1]), ("back", way[1]), ("left", -way[0]), ("right", way[0]))
    return " ".join(word for word, along in sides if along > _SLANTING)


def _spread(points: Sequence[Point]) -> tuple[float, float]:
    across, deep = zip(*points, strict=True)
    return max(across) - min(across), max(deep) - min(deep)
