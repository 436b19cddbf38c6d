"""What a reader is told of size, weight and steadiness: rows for a table, and the cautions."""

from __future__ import annotations

import math
from collections.abc import Sequence

from kerfolio.assembly.stability import Stability, Tipping, tippings, weakest
from kerfolio.basis.figures import degrees_text
from kerfolio.basis.lengths import about_text, size_text
from kerfolio.basis.masses import force_text, mass_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
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

Row = tuple[str, str]


def size_rows(stability: Stability, reader: Reader) -> tuple[Row, ...]:
    """Return (label, value) rows of size and weight, in the reader's unit first."""
    return (
        (say(reader, "steady-size"), size_text(stability.size, reader)),
        (say(reader, "steady-flat"), size_text(stability.pile, reader)),
        (say(reader, "steady-weight"), mass_text(stability.mass, reader)),
    )


def steady_rows(stability: Stability, reader: Reader, load: float = LOAD) -> tuple[Row, ...]:
    """Return (label, value) rows of how steady it stands, in the reader's unit first.

    ``load`` (kg) stands on the edge of the panel that carries in one of them.
    """
    left, front, height = (about_text(each, reader) for each in stability.centre)
    return (
        (
            say(reader, "steady-centre"),
            say(reader, "steady-centre-at", height=height, left=left, front=front),
        ),
        *_steadiness(stability, reader, load),
    )


def belongs_on_the_wall(stability: Stability, plan: Plan) -> bool:
    """Tell whether it is tall or shallow, and stores things for all that is said, on no table."""
    _, depth, height = stability.size
    stores = is_storage(plan) or is_unsaid(plan)
    shallow = is_storage(plan) and height > SHALLOW * depth
    return stores and plan.placed != TABLE and (height >= TALL or shallow)


def stability_cautions(stability: Stability, plan: Plan, reader: Reader) -> tuple[str, ...]:
    """Return the sentences that must stand by the rows: those that fit what it is for."""
    if belongs_on_the_wall(stability, plan):
        return say(reader, "steady-note-storing"), say(reader, "steady-wall")
    return (say(reader, "steady-note-storing" if is_storage(plan) else "steady-note"),)


def _steadiness(stability: Stability, reader: Reader, load: float) -> tuple[Row, ...]:
    empty, loaded = weakest(tippings(stability)), weakest(tippings(stability, load))
    if not empty:
        return ((say(reader, "steady-floor"), say(reader, "steady-falls")),)
    touched = size_text(_spread(stability.contact), reader)
    rows = (
        (say(reader, "steady-floor"), say(reader, "steady-around", size=touched)),
        (say(reader, "steady-tilted"), _tilt(empty, reader)),
        (
            say(reader, "steady-tilted-loaded"),
            say(reader, "steady-with", tilt=_tilt(loaded, reader), mass=mass_text(load, reader)),
        ),
    )
    if empty[0].angle <= 0:
        return rows
    top = size_text((stability.size[2],), reader)
    push = say(
        reader,
        "steady-push",
        force=force_text(empty[0].push, reader),
        top=top,
        towards=_towards(empty, reader),
    )
    return (*rows, (say(reader, "steady-pushed"), push))


def _tilt(found: Sequence[Tipping], reader: Reader) -> str:
    if found[0].angle <= 0:
        return say(reader, "steady-by-itself", towards=_towards(found[:1], reader))
    angle = degrees_text(found[0].angle)
    return say(reader, "steady-angle", angle=angle, towards=_towards(found, reader))


def _towards(found: Sequence[Tipping], reader: Reader) -> str:
    """Return ``to the front or back``."""
    sides = dict.fromkeys(_side(each.way, reader) for each in found)
    return say(reader, "steady-towards", sides=listed(reader, list(sides), "or"))


def way_words(way: Point, reader: Reader) -> str:
    """Return ``to the front left``: where a direction across the floor points."""
    return say(reader, "steady-towards", sides=_side(way, reader))


def _side(way: Point, reader: Reader) -> str:
    """Return where a direction points, in eight words: ``front``, ``front left``, ``left``."""
    sides = (("front", -way[1]), ("back", way[1]), ("left", -way[0]), ("right", way[0]))
    words = [word for word, along in sides if along > _SLANTING]
    return say(reader, f"steady-side-{'-'.join(words)}")


def _spread(points: Sequence[Point]) -> tuple[float, float]:
    across, deep = zip(*points, strict=True)
    return max(across) - min(across), max(deep) - min(deep)
