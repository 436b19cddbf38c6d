"""Gaps, edges, small parts, tipping and finish of what children use.

All bounds of standards are from memory: 5 to 12 mm (EN 716, EN 14988), 3.5 to 9 in (ASTM F1487), a
cylinder of 31.7 by 57.1 mm (16 CFR 1501.4), a slope of 10 degrees and 50 kg (EN 71-1).
"""

from __future__ import annotations

from math import atan2, degrees

import pytest

from tests.edged import with_edges
from tests.proving.case_plan import found, told
from tests.proving.two_panels import plan_text
from tests.proving.two_panels import told as told_of

HEAD = "for-children: true"
CHILDREN = ("version: 1.0.0", f"version: 1.0.0\n{HEAD}")
SLOTS = "at: [[deep/2, 60], [deep/2, 340]]"
SEAT = ("version: 1.0.0", f"version: 1.0.0\n{HEAD}\nuses: [sit in the middle]")
SIZE = "wide: 500, deep: 300, high: 400"


def rails(low: float, high: float = 340) -> tuple[str, str]:
    """Return the middles of the rails; the shelf, 17.8 mm thick, lies at 200, a rail is 80 high."""
    return SLOTS, f"at: [[deep/2, {low}], [deep/2, {high}]]"


@pytest.mark.parametrize(
    ("low", "high", "apart"),
    [
        (141, 340, {"`rail.low` and `shelf` are 10.1 mm apart: a finger's width"}),
        (147, 255, {"`rail.high` and `shelf` are 6.1 mm apart: a finger's width"}),
        # 4.1 mm takes no finger, and of 14.1 mm it comes out again.
        (147, 340, set()),
        (137, 340, set()),
    ],
)
def test_pieces_a_finger_apart_are_told(low: float, high: float, apart: set[str]) -> None:
    assert {*told("finger-gap", CHILDREN, rails(low, high))} == apart
    assert told("finger-gap", rails(low, high)) == []


@pytest.mark.parametrize(
    ("low", "high", "pairs"),
    [
        (60, 340, {("rail.low", "shelf"), ("rail.high", "shelf")}),
        (60, 300, {("rail.low", "shelf")}),
        # 88.1 and 51.1 mm let no body through.
        (63, 300, set()),
    ],
)
def test_pieces_that_hold_a_head_between_them_are_told(
    low: float, high: float, pairs: set[tuple[str, str]]
) -> None:
    messages = told("head-gap", CHILDREN, rails(low, high))
    assert {tuple(each.split("`")[1:4:2]) for each in messages} == pairs
    assert all(each.endswith("91.1 mm apart: it holds a head") for each in messages)
    assert told("head-gap", rails(low, high)) == []


def test_a_gap_that_a_head_passes_or_that_is_closed_behind_is_not_told() -> None:
    tall = (SIZE, "wide: 500, deep: 300, high: 900")
    groove = (
        "groove: {from: [0, 200], to: [deep, 200]",
        "groove: {from: [0, 450], to: [deep, 450]",
    )
    assert told("head-gap", CHILDREN, tall, groove, rails(60, 840)) == []
    # A rail behind the other, 100 mm nearer to the shelf, leaves less than a body.
    assert told("head-gap", CHILDREN, (SLOTS, "at: [[60, 60], [240, 100]]")) == []


@pytest.mark.parametrize(
    ("size", "small"),
    [
        # The diagonal across the sheet of 17.8 mm: 30.7, 26.8, 32.3 and 30.7 mm.
        ("50, 25", True),
        ("57, 20", True),
        ("50, 27", False),
        ("58, 25", False),
    ],
)
def test_parts_that_fit_into_the_cylinder_are_told(size: str, small: bool) -> None:
    stated = plan_text(rail="h: {hole: {at: [20, 10], diameter: 4}}", head=HEAD)
    text = stated.replace("rectangle: [300, 120]", f"rectangle: [{size}]")
    message = f"part `rail`, {size.replace(', ', ' x ')} mm, fits into the cylinder of small parts"
    assert told_of(text, "child-small-part") == ([message] if small else [])
    assert told_of(text.replace(HEAD, ""), "child-small-part") == []


def test_edges_left_as_they_are_cut_are_told() -> None:
    rule, text = "child-edges-sharp", plan_text(head=HEAD)
    assert told_of(text, rule) == ["the edges of `side` and `rail` stay as they are cut"]
    masked = with_edges(with_edges(text, "side", "{all: ease}"), "rail", "{all: mask}")
    assert told_of(masked, rule) == ["the edges of `rail` stay as they are cut"]
    soft = masked.replace("{all: mask}", "{all: {round-over: 3}}")
    assert told_of(soft, rule) == []
    assert told_of(text.replace(HEAD, ""), rule) == []


def test_edges_that_a_step_sands_are_not_sharp() -> None:
    sands = (
        "    text: Push the tabs home.",
        "    sands: [side, rail, shelf]\n    text: Push them home.",
    )
    assert told("child-edges-sharp", CHILDREN, sands) == []
    some = (
        "    text: Push the tabs home.",
        "    sands: [side.left, rail]\n    text: Push them home.",
    )
    assert told("child-edges-sharp", CHILDREN, some) == [
        "the edges of `shelf` stay as they are cut"
    ]


@pytest.mark.parametrize(
    ("stated", "deep", "how"),
    [
        (CHILDREN, 60, "empty it tips"),
        (CHILDREN, 66, "empty it tips"),
        (CHILDREN, 90, ""),
        (SEAT, 110, "with a child on it it tips"),
        (SEAT, 130, ""),
        (CHILDREN, 110, ""),
        (("version: 1.0.0", "version: 1.0.0"), 60, ""),
    ],
)
def test_what_tips_on_a_slope_of_ten_degrees_is_told(
    stated: tuple[str, str], deep: int, how: str
) -> None:
    findings = found("child-tips", stated, (SIZE, f"wide: 500, deep: {deep}, high: 400"))
    assert [each.message.partition(" when")[0] for each in findings] == ([how] if how else [])
    for each in findings:
        # Two sides at half their height, two rails, the shelf, as areas; then 50 kg at 359 mm.
        masses = [(2 * deep * 400, 200), (2 * 500 * 80, 200), (500 * deep, 200)]
        kg = sum(area for area, _ in masses) * 17.8e-9 * 685
        child = 50 if "child" in how else 0
        high = (kg * 200 + child * (209 + 150)) / (kg + child)
        facts = {fact.name: fact.value for fact in each.facts}
        assert facts["least"] == pytest.approx(degrees(atan2(deep / 2, high)), rel=0.01)


@pytest.mark.parametrize(
    ("head", "said"),
    [
        (HEAD, ["made for children, and nothing is said of a finish"]),
        (
            f"{HEAD}\nfinish: {{of: varnish, coats: 2}}",
            ["nothing says that `varnish` suits what children suck and bite"],
        ),
        (f"{HEAD}\ncautions: [An oil declared to EN 71-3; let it cure.]", []),
        (
            f"{HEAD}\ncautions: [An adult stays near.]",
            ["made for children, and nothing is said of a finish"],
        ),
        ("finish: {of: varnish, coats: 2}", []),
    ],
)
def test_a_finish_that_nobody_says_suits_children_is_asked_for(head: str, said: list[str]) -> None:
    assert told_of(plan_text(head=head), "child-finish") == said
