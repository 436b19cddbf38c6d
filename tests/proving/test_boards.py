"""Boards and walls in their place: each deliberate fault has its own remark, a sound plan none."""

from __future__ import annotations

import pytest

from kerfolio.proving import boards, wall
from kerfolio.proving.rules import rules_of
from tests.boards_plan import RACK, STRAIGHT
from tests.plans import proved

IDS = {id for module in (boards, wall) for rule in rules_of(module) for id in rule.ids}
IDS -= {"holes-miss-studs"}
BATTEN = "pine-21x45, length: 600, count: 1"
POST = "at: [60, 150], along: y"
BEHIND = f"{BATTEN}, lies: {{on: back.back, at: [350, Y]}}"


def told(plan: str) -> list[tuple[str, str]]:
    return [(each.rule, each.message) for each in proved(plan).findings if each.rule in IDS]


@pytest.mark.parametrize("plan", [RACK, STRAIGHT], ids=["batten", "wall"])
def test_a_sound_plan_is_not_remarked_on(plan: str) -> None:
    assert told(plan) == []


FAULTS = {
    "no-such-piece": (
        *("back.show", "rear.show"),
        *("board-place", "no piece for `rear.show`"),
    ),
    "no-such-face": (
        *("back.show", "back.front"),
        *("board-place", "`back.front` is no face of `back`, and no side"),
    ),
    "more-places": (
        *(
            "lies: {on: back.show, at: [60, 150], along: y}",
            "lies: [{on: back.show}, {on: back.back}]",
        ),
        *("board-place", "`post` has 2 places, and there are 1"),
    ),
    # its near edge is at 760 - 22.5 mm, past the back's 700
    "beside": (
        *(POST, "at: [760, 150], along: y"),
        *("board-beside", "`post` lies beside `back`: nothing of it is on it"),
    ),
    # before the back, 100 mm lower: 17.8 mm of ledge from 51.1 up, the board begins at -50
    "clash": (
        *(POST, "at: [350, 50], along: y"),
        *("board-clash", "`post` is 17.8 mm deep in `ledge`"),
    ),
    # screws at 250 up, 45 mm of batten round 290 begin at 267.5
    "past-the-board": (
        *(BATTEN, BEHIND.replace("Y", "290")),
        *(
            "screw-misses-board",
            "`screw-5x30` in back.screws.1 goes past `batten`, 17.5 mm beside it",
        ),
    ),
    # round 265 they begin at 242.5: 7.5 mm for 2 x 5 mm
    "near-its-edge": (
        *(BATTEN, BEHIND.replace("Y", "265")),
        *(
            "screw-misses-board",
            "`screw-5x30` in `back.screws.1` is 7.5 mm from an edge of `batten`",
        ),
    ),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_each_fault_of_a_board_is_told(fault: str) -> None:
    was, now, rule, message = FAULTS[fault]
    assert was in RACK
    found = told(RACK.replace(was, now))
    assert {each for each, _ in found} == {rule}
    assert message.replace("`", "") in {each.replace("`", "") for _, each in found}


WALL_FAULTS = {
    "unsaid": (
        *("placed: wall\n", ""),
        *("wall-unsaid", "`screw-5x30` goes into a wall, and the plan stands at none"),
    ),
    "the-other-way": (
        *("wall], step", "wall], head: back, step"),
        *("wall-not-behind", "`screw-5x30` in back.screws.1 does not go to the rear"),
    ),
    # a board behind the back keeps it 18 mm off
    "off-the-wall": (
        *("on: back.show", "on: back.back"),
        *("wall-not-behind", "`back` stands 18 mm off the wall that it is screwed to"),
    ),
}


@pytest.mark.parametrize("fault", WALL_FAULTS)
def test_each_fault_of_a_wall_is_told(fault: str) -> None:
    was, now, rule, message = WALL_FAULTS[fault]
    assert was in STRAIGHT
    found = told(STRAIGHT.replace(was, now))
    assert {each for each, _ in found} == {rule}
    assert message in {each for _, each in found}
