from __future__ import annotations

import math
from itertools import permutations

import pytest

from kerfolio.assembly.assembled import Assembled, PosedJoint
from kerfolio.assembly.directions import directions, opposite, parallel
from kerfolio.geometry.rigid import Rigid, Vector, cross, length
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.settling.settled import FitVariant
from tests.assembly.hand_made import BACK, DOWN, FRONT, LEFT, RIGHT, UP, crate, joint, plan, stool


def turned(degrees: float) -> Vector:
    """A level direction, counter-clockwise from the right."""
    return (math.cos(math.radians(degrees)), math.sin(math.radians(degrees)), 0.0)


def slanting(degrees: float) -> PosedJoint:
    z = turned(degrees)
    frame = Rigid((0.0, 0.0, 0.0), UP, cross(z, UP), z)
    return PosedJoint(kind=TAB_JOINT, a="a", b="b", ends=("a.x", "b.y"), frame=frame, size=(60, 18))


def of(*joints: PosedJoint) -> tuple[Vector, ...]:
    return directions(
        Assembled(variant=FitVariant(label="", thickness=()), pieces=(), joints=joints)
    )


def test_square_joints_give_the_six_ways_of_the_world_up_first() -> None:
    assert directions(stool()) == (UP, DOWN, BACK, FRONT, RIGHT, LEFT)


def test_a_joint_may_also_be_slid_along_and_across() -> None:
    assert set(of(joint("a", "b", LEFT))) == {UP, DOWN, BACK, FRONT, RIGHT, LEFT}


def test_without_joints_things_are_still_put_on_from_above() -> None:
    assert of() == (UP, DOWN)


def test_a_slot_turned_by_15_degrees_adds_its_own_axes() -> None:
    ways = of(slanting(15))
    assert ways[:2] == (UP, DOWN)
    assert len(ways) == 6
    for wanted in (15, 105):
        assert any(way == pytest.approx(turned(wanted), abs=1e-9) for way in ways)


@pytest.mark.parametrize(("off", "count"), [(0.0, 6), (0.001, 6), (-0.001, 6), (1.0, 10)])
def test_axes_that_all_but_agree_are_one(off: float, count: int) -> None:
    assert len(of(joint("a", "b", RIGHT), slanting(off))) == count
    assert len(of(slanting(30), slanting(30 + off), slanting(210))) == count


def test_every_way_stands_beside_its_opposite_and_is_a_unit_vector() -> None:
    ways = of(slanting(15), slanting(-40), joint("a", "b", DOWN))
    for way, back in zip(ways[::2], ways[1::2], strict=True):
        assert back == opposite(way)
        assert length(way) == pytest.approx(1.0, abs=1e-8)
        assert parallel(way, back)
    assert "-0.0" not in str(ways).replace("-0.0,", "-0.0 ,").replace("-0.05", "")


def test_the_order_of_the_joints_does_not_matter() -> None:
    joints = [slanting(15), slanting(-40), joint("a", "b", DOWN), slanting(15.0000001)]
    assert len({tuple(of(*each)) for each in permutations(joints[:3])}) == 1
    assert [tuple(round(x, 6) for x in way) for way in of(*joints)] == [
        tuple(round(x, 6) for x in way) for way in of(*reversed(joints))
    ]


def test_pieces_play_no_part() -> None:
    whole = crate()
    assert directions(whole) == directions(plan([], whole.joints))
