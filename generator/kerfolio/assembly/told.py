"""A found order in words: steps as a maker would state them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from kerfolio.assembly.assembled import BuildOrder, BuildStep
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.geometry.rigid import Vector, dot
from kerfolio.model.plan import Step
from kerfolio.model.prose import Prose, sentences
from kerfolio.model.statement import Named

_WAYS: Mapping[str, Vector] = {
    "down": (0.0, 0.0, -1.0),
    "up": (0.0, 0.0, 1.0),
    "left": (1.0, 0.0, 0.0),
    "right": (-1.0, 0.0, 0.0),
    "front": (0.0, 1.0, 0.0),
    "behind": (0.0, -1.0, 0.0),
}


def told_steps(
    order: BuildOrder, called: Callable[[str], str], reader: Reader = METRIC
) -> tuple[Step, ...]:
    """Return the steps of a found order; the first one says how it came about.

    ``called`` tells what readers know a piece by within a sentence, by its label.
    """
    return tuple(
        Step(
            title=_title(step, called, reader),
            add=tuple(Named(label) for label in step.added),
            text=sentences(say(reader, "found-order")) if number == 0 else Prose(),
        )
        for number, step in enumerate(order.steps)
    )


def as_yaml(steps: Sequence[Step]) -> str:
    """Return steps as they would stand in a ``plan.yaml``, to be written out by the maker."""
    lines = ["steps:"]
    for step in steps:
        names = ", ".join(each.name for each in step.add)
        lines += [f"  - title: {step.title}", f"    add: [{names}]"]
    return "\n".join(lines)


def _title(step: BuildStep, called: Callable[[str], str], reader: Reader) -> str:
    moved = {piece for move in step.moves for piece in move.pieces}
    set_down = [called(each) for each in step.added if each not in moved]
    titles = [say(reader, "found-set-down", pieces=listed(reader, set_down))] if set_down else []
    ways: dict[str, list[str]] = {}
    for move in step.moves:
        ways.setdefault(_way(move.direction), []).extend(map(called, move.pieces))
    titles += [
        say(reader, f"found-push-{way}", pieces=listed(reader, _short(pieces, reader)))
        for way, pieces in ways.items()
    ]
    title = listed(reader, titles)
    return title[:1].upper() + title[1:]


def _short(pieces: Sequence[str], reader: Reader) -> list[str]:
    """Return the pieces named; of many, the first and how many more."""
    if len(pieces) <= 3:
        return list(pieces)
    return [*pieces[:2], say(reader, "found-more", count=len(pieces) - 2)]


def _way(direction: Vector) -> str:
    return max(_WAYS, key=lambda way: round(dot(direction, _WAYS[way]), 6))
