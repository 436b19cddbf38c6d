"""In which turn moves come: as the plan orders them, or as pieces meet that move in one step."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.assembly.assembled import BuildStep, Move
from kerfolio.assembly.lying import shown_steps
from kerfolio.assembly.turns import in_turns
from kerfolio.geometry.rigid import Vector
from kerfolio.model.plan import Step
from kerfolio.model.statement import Named
from tests.drawing.built import built, shown

LEFT: Vector = (-1.0, 0.0, 0.0)
DOWN: Vector = (0.0, 0.0, -1.0)


def moves_of(*moves: tuple[tuple[str, ...], Vector]) -> BuildStep:
    """A step of the stool made by hand: rail between two sides, a seat on top."""
    made = tuple(Move(pieces=pieces, direction=way, travel=20.0) for pieces, way in moves)
    return BuildStep(number=1, standing=(), added=(), moves=made)


def turns(step: BuildStep, order: tuple[str, ...] = ()) -> list[int]:
    return [each.turn for each in in_turns(built("stool")[0], step, order).moves]


def test_what_meets_a_piece_that_came_another_way_comes_after_it() -> None:
    assert turns(moves_of((("side.right",), LEFT), (("seat",), DOWN))) == [1, 2]
    assert turns(moves_of((("rail",), LEFT), (("rail", "side.right"), DOWN))) == [1, 2]


def test_what_waits_for_nothing_has_no_turn() -> None:
    assert turns(moves_of((("side.left",), LEFT), (("side.right",), DOWN))) == [0, 0]
    assert turns(moves_of((("side.right",), LEFT), (("rail",), LEFT))) == [0, 0]
    assert turns(moves_of()) == []


def test_a_plan_orders_moves_and_parts_lots_that_one_move_brings() -> None:
    step = moves_of((("side.left", "side.right"), DOWN))
    assert turns(step, ("side.right", "side.left")) == [2, 1]
    step = moves_of((("side.left",), DOWN), (("side.right",), DOWN), (("rail",), DOWN))
    assert turns(step, ("side.right", "side.left")) == [2, 1, 0]


def test_what_hangs_together_is_not_parted() -> None:
    step = moves_of((("side.left", "rail", "side.right"), DOWN))
    assert turns(step, ("side.left", "side.right")) == [1]


def test_the_bench_says_which_group_is_lowered_first_and_wedges_follow_their_arms() -> None:
    steps = {each.step.number: each for each in shown("potting-bench")}
    lowered = {each.turn: {*each.pieces} for each in steps[7].step.moves}
    assert {*lowered} == {1, 2}
    assert lowered[2] == {"lower-shelf", "sling.front", "sling.rear"}
    assert steps[7].held == ("worktop",)
    turned = {piece: each.turn for each in steps[12].step.moves for piece in each.pieces}
    assert turned == {"arm.left": 1, "arm.right": 1, "wedge.left": 2, "wedge.right": 2}


@pytest.mark.parametrize(("names", "held"), [(("seat",), ()), (("rail",), ("rail",))])
def test_only_what_is_there_is_held(names: tuple[str, ...], held: tuple[str, ...]) -> None:
    whole, order = built("stool")
    stated = [Step(title="", holds=tuple(map(Named, names))) for _ in range(3)]
    first = replace(order, steps=order.steps[:1])
    assert shown_steps(whole, first, stated)[0].held == held
