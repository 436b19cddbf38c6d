"""Brackets and clamps: each deliberate fault is blamed on its own rule, a sound plan on none."""

from __future__ import annotations

import pytest

from kerfolio.proving import (
    brackets,
    fastened_bolts,
    fastened_dowels,
    fastened_screws,
    fastened_tools,
    fastenings,
    hand_bores,
)
from kerfolio.proving.rules import rules_of
from tests.brackets_plan import LEDGE
from tests.plans import proved

MODULES = (
    brackets,
    fastenings,
    fastened_bolts,
    fastened_screws,
    fastened_tools,
    hand_bores,
    fastened_dowels,
)
IDS = {id for module in MODULES for rule in rules_of(module) for id in rule.ids}

CLAMP = "joins: [lip.show, ledge.back], at: [150, 30]"
LEFT = "[[150, under - 12], [150, under - 30]]"
BORED = "[[50, 148], [50, 130]]"


def told(plan: str) -> list[tuple[str, str]]:
    return [(each.rule, each.message) for each in proved(plan).findings if each.rule in IDS]


def test_a_sound_plan_is_not_remarked_on() -> None:
    assert told(LEDGE) == []


FAULTS = {
    # holes of the back above the ledge, those of the ledge behind the corner: no face before both
    "no-corner": (
        [("joins: [back.left, ledge.left]", "joins: [back.left, back.right]")],
        *("bracket-askew", "`bracket-40` has no square corner at back.left.1 and back.right.1"),
    ),
    # the ledge's holes 30 and 12 mm from its left edge... 4 mm in: 10 mm of metal, 6 past it
    "past-the-edge": (
        [(LEFT, LEFT.replace("150", "104")), (BORED, BORED.replace("50, ", "4, "))],
        *("bracket-off-face", "a leg of `bracket-40` reaches 6 mm past `ledge`"),
    ),
    "over-an-opening": (
        [
            (
                "      slots: {slot",
                "      peep: {window: {at: [150, 66], rectangle: [8, 6]}}\n      slots: {slot",
            )
        ],
        *("bracket-over-opening", "a leg of `bracket-40` lies over `back.peep`"),
    ),
    # 15 mm from the corner instead of 12; the holes are 0.5 mm wider than the screw on a side
    "beside-its-hole": (
        [("under - 12], [150", "under - 15], [150")],
        *("bracket-hole-off", "back.left.1 is 3 mm from the hole of `bracket-40`"),
    ),
    # 4 mm from the edge; two diameters of 3.5 mm are 7 mm
    "near-the-edge": (
        [(LEFT, LEFT.replace("150", "104")), (BORED, BORED.replace("50, ", "4, "))],
        *("bracket-splits", "`screw-3-5x16` is 4 mm from an edge at ledge.left.1"),
    ),
    # 20 mm less 2 mm of metal, and 1 mm that is to stay, are 1.2 mm more than 17.8 mm
    "comes-out": (
        [("by: screw-3-5x16, joins: [back.left", "by: screw-4x20, joins: [back.left")],
        *("screw-out", "`screw-4x20` is 1.2 mm too long for back.left.1"),
    ),
    "opens-too-little": (
        [(CLAMP, "joins: [lip.left, lip.right]")],
        *("clamp-narrow", "`clamp-160` is to span 300 mm and opens 160 mm"),
    ),
    # the ledge reaches 160 mm forward, and 100 mm to its left end; the lip begins 100 mm along it
    "reaches-too-little": (
        [
            ("outline: {rectangle: [300, 60]}", "outline: {rectangle: [300, 130]}"),
            ("[150, 30], step", "[150, 95], step"),
        ],
        *("clamp-short", "`clamp-160` is to press 95 mm in from an edge and reaches 80 mm"),
    ),
    "in-the-air": (
        [("at: [150, 30], step", "at: [150, 58], step")],
        *("clamp-in-air", "a jaw of `clamp-160` presses on no wood of lip.show"),
    ),
    "slips": (
        [(CLAMP, "joins: [lip.show, ledge.show]")],
        *(
            "clamp-askew",
            "`clamp-160` slips: lip.show and ledge.show look not away from each other",
        ),
    ),
    "at-of-a-bracket": (
        [("left], step", "left], at: [1, 2], step")],
        *("fastening-at", "a bracket has its place by what it joins"),
    ),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_each_fault_is_told(fault: str) -> None:
    changes, rule, message = FAULTS[fault]
    plan = LEDGE
    for was, now in changes:
        assert was in plan
        plan = plan.replace(was, now)
    found = told(plan)
    assert message.replace("`", "") in {each.replace("`", "") for of, each in found if of == rule}
    beside = {"past-the-edge": {"bracket-splits"}, "near-the-edge": {"bracket-off-face"}}
    assert {of for of, _ in found} - beside.get(fault, set()) == {rule}


def test_a_bracket_of_unknown_measures_is_counted_and_not_judged() -> None:
    """A maker's own without them: nothing is drawn of it, nothing said."""
    plan = LEDGE.replace("bracket-40", "bracket-x")
    found = {rule for rule, _ in told(plan)}
    assert found == {"fastening-item"}
