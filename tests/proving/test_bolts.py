"""Bolts: lengths are plain sums; a nut's height is about that of ISO 4032 (from memory)."""

from __future__ import annotations

import pytest

from tests.proving.two_panels import plan_text, told

RULES = (
    *("bolt-too-short", "bolt-shorter-than-stack", "bolt-longer-than-stack"),
    *("bolt-beside-nut", "bolt-before-nut"),
)


@pytest.mark.parametrize(
    ("bolt", "messages"),
    [
        ("bolt-m4x16", ["`bolt-m4x16` ends inside `side.bolt`"]),  # 16 mm in 17.8 mm
        ("bolt-m4x20", []),
    ],
)
def test_a_bolt_comes_out_of_its_part(bolt: str, messages: list[str]) -> None:
    side = f"bolt: {{hole: {{at: [100, 150], for: {bolt}}}}}"
    assert told(plan_text(side), *RULES) == messages


def test_a_counterbore_lets_a_short_bolt_through() -> None:
    bore = "counterbore: {diameter: 8, depth: 5}"
    side = f"bolt: {{hole: {{at: [100, 150], for: bolt-m4x16, {bore}}}}}"
    assert told(plan_text(side), *RULES) == []


@pytest.mark.parametrize(
    ("length", "rule"),
    [
        # Two sheets are 35.6 mm, a nut M6 about 4.8 mm: 40.4 mm at least, 55.4 mm at most.
        (40, "bolt-shorter-than-stack"),
        (45, ""),
        (50, ""),
        (60, "bolt-longer-than-stack"),
    ],
)
def test_a_bolt_through_two_parts_takes_its_nut(length: int, rule: str) -> None:
    hole = f"{{hole: {{at: [100, 60], for: bolt-m6x{length}}}}}"
    text = plan_text(f"a: {hole}", f"b: {hole}", "face: rail.b, on: side.a")
    found = {each for each in RULES if told(text, each)}
    assert found == ({rule} if rule else set())


SLOTS = """
slots:
  slot: {at: [200, 125], length: 30, angle: 90, takes: ply}
  repeat: {count: 2, step: [0, 50]}"""
TABS = "tabs: {tabs: {edge: left, at: [20, 70], width: 30, takes: ply}}"
JOINT = "tab: rail.tabs, into: side.slots"


def drawn(bolt: str = "150", nut: str = "25, 60", item: str = "bolt-m6x50") -> str:
    side = f"{SLOTS}\nbolt: {{hole: {{at: [200, {bolt}], for: {item}}}}}"
    rail = f"{TABS}\nnut: {{hole: {{at: [{nut}], for: barrel-nut-m6}}}}"
    return plan_text(side, rail, JOINT)


@pytest.mark.parametrize(
    ("text", "messages"),
    [
        # The bolt lies midway between the slots (125 and 175), the nut midway between the tabs
        # (20 and 100): 50 - 17.8 = 32.2 mm of bolt reach past a nut 25 mm in.
        (drawn(), []),
        (drawn(bolt="162"), ["the bolt of `side.bolt` misses its nut by 12 mm"]),
        (drawn(bolt="162", nut="25, 72"), []),
        (drawn(bolt="162", nut="25, 48"), []),  # the piece may lie the other way round
        (drawn(nut="25, 64"), ["the bolt of `side.bolt` misses its nut by 4 mm"]),
        (drawn(nut="40, 60"), ["`bolt-m6x50` ends 7.8 mm before the middle of its nut"]),
        (drawn(item="bolt-m6x40"), ["`bolt-m6x40` ends 2.8 mm before the middle of its nut"]),
    ],
)
def test_a_bolt_meets_its_barrel_nut(text: str, messages: list[str]) -> None:
    assert told(text, *RULES) == messages


def test_a_bolt_without_a_nut_in_the_other_part_is_left_alone() -> None:
    side = f"{SLOTS}\nbolt: {{hole: {{at: [200, 150], for: bolt-m6x50}}}}"
    assert told(plan_text(side, TABS, JOINT), *RULES) == []
