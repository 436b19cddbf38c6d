"""What is asked of an engine that runs in a process of its own, as JSON, and what it answers.

Asked is in rooms, which have no margins. Pieces may touch the room's edges; they keep ``gap``
between each other and from zones. Where that is 0 they were grown by half the gap before, and the
rooms with them.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass

from kerfolio.layouts.engine import Box, EngineError

Ring = tuple[tuple[float, float], ...]
Answer = tuple[tuple[int, tuple[tuple[int, float, float, float], ...]], ...]
"""For each sheet its room's number and (kind, turn, x, y): turned about 0,0, then moved."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedRoom:
    """A room, how many of it (None: any number), what one costs, and boxes kept clear, mm."""

    width: float
    height: float
    count: int | None
    worth: float
    zones: tuple[Box, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedKind:
    """Pieces alike: outer ring, openings, turns allowed in degrees, how many."""

    outer: Ring
    openings: tuple[Ring, ...]
    turns: tuple[float, ...]
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What to pack, for how many seconds; ``seed`` where the engine takes one."""

    engine: str
    rooms: tuple[AskedRoom, ...]
    kinds: tuple[AskedKind, ...]
    gap: float
    seconds: float
    seed: int


def question_text(question: Question) -> str:
    """Return a question as JSON."""
    return json.dumps(asdict(question))


def question_from(text: str) -> Question:
    """Return the question a text states."""
    stated = json.loads(text)
    return Question(
        engine=stated["engine"],
        rooms=tuple(
            AskedRoom(**{**each, "zones": tuple(tuple(zone) for zone in each["zones"])})
            for each in stated["rooms"]
        ),
        kinds=tuple(
            AskedKind(
                outer=_ring(each["outer"]),
                openings=tuple(_ring(ring) for ring in each["openings"]),
                turns=tuple(each["turns"]),
                count=each["count"],
            )
            for each in stated["kinds"]
        ),
        gap=stated["gap"],
        seconds=stated["seconds"],
        seed=stated["seed"],
    )


def _ring(stated: Sequence[Sequence[float]]) -> Ring:
    return tuple((float(x), float(y)) for x, y in stated)


def answer_from(text: str) -> Answer:
    """Return the answer a text states. Raises EngineError when it states none."""
    try:
        stated = json.loads(text)
        return tuple(
            (int(room), tuple((int(k), float(t), float(x), float(y)) for k, t, x, y in places))
            for room, places in stated
        )
    except (ValueError, TypeError) as trouble:
        raise EngineError(f"no readable answer: {trouble}") from trouble
