"""Steps as they lie: turned as the plan says, what is made apart alone, what rests staying."""

from __future__ import annotations

import random

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from kerfolio.assembly.assembled import BuildStep
from kerfolio.assembly.extent import box_around
from kerfolio.assembly.lying import Shown, is_apart, shown_steps, turned_down
from kerfolio.geometry.rigid import Vector, dot, length, scaled
from kerfolio.model.lying import BACK, FACE_UP, FRONT, INNER, LEFT, LIES, OVER, RIGHT, Lying
from kerfolio.model.plan import Step
from kerfolio.model.statement import Named
from tests.drawing.built import built, shown

DOWN: Vector = (0.0, 0.0, -1.0)


def bench_step(number: int) -> Shown:
    return next(each for each in shown("potting-bench") if each.step.number == number)


def laid(way: str, name: str = "stool", piece: str = "seat") -> Shown:
    """The last step of a plan made by hand, with a piece lying some way."""
    whole, order = built(name)
    lying = Lying(piece=Named(piece), way=way)
    stated = [Step(title="", lies=lying) for _ in range(order.steps[-1].number)]
    return shown_steps(whole, order, stated)[-1]


def test_a_direction_is_turned_down_along_the_shortest_way() -> None:
    """Against scipy: a proper turn, by the angle between the two directions and no more."""
    chance = random.Random(5)
    for _ in range(50):
        raw = (chance.gauss(0, 1), chance.gauss(0, 1), chance.gauss(0, 1))
        way = scaled(raw, 1 / length(raw))
        turn = turned_down(way)
        matrix = np.array([turn.x, turn.y, turn.z]).T
        assert np.linalg.det(matrix) == pytest.approx(1.0)
        assert turn.vector(way) == pytest.approx(DOWN, abs=1e-9)
        angle = float(np.arccos(np.clip(dot(way, DOWN), -1, 1)))
        assert Rotation.from_matrix(matrix).magnitude() == pytest.approx(angle)


def test_what_looks_up_is_turned_over_and_keeps_its_left_and_right() -> None:
    turn = turned_down((0.0, 0.0, 1.0))
    assert turn.vector((0.0, 0.0, 1.0)) == DOWN
    assert turn.vector((1.0, 0.0, 0.0)) == (1.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("way", "under"),
    [
        (LEFT, (-1.0, 0.0, 0.0)),
        (RIGHT, (1.0, 0.0, 0.0)),
        (FRONT, (0.0, -1.0, 0.0)),
        (BACK, (0.0, 1.0, 0.0)),
        (OVER, (0.0, 0.0, 1.0)),
    ],
)
def test_a_side_of_the_whole_is_put_under(way: str, under: Vector) -> None:
    assert laid(way).turn.vector(under) == pytest.approx(DOWN, abs=1e-9)


def test_faces_are_told_by_the_show_face_and_by_the_middle_of_the_whole() -> None:
    """The bench's worktop has its show face up; its left side looks out with the other face."""
    flat = bench_step(2)
    assert flat.assembled.piece("worktop").pose.z == pytest.approx(DOWN, abs=1e-9)
    side = bench_step(7)
    there = {*side.step.standing, *side.step.added, "side.right"}  # the arms come later
    low, high = box_around(each for each in side.assembled.pieces if each.label in there)
    of_side = box_around([side.assembled.piece("side.left")])
    assert of_side[0][2] == pytest.approx(low[2])
    assert of_side[1][2] - of_side[0][2] == pytest.approx(17.8)
    assert high[2] - low[2] == pytest.approx(1100.0)


def test_opposite_words_lie_opposite_ways() -> None:
    for one, other in ((LEFT, RIGHT), (FRONT, BACK)):
        turned = laid(other).turn.inverse.vector(DOWN)
        assert laid(one).turn.vector(turned) == pytest.approx((0.0, 0.0, 1.0), abs=1e-9)
    outer = laid(INNER, piece="side.left").turn
    assert outer.vector((1.0, 0.0, 0.0)) == pytest.approx(DOWN, abs=1e-9)
    assert laid(FACE_UP).assembled.piece("seat").pose.z == pytest.approx((0.0, 0.0, 1.0), abs=1e-9)


@pytest.mark.parametrize("way", LIES)
def test_turning_changes_nothing_within_the_work(way: str) -> None:
    whole, _ = built("stool")
    turned = laid(way)
    for before, after in zip(whole.joints, turned.assembled.joints, strict=True):
        back = turned.turn.inverse
        assert back.point(after.frame.origin) == pytest.approx(before.frame.origin, abs=1e-6)
        assert back.vector(after.frame.z) == pytest.approx(before.frame.z, abs=1e-9)


def test_what_lies_stays_and_the_rest_comes_down_to_it() -> None:
    step = bench_step(7).step
    assert all(move.direction == pytest.approx(DOWN, abs=1e-9) for move in step.moves)
    moved = [piece for move in step.moves for piece in move.pieces]
    assert "side.left" not in moved
    assert sorted(moved) == sorted(step.standing)


def test_what_comes_to_lying_work_comes_as_it_did() -> None:
    assert all(
        move.direction == pytest.approx(DOWN, abs=1e-9)
        for number in (2, 6, 8)
        for move in bench_step(number).step.moves
    )


def test_only_steps_after_a_turn_say_so() -> None:
    """The bench: worktop down (2), up (3 to 5), rails apart (6), side down (7, 8), up (9 to 12)."""
    assert {each.step.number: each.turned for each in shown("potting-bench")} == {
        2: False, 3: True, 4: False, 5: False, 6: False, 7: True, 8: False,
        9: True, 10: False, 11: False, 12: False,
    }  # fmt: skip


@pytest.mark.parametrize(("name", "number"), [("potting-bench", 6), ("tool-tote", 3)])
def test_a_lot_of_its_own_is_told_from_the_joints(name: str, number: int) -> None:
    whole, order = built(name)
    found = [each.number for each in order.steps if is_apart(whole, each)]
    assert found == [number]
    assert next(each for each in shown(name) if each.step.number == number).step.standing == ()


def test_what_is_laid_on_something_is_not_apart_from_it() -> None:
    whole, order = built("stool")
    last = order.steps[-1]
    bare = BuildStep(number=9, standing=last.standing, added=last.added, moves=last.moves)
    loose = [each for each in whole.joints if "seat" not in (each.a, each.b)]
    assert not is_apart(type(whole)(variant=whole.variant, pieces=whole.pieces,
                                    joints=tuple(loose)), bare)  # fmt: skip


def test_an_order_that_was_found_lies_in_no_way() -> None:
    whole, order = built("stool")
    found = type(order)(steps=order.steps, found=True)
    stated = [Step(title="", lies=Lying(piece=Named("seat"), way=OVER))] * 9
    assert not any(each.lying for each in shown_steps(whole, found, stated))


def test_a_step_of_nothing_but_hardware_is_shown_with_all_that_stands() -> None:
    whole, order = built("potting-bench")
    bolts = bench_step(9)
    assert bolts.step.added == ()
    later = {"lip", "arm.left", "arm.right", "wedge.left", "wedge.right"}
    assert {*bolts.step.standing} == {each.label for each in whole.pieces} - later
    assert sum(each.step == 9 for each in bolts.fittings) == 24
    assert [each.number for each in order.steps] == [2, 3, 4, 5, 6, 7, 8, 10, 12]
