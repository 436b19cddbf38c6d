"""What is moved at once in the steps of an order, and how many people that takes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, PosedPiece
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.storing import carried_by


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifted:
    """Pieces that are moved at once in a step of an order: kg, and how many carry them (3: more).

    ``longest`` is the longest side of the box around them, mm.
    """

    step: int
    pieces: tuple[str, ...]
    mass: float
    people: int
    longest: float


def lifted_in(assembled: Assembled, order: BuildOrder) -> Iterator[Lifted]:
    """Yield what each step moves at once."""
    pieces = {each.label: each for each in assembled.pieces}
    for step in order.steps:
        for group in _groups(step):
            yield _lifted(step.number, [pieces[label] for label in group])


def _groups(step: BuildStep) -> Iterator[tuple[str, ...]]:
    moved = {label for move in step.moves for label in move.pieces}
    yield from (move.pieces for move in step.moves)
    yield from ((label,) for label in step.added if label not in moved)


def _lifted(step: int, pieces: Sequence[PosedPiece]) -> Lifted:
    mass = math.fsum(each.mass for each in pieces)
    size = size_of(box_around(pieces))
    return Lifted(
        step=step,
        pieces=tuple(each.label for each in pieces),
        mass=mass,
        people=carried_by(mass, size),
        longest=max(size),
    )
