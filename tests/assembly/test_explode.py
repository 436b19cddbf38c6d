"""Where pieces go when a plan is drawn apart; cases worked by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move, PosedPiece
from kerfolio.assembly.explode import apart
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid, Vector, dot, length
from kerfolio.settling.settled import FitVariant
from tests.assembly.scenes import NAMES, assembled, order

BOARD = Panel(shape=Flat(((0, 0), (300, 0), (300, 400), (0, 400))), thickness=20.0)
DOWN, BACK = (0.0, 0.0, -1.0), (0.0, 1.0, 0.0)


def piece(label: str, origin: Vector) -> PosedPiece:
    return PosedPiece(
        label=label,
        mark="",
        part=label,
        sheet="ply",
        panel=BOARD,
        pose=Rigid(origin),
        mass=1.0,
    )


def stack(*moves: Move, count: int = 3) -> tuple[Assembled, BuildOrder]:
    """Return boards laid on one another, the first set down, one move a step."""
    labels = [f"board.{n}" for n in range(1, count + 1)]
    pieces = tuple(piece(label, (0.0, 0.0, 20.0 * n)) for n, label in enumerate(labels))
    steps = [BuildStep(number=1, standing=(), added=(labels[0],), moves=())]
    for number, move in enumerate(moves, start=2):
        new = tuple(labels[number - 1 : number])
        standing = tuple(labels[: number - 1])
        steps.append(BuildStep(number=number, standing=standing, added=new, moves=(move,)))
    assembled = Assembled(variant=FitVariant(label="", thickness=()), pieces=pieces, joints=())
    return assembled, BuildOrder(steps=tuple(steps))


def down(*labels: str, travel: float = 0.0) -> Move:
    return Move(pieces=labels, direction=DOWN, travel=travel)


def test_what_comes_down_goes_up_by_its_travel_and_some_air() -> None:
    found = apart(*stack(down("board.2", travel=30.0), count=2))
    air = 0.12 * math.hypot(300, 400, 40)
    assert found["board.1"] == (0.0, 0.0, 0.0)
    assert found["board.2"] == pytest.approx((0.0, 0.0, 30 + air))


def test_boards_stacked_one_by_one_stay_in_their_order() -> None:
    found = apart(*stack(down("board.2"), down("board.3")))
    air = 0.12 * math.hypot(300, 400, 60)
    assert found["board.2"] == pytest.approx((0.0, 0.0, air))
    assert found["board.3"] == pytest.approx((0.0, 0.0, 2 * air))


def test_boards_side_by_side_go_equally_far() -> None:
    assembled, order = stack(down("board.2"), down("board.3"))
    beside = [
        replace(each, pose=Rigid((400.0 * n, 0, 0))) for n, each in enumerate(assembled.pieces)
    ]
    found = apart(replace(assembled, pieces=tuple(beside)), order)
    assert found["board.2"] == pytest.approx(found["board.3"])


def test_a_group_that_is_carried_has_less_air_inside() -> None:
    slid = Move(pieces=("board.1", "board.2"), direction=BACK, travel=0.0)
    found = apart(*stack(down("board.2"), slid))
    air = 0.12 * math.hypot(300, 400, 60)
    assert found["board.1"] == pytest.approx((0.0, -air, 0.0))
    assert found["board.2"] == pytest.approx((0.0, -air, air / 2))
    assert found["board.3"] == (0.0, 0.0, 0.0)


def test_nothing_flies_far() -> None:
    count = 20
    moves = [down(f"board.{n}", travel=80.0) for n in range(2, count + 1)]
    found = apart(*stack(*moves, count=count))
    heights = [found[f"board.{n}"][2] for n in range(1, count + 1)]
    assert heights[-1] == pytest.approx(0.75 * math.hypot(300, 400, 20 * count))
    assert heights == sorted(heights)


def test_without_an_order_all_stays() -> None:
    assembled, _ = stack()
    assert set(apart(assembled, BuildOrder(steps=())).values()) == {(0.0, 0.0, 0.0)}


@pytest.mark.parametrize("name", NAMES)
def test_the_samples_pieces_go_back_the_way_they_came(name: str) -> None:
    found = apart(assembled(name), order(name))
    moved = set()
    for step in order(name).steps:
        for move in step.moves:
            for label in move.pieces:
                moved.add(label)
                way = dot(found[label], move.direction)
                assert way == pytest.approx(-length(found[label]))
                assert way < 0
    assert {label for label, each in found.items() if not any(each)} == set(found) - moved
