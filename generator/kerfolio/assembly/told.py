"""A found order in words: steps as a maker would state them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from kerfolio.assembly.assembled import BuildOrder, BuildStep
from kerfolio.basis.words import listed
from kerfolio.geometry.rigid import Vector, dot
from kerfolio.model.plan import Step
from kerfolio.model.prose import Prose, sentences
from kerfolio.model.statement import Named

_FOUND = (
    "This order was worked out from the joints: each piece comes home along a straight line. The "
    "maker has not written the steps down; look at each picture before you push."
)

_WAYS: Mapping[str, Vector] = {
    "down, from above": (0.0, 0.0, -1.0),
    "up, from below": (0.0, 0.0, 1.0),
    "on from the left": (1.0, 0.0, 0.0),
    "on from the right": (-1.0, 0.0, 0.0),
    "on from the front": (0.0, 1.0, 0.0),
    "on from behind": (0.0, -1.0, 0.0),
}


def told_steps(order: BuildOrder, called: Callable[[str], str]) -> tuple[Step, ...]:
    """Return the steps of a found order; the first one says how it came about.

    ``called`` tells what readers know a piece by within a sentence, by its label.
    """
    return tuple(
        Step(
            title=_title(step, called),
            add=tuple(Named(label) for label in step.added),
            text=sentences(_FOUND) if number == 0 else Prose(),
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


def _title(step: BuildStep, called: Callable[[str], str]) -> str:
    moved = {piece for move in step.moves for piece in move.pieces}
    set_down = [called(each) for each in step.added if each not in moved]
    titles = [f"Set down {listed(set_down)}"] if set_down else []
    ways: dict[str, list[str]] = {}
    for move in step.moves:
        ways.setdefault(_way(move.direction), []).extend(map(called, move.pieces))
    titles += [f"push {listed(_short(pieces))} {way}" for way, pieces in ways.items()]
    title = listed(titles)
    return title[:1].upper() + title[1:]


def _short(pieces: Sequence[str]) -> list[str]:
    """Return the pieces named; of many, the first and how many more."""
    return [*pieces[:2], f"{len(pieces) - 2} more"] if len(pieces) > 3 else list(pieces)


def _way(direction: Vector) -> str:
    return max(_WAYS, key=lambda way: round(dot(direction, _WAYS[way]), 6))
