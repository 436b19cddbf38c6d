"""Which moves of a step come one after another: as its maker says, or as the pieces meet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import dist

from kerfolio.assembly.assembled import Assembled, BuildStep, Move, PosedJoint
from kerfolio.assembly.lots import lots

_SAME = 1e-6


def in_turns(assembled: Assembled, step: BuildStep, order: Sequence[str] = ()) -> BuildStep:
    """Return a step whose moves know their turns.

    ``order`` names a piece of each lot that comes home by itself, first to last; lots that one move
    brings are parted for it. Where it is empty, what meets a piece that has itself come another way
    comes after that. Moves of which none waits for another have no turn.
    """
    if order:
        parted = [each for move in step.moves for each in _parted(assembled, move, order)]
        return replace(step, moves=tuple(replace(each, turn=_turn(each, order)) for each in parted))
    turns: list[int] = []
    for number, move in enumerate(step.moves):
        before = [
            turn + (dist(other.direction, move.direction) > _SAME)
            for other, turn in zip(step.moves[:number], turns, strict=True)
            if _meet(other, move, assembled.joints)
        ]
        turns.append(max(before, default=1))
    if max(turns, default=1) == 1:
        return step
    moves = zip(step.moves, turns, strict=True)
    return replace(step, moves=tuple(replace(move, turn=turn) for move, turn in moves))


def _parted(assembled: Assembled, move: Move, order: Sequence[str]) -> Iterator[Move]:
    """Yield a move lot by lot, if it brings more than one that is named."""
    pairs = [(each.a, each.b) for each in assembled.joints if {each.a, each.b} <= {*move.pieces}]
    found = list(lots(move.pieces, pairs))
    named = [lot for lot in found if {*lot} & {*order}]
    if len(named) < 2:
        yield move
        return
    yield from (replace(move, pieces=lot) for lot in found)


def _turn(move: Move, order: Sequence[str]) -> int:
    """Return the place of a move in an order, counted from 1; 0 where it is not in it."""
    return next((turn for turn, each in enumerate(order, 1) if each in move.pieces), 0)


def _meet(one: Move, other: Move, joints: Sequence[PosedJoint]) -> bool:
    """Tell whether a move brings to its place what another, later one joins or carries along."""
    first, second = {*one.pieces}, {*other.pieces}
    if first & second:
        return True
    return any(
        (each.a in first and each.b in second) or (each.b in first and each.a in second)
        for each in joints
    )
