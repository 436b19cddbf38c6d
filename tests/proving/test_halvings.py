"""Pieces that cross by halves: as high as each other, their edges come level.

That the notches of a halving together are as deep as the pieces are high is common practice, no
single source; the figures are the plans' own.
"""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.plans import altered
from tests.proving.test_forgotten import GRID
from tests.proving.two_panels import remarks

LONG = "at: [80, 300], depth: 40"
CROSS = "at: [60, 200], depth: 40"
HIGHER = "outline: {rectangle: [300, 80]}", "outline: {rectangle: [300, 120]}"
HOLLOW = (
    "depth: 40, takes: ply}}\n  cross",
    "depth: 40, takes: ply}}\n"
    "      hollow: {window: {at: [80, 20], rounded-slot: [60, 20]}}\n  cross",
)


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ((), []),
        (
            ((LONG, "at: [80, 300], depth: 34"),),
            [
                (
                    "`long.crossings` is 6 mm too shallow for `long.front` to come level with "
                    "`cross.left`",
                    "Both are 80 mm high there: make it 40 mm deep. "
                    "Or else `cross.crossings` is, by as much.",
                )
            ],
        ),
        (
            ((CROSS, "at: [60, 200], depth: 42.5"),),
            [
                (
                    "`cross.crossings` is 2.5 mm too deep for `cross.left` to come level with "
                    "`long.front`",
                    "Both are 80 mm high there: make it 40 mm deep. "
                    "Or else `long.crossings` is, by as much.",
                )
            ],
        ),
        # a saw's breadth is no mistake, nor are thirds that add up, nor pieces of two heights
        (((LONG, "at: [80, 300], depth: 39.6"),), []),
        (((LONG, "at: [80, 300], depth: 30"), (CROSS, "at: [60, 200], depth: 50")), []),
        (((LONG, "at: [80, 300], depth: 34"), HIGHER), []),
    ],
)
def test_notches_too_deep_or_too_shallow_to_come_level(
    changes: tuple[tuple[str, str], ...], expected: list[tuple[str, str]]
) -> None:
    found = remarks(altered(GRID, *changes), "halving-uneven")
    assert [(each.message, each.advice) for each in found] == expected
    assert all(each.severity is Severity.WARNING for each in found)


def test_an_opening_below_a_notch_takes_nothing_off_how_high_a_piece_is() -> None:
    assert remarks(altered(GRID, HOLLOW), "halving-uneven") == []
    found = remarks(altered(GRID, HOLLOW, (LONG, "at: [80, 300], depth: 34")), "halving-uneven")
    assert len(found) == 1


FLOOR = (
    "joints:\n",
    "  floor:\n    sheet: ply\n    outline: {rectangle: [400, 300]}\n    features:\n"
    "      slots: {slot: {at: [[190, 60]], length: 40, takes: ply}}\n"
    "      rear-slots: {slot: {at: [[190, 200]], length: 40, takes: ply}}\n"
    "joints:\n"
    "  - {tab: long.front.feet, into: floor.slots, show: in, looking: down}\n"
    "  - {tab: long.rear.feet, into: floor.rear-slots, show: in, looking: down}\n",
)
FEET = (
    "takes: ply}}\n  cross",
    "takes: ply}}\n      feet: {tabs: {edge: bottom, at: 170, width: 40, takes: ply}}\n  cross",
)
STANDS = "{piece: long.front, looks: front}", "{piece: floor, looks: up}"
ON_FLOOR = altered(GRID, FLOOR, FEET, STANDS)


def test_what_sinks_into_the_floor_is_told_as_the_notch_that_is_too_deep() -> None:
    assert remarks(ON_FLOOR, "joint-off", "pieces-clash", "halving-uneven") == []
    spoilt = altered(ON_FLOOR, (LONG, "at: [80, 300], depth: 45"))
    (found,) = remarks(spoilt, "joint-off", "pieces-clash")
    assert found.message == "`long.crossings` is 5 mm too deep"
    assert found.advice == (
        "Nothing is in anything else once this is put right. 2 errors are gone then. "
        "Or else `cross.crossings` is 5 mm too deep, "
        "or `long` is 5 mm too short from bottom to top."
    )


FREE = "long.front.crossings.1, looking: right}", "long.front.crossings.1}"


def test_notches_on_the_edge_of_the_feet_are_told_as_that() -> None:
    higher = ("outline: {rectangle: [300, 80]}", "outline: {rectangle: [300, 95]}")
    even = (
        ("at: [60, 200], depth", "at: [60, 240], depth"),
        ("at: [[190, 200]]", "at: [[190, 240]]"),
    )
    spoilt = altered(
        ON_FLOOR, ("{notch: {edge: top,", "{notch: {edge: bottom,"), higher, *even, FREE
    )
    (found,) = remarks(spoilt, "joint-off", "pieces-clash")
    assert found.message == "`long.crossings` are stated on the wrong edge: `edge: bottom`"
    assert found.advice.startswith("Write `edge: top`. 2 errors are gone then.")
