"""Places of pieces, against a draughtsman's own: tables worked out on paper, not from joints."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from kerfolio.assembly.poses import Together, put_together
from kerfolio.geometry.rigid import Rigid, added, between, cross, dot, length, scaled
from kerfolio.model.joint_kind import NOTCH_JOINT, TAB_JOINT
from tests.assembly import scenes
from tests.assembly.written import NAMES, settled, text, together
from tests.tools.sample_poses import SCENES


def apart(one: Rigid, other: Rigid) -> float:
    turned = sum(length(between(a, b)) for a, b in ((one.x, other.x), (one.y, other.y)))
    return length(between(one.origin, other.origin)) + 200 * turned


@pytest.mark.parametrize("name", sorted(SCENES))
def test_the_sample_stands_as_the_draughtsman_put_it(name: str) -> None:
    plan = scenes.settled(name)
    made = put_together(plan)
    assert made is not None
    table = SCENES[name](plan).poses
    pieces = made.assembled.pieces
    assert {each.label for each in pieces} == set(table)
    # The tables begin where it suited on paper: one piece is laid upon the other's, no axis turned.
    shift = between(pieces[0].pose.origin, table[pieces[0].label].origin)
    for each in pieces:
        stated = table[each.label]
        drawn = Rigid(stated.origin, stated.x, stated.y, cross(stated.x, stated.y))
        assert apart(each.pose.moved(shift), drawn) < 1e-9, each.label


def shuffled(name: str, seed: int) -> Together:
    plan = settled(text(name))
    joints = list(plan.joints)
    Random(seed).shuffle(joints)
    made = put_together(replace(plan, joints=tuple(joints)))
    assert made is not None
    return made


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("seed", [1, 2])
def test_the_order_of_joints_makes_no_difference(name: str, seed: int) -> None:
    made, usual = shuffled(name, seed), together(text(name))
    assert [str(each) for each in made.findings if each.rule != "joint-unchecked"] == []
    for each in made.assembled.pieces:
        assert apart(each.pose, usual.assembled.piece(each.label).pose) < 1e-9, each.label


def test_the_table_stands_as_worked_out_on_paper() -> None:
    """At 17.8 and 12 mm. Furthest to the left is the stretcher's tab, to the front the top.

    The tab's end lies 70 mm outside the end rail, whose outer face is 50 - t/2 from the legs'.
    """
    made = together(text("workshop-table")).assembled
    t, s = 17.8, 12.0
    x0 = 20.0 + t / 2
    at = {
        "leg.front-left": (x0, 20.0 + t, 0.0),
        "foot.front-left": (x0 + 100.0, 20.0 + t, 0.0),
        "post.front-left": (x0 + 100.0, 20.0 + t, 220.0),
        "rail.front": (x0, 20.0 + 2 * t, 60.0),
        "apron.front": (x0, 20.0 + 2 * t, 680.0),
        "leg.rear-right": (x0 + 1600.0, 720.0 - t, 0.0),
        "shelf": (x0 + 50.0 + t / 2, 20.0 + 2 * t, 190.0 - s / 2),
        "cross.1": (x0 + 350.0 - t / 2, 20.0 + 2 * t, 700.0),
        "binder.1": (x0 + 200.0, 220.0 + t / 2, 700.0),
        "top": (x0 - 20.0, 740.0, 800.0 + t),
        "backboard": (x0 + 100.0, 620.0 + t / 2, 800.0 + t),
        "wall.1": (x0 + 50.0 + t / 2 + 60.0, 20.0 + 2 * t + 120.0 + s, 190.0 + s / 2),
        "stretcher": (x0 + 50.0 + t / 2, 370.0 + t / 2, 80.0),
        "wedge.left": (x0 + 50.0 - t / 2, 440.0, 115.0 - t / 2),
    }
    assert {label: made.piece(label).pose.origin for label in at} == {
        label: pytest.approx(where, abs=1e-9) for label, where in at.items()
    }


def test_joints_stand_where_their_features_meet() -> None:
    """Each joint's frame lies in both pieces: on the root of the tab, on the face it enters."""
    made = together(text("cupboard")).assembled
    for each in made.joints:
        a = made.piece(each.a)
        inside = a.pose.inverse.point(each.frame.origin)
        if each.kind is TAB_JOINT:
            assert inside[2] == pytest.approx(a.panel.thickness / 2)
            b = made.piece(each.b)
            level = b.pose.inverse.point(each.frame.origin)[2]
            assert min(abs(level), abs(level - b.panel.thickness)) < 1e-9
            # The first piece goes into the second: along z it finds its material.
            deeper = b.pose.inverse.point(added(each.frame.origin, scaled(each.frame.z, 1.0)))
            assert 0.0 < deeper[2] < b.panel.thickness
    assert {each.kind for each in made.joints} == {TAB_JOINT, NOTCH_JOINT}


def test_fingers_go_together_along_the_first_piece() -> None:
    made = together(text("workshop-table")).assembled
    corner = next(e for e in made.joints if e.ends[0] == "wall.1.right-corner")
    out = made.piece("wall.1").pose.vector((1.0, 0.0, 0.0))
    assert dot(corner.frame.z, out) == pytest.approx(1.0)


def test_like_the_drawn_one_the_other_thicknesses_ask_nothing() -> None:
    plan = settled(text("cupboard"))
    again = put_together(plan, together(text("cupboard")))
    assert again is not None
    assert again.findings == ()
    assert again.ways == together(text("cupboard")).ways
