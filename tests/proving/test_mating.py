"""Joints in numbers: what meets must be alike; the figures are the plans' own."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.proving.two_panels import plan_text, remarks, told, weighs

RULES = (
    *("tab-wider-than-slot", "tab-loose-in-slot", "sheet-thicker-than-slot"),
    *("joint-too-loose", "tab-deeper-than-recess", "tab-barely-enters", "tab-not-flush"),
    "tab-proud",
    "fingers-unequal",
)
SLOT = "slot: {slot: {at: [200, 150], length: 60, angle: 90, takes: ply}}"
TAB = "tab: {tabs: {edge: left, at: 30, width: 60, takes: ply}}"
JOINT = "tab: rail.tab, into: side.slot"
LADDER = "17.2 to 18.6 by 0.2"


def joined(side: str = SLOT, rail: str = TAB, joint: str = JOINT, ladder: str = "17.8") -> str:
    return plan_text(side, rail, joint, ladder=ladder)


def test_a_tab_made_for_its_slot_is_not_remarked_on() -> None:
    assert told(joined(ladder=LADDER), *RULES) == []


@pytest.mark.parametrize(
    ("old", "new", "rule", "severity", "message"),
    [
        (
            "width: 60, takes",
            "width: 62, takes",
            "tab-wider-than-slot",
            Severity.ERROR,
            "`side.slot` is 1.8 mm too short for its tab",
        ),
        (
            "width: 60, takes",
            "width: 56, takes",
            "tab-loose-in-slot",
            Severity.WARNING,
            "the tab has 4.2 mm of play in `side.slot`",
        ),
        (
            "angle: 90, takes: ply",
            "angle: 90, width: 17.5",
            "sheet-thicker-than-slot",
            Severity.ERROR,
            "slot `side.slot` is 0.3 mm too narrow for its sheet",
        ),
        (
            "angle: 90, takes: ply",
            "angle: 90, width: 19.5",
            "joint-too-loose",
            Severity.WARNING,
            "`side.slot` has 0.85 mm a side: rattling",
        ),
        (
            "width: 60, takes: ply",
            "width: 60, depth: 8",
            "tab-barely-enters",
            Severity.WARNING,
            "`rail.tab` reaches 8 mm into its slot",
        ),
        (
            "width: 60, takes: ply",
            "width: 60, depth: 19",
            "tab-not-flush",
            Severity.NOTE,
            "`rail.tab` stands proud by 1.2 mm",
        ),
        (
            "slot: {slot: {at: [200, 150], length: 60, angle: 90, takes: ply}}",
            "slot: {pocket: {at: [200, 150], length: 60, angle: 90, takes: ply, depth: 6}}",
            "tab-deeper-than-recess",
            Severity.ERROR,
            "`rail.tab` stands 11.8 mm above its recess",
        ),
    ],
)
def test_what_does_not_match_is_told(
    old: str, new: str, rule: str, severity: Severity, message: str
) -> None:
    text = joined()
    assert text.count(old) == 1
    changed = text.replace(old, new)
    assert message in told(changed, rule)
    assert weighs(changed, rule) == {severity}


def test_a_slot_of_fixed_width_is_told_where_thick_sheets_do_not_enter() -> None:
    text = joined(side=SLOT.replace("takes: ply", "width: 18.1"), ladder=LADDER)
    (finding,) = remarks(text, "sheet-thicker-than-slot")
    # The thickest of the range lacks most.
    assert finding.message == "slot `side.slot` is 0.5 mm too narrow for its sheet (at 18.6mm)"
    assert finding.advice == "Write `takes: ply` in place of its width."


def test_a_tab_that_bottoms_a_little_early_is_right() -> None:
    side = "slot: {pocket: {at: [200, 150], length: 60, angle: 90, takes: ply, depth: 6}}"
    rail = "tab: {tabs: {edge: left, at: 30, width: 60, depth: 5.7}}"
    assert told(joined(side, rail), *RULES) == []


FINGERS = "corner: {fingers: {edge: %s, count: %s, takes: ply, first: %s}}"


@pytest.mark.parametrize(
    ("side", "rail", "expected"),
    [
        (("left", 5, "finger"), ("left", 5, "gap"), ["the two edges differ by 180 mm"]),
        (("left", 5, "finger"), ("top", 5, "gap"), []),
        (("left", 5, "finger"), ("top", 4, "gap"), ["5 fingers and gaps meet 4"]),
        (("left", 5, "finger"), ("top", 5, "finger"), ["both rows begin with the same"]),
        (("left", 4, "finger"), ("top", 4, "finger"), []),  # begins at the other end
    ],
)
def test_rows_of_fingers(
    side: tuple[str, int, str], rail: tuple[str, int, str], expected: list[str]
) -> None:
    text = joined(FINGERS % side, FINGERS % rail, "fingers: side.corner, with: rail.corner")
    assert told(text, "fingers-unequal") == expected  # 300 mm long but for the rail's left, 120


def test_notches_that_cross_are_as_wide_as_their_sheets() -> None:
    side = "n: {notch: {edge: top, at: 200, depth: 150, %s}}"
    rail = "n: {notch: {edge: bottom, at: 150, depth: 60, takes: ply}}"
    joint = "notch: side.n, with: rail.n"
    assert told(joined(side % "takes: ply", rail, joint), *RULES) == []
    tight = joined(side % "width: 17", rail, joint)
    message = "notch `side.n` is 0.8 mm too narrow for its sheet"
    assert told(tight, *RULES) == [message]


@pytest.mark.parametrize(
    ("tab", "messages"),
    [
        (0.7, ["`rail.tab` reaches 0.7 mm into its pocket"]),
        (3.9, ["`rail.tab` reaches 3.9 mm into its pocket"]),
        (4, []),
        (7.7, []),
    ],
)
def test_a_tab_reaches_half_way_down_its_housing(tab: float, messages: list[str]) -> None:
    housing = "slot: {pocket: {at: [200, 150], length: 60, angle: 90, takes: ply, depth: 8}}"
    text = joined(housing, TAB.replace("takes: ply", f"depth: {tab}"))
    assert told(text, "tab-barely-enters") == messages


PINNED = f"""
{TAB.replace("takes: ply", "depth: 60")}
tusk: {{slot: {{at: [-30, 60], length: 12, width: 9}}}}
"""


@pytest.mark.parametrize(
    ("tab", "messages"),
    [
        ("takes: ply", []),
        ("depth: 17.6", []),  # within half a millimetre
        ("depth: 24", ["`rail.tab` stands 6.2 mm out of its slot"]),
        ("depth: 40", ["`rail.tab` stands 22.2 mm out of its slot"]),
        ("depth: 19", ["`rail.tab` stands proud by 1.2 mm"]),
        ("depth: 14", ["`rail.tab` stays short by 3.8 mm"]),
        ("depth: 10", ["`rail.tab` stays short by 7.8 mm"]),
        ("depth: 24, end: proud", []),
        ("depth: 19, end: proud", []),
        ("depth: 12, end: short", []),
    ],
)
def test_tabs_end_flush_or_as_the_plan_says(tab: str, messages: list[str]) -> None:
    text = joined(rail=TAB.replace("takes: ply", tab))
    assert told(text, "tab-not-flush", "tab-proud") == messages


def test_a_fixed_depth_is_looked_at_over_the_whole_range() -> None:
    text = joined(rail=TAB.replace("takes: ply", "depth: 17.9"), ladder=LADDER)
    assert told(text, "tab-not-flush") == [
        "`rail.tab` stands proud by 0.7 mm (at 17.2mm)",
        "`rail.tab` stays short by 0.7 mm (at 18.6mm)",
    ]


def test_a_tab_opened_for_a_wedge_stands_out_on_purpose() -> None:
    assert told(joined(rail=PINNED), "tab-proud") == []
    bare = PINNED.replace("-30", "150")  # the opening lies in the rail, not in its tab
    assert told(joined(rail=bare), "tab-proud") == ["`rail.tab` stands 42.2 mm out of its slot"]
