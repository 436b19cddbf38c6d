"""One slip in a sound plan: what is said first is the slip, whatever else would mend it as well.

Which feature was changed, and by how much, is known from the change itself.
"""

from __future__ import annotations

import pytest

from tests.assembly.written import changed, joints_told

STOOL, CUPBOARD = "stool", "cupboard"

UNMIRRORED = (
    (
        "low-slots: {slot: {at: [d - 80, low_z], length: 60, takes: ply}, "
        "repeat: {count: 2, step: [-140, 0]}}",
        "low-slots: {slot: {at: [80, low_z], length: 60, takes: ply}, "
        "repeat: {count: 2, step: [140, 0]}}",
    ),
    (
        "top-slots: {slot: {at: [d - 80, top_z], length: 60, takes: ply}, "
        "repeat: {count: 2, step: [-140, 0]}}",
        "top-slots: {slot: {at: [80, top_z], length: 60, takes: ply}, "
        "repeat: {count: 2, step: [140, 0]}}",
    ),
    (
        "at: [d - 60, shelf_z], length: 60, takes: ply, depth: 6}, "
        "repeat: {count: 2, step: [-140, 0]}}",
        "at: [60, shelf_z], length: 60, takes: ply, depth: 6}, repeat: {count: 2, step: [140, 0]}}",
    ),
    (
        "from: [40, low_z + t/2], to: [40, top_z - t/2]",
        "from: [d - 40, low_z + t/2], to: [d - 40, top_z - t/2]",
    ),
)
"""The right side of the cupboard drawn as the left one is."""

SLIPS = {
    "a set that begins at its other end": (
        STOOL,
        (("[over + t/2, wide - 80]", "[over + t/2, 80]"), ("[0, 160 - wide]", "[0, wide - 160]")),
        "`seat.left-slots` count from the other end than `side.left.top-tabs`",
    ),
    "a side drawn as the other one is": (
        CUPBOARD,
        UNMIRRORED,
        "`side-right` wants to be turned over or mirrored",
    ),
    "slots turned by a degree and a half": (
        STOOL,
        (("length: 50, angle: 105", "length: 50, angle: 103.5"),),
        "`side.slot-b` is turned 1.5 degrees too far clockwise for `apron.front.left-tab` and "
        "`apron.rear.right-tab`",
    ),
    "the second one of two tabs that are alike": (
        STOOL,
        (
            (
                "right-tab: {tabs: {edge: right, at: 20, width: 40",
                "right-tab: {tabs: {edge: right, at: 22.3, width: 40",
            ),
        ),
        "`stretcher.right-tab` is 2.3 mm too high for `side.right.low-slot`",
    ),
    "the second one of two rows that are alike": (
        STOOL,
        (("[over + span - t/2, 80]", "[over + span - t/2 - 2, 80]"),),
        "`seat.right-slots` is 2 mm too far left for `side.right.top-tabs`",
    ),
    "the first one of two tabs that are alike": (
        STOOL,
        (
            (
                "left-tab: {tabs: {edge: left, at: 10, width: 50",
                "left-tab: {tabs: {edge: left, at: 12, width: 50",
            ),
        ),
        "`apron.left-tab` is 2 mm too high for `side.left.slot-b` and `side.left.slot-a`",
    ),
    "a groove that is the other one's mirror image": (
        CUPBOARD,
        (
            (
                "from: [40, low_z + t/2], to: [40, top_z - t/2]",
                "from: [42, low_z + t/2], to: [42, top_z - t/2]",
            ),
        ),
        "`side-right.back-groove` is 2 mm too far right for `back.right-tongue`",
    ),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_the_slip_is_said_first(slip: str) -> None:
    plan, changes, message = SLIPS[slip]
    found = joints_told(changed(plan, *changes))
    assert [each.message for each in found][:1] == [message], "\n".join(map(str, found))


def test_what_no_amount_says_is_not_offered() -> None:
    """One copy of a `repeat` cannot lie elsewhere by itself: its row is not told to be moved."""
    plan = changed(CUPBOARD, ("[50, 190], width: 60, takes: ply}}\n      right", ONE_TAB))
    (found,) = joints_told(plan)
    assert found.message.startswith("`deck.left-tabs.2` is 3 mm too high for ")
    assert "slots.2" not in found.advice


ONE_TAB = "[50, 193], width: 60, takes: ply}}\n      right"


def test_of_many_slips_at_once_the_joints_are_named_and_no_length() -> None:
    """A set counted back, two slots elsewhere and aprons too long: no loop tells them apart."""
    many = changed(
        STOOL,
        ("[over + t/2, wide - 80]", "[over + t/2, 80]"),
        ("[0, 160 - wide]", "[0, wide - 160]"),
        ("low-slot: {slot: {at: [wide/2, 110]", "low-slot: {slot: {at: [wide/2 + 40, 310]"),
        (
            "slot-a: {slot: {at: [90, 330], length: 50, angle: 75",
            "slot-a: {slot: {at: [60, 130], length: 50, angle: 95",
        ),
        ("outline: {rectangle: [between, 90]}", "outline: {rectangle: [between + 37, 90]}"),
    )
    (found,) = joints_told(many)
    assert found.message.startswith(
        "several things seem wrong at once where `apron.front.left-tab`"
    )
    assert not [each for each in found.facts if each.unit == "mm"]
