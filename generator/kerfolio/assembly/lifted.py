"""What is moved at once in the steps of an order, and how many people that takes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, PosedPiece
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.lots import lot_of
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
    """Yield what each step moves at once: the lighter of what is new and of what it goes on to.

    Of what stands only that counts which joints hold together with what is new.
    """
    pieces = {each.label: each for each in assembled.pieces}
    for step in order.steps:
        for group, other in _groups(step, assembled):
            sides = [_lifted(step.number, [pieces[one] for one in each]) for each in (group, other)]
            yield min((each for each in sides if each.pieces), key=_effort)


def _effort(lift: Lifted) -> tuple[int, float]:
    return lift.people, lift.mass


def _groups(
    step: BuildStep, assembled: Assembled
) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """Yield what moves at once, and what could be moved on to it instead: nothing where none is."""
    there = [*step.standing, *(each for each in step.added if not _moves(each, step))]
    yield from (((label,), ()) for label in there if label in step.added)
    for move in step.moves:
        stays = [each for each in there if each not in move.pieces] if step.standing else []
        yield move.pieces, tuple(_held_to(move.pieces, stays, assembled))
        there += [each for each in move.pieces if each not in there]


def _moves(label: str, step: BuildStep) -> bool:
    return any(label in move.pieces for move in step.moves)


def _held_to(moved: Sequence[str], stays: Sequence[str], assembled: Assembled) -> list[str]:
    """Return those of what stays that joints lead to from what is moved."""
    there = {*moved, *stays}
    pairs = [(each.a, each.b) for each in assembled.joints if {each.a, each.b} <= there]
    held = {label for each in moved for label in lot_of(each, pairs)}
    return [each for each in stays if each in held]


def _lifted(step: int, pieces: Sequence[PosedPiece]) -> Lifted:
    mass = math.fsum(each.mass for each in pieces)
    size = size_of(box_around(pieces)) if pieces else (0.0, 0.0, 0.0)
    return Lifted(
        step=step,
        pieces=tuple(each.label for each in pieces),
        mass=mass,
        people=carried_by(mass, size),
        longest=max(size),
    )
