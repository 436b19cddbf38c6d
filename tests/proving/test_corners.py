"""Corners that a sheet must fill: a round cutter leaves r (sqrt 2 - 1) in each (geometry)."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding
from tests.proving.two_panels import plan_text, remarks
from tests.settling.panels import findings_of

RULE = "corner-needs-relief"


def found(features: str, relief: str) -> list[Finding]:
    return [each for each in findings_of(features, relief=relief) if each.rule == RULE]


@pytest.mark.parametrize(
    ("feature", "corners"),
    [
        ("s: {slot: {at: [200, 150], length: 60, takes: ply}}", 4),
        ("s: {notch: {edge: top, at: 100, depth: 40, takes: ply}}", 2),
        ("s: {pocket: {at: [200, 150], length: 60, takes: ply, depth: 6}}", 4),
    ],
)
def test_without_relief_corners_that_take_a_sheet_are_told(feature: str, corners: int) -> None:
    (finding,) = found(feature, "none")
    assert "has no relief in its corners" in finding.message
    # A 6 mm cutter leaves 3 x 0.4142 = 1.24 mm.
    assert "leaves 1.24 mm in each" in finding.advice
    assert finding.mark is not None
    assert len(finding.mark.rings) == corners
    assert found(feature, "dog-bone") == []
    assert found(feature, "sideways") == []


def test_openings_that_take_nothing_may_have_round_corners() -> None:
    assert found("w: {window: {at: [200, 150], rectangle: [60, 40]}}", "none") == []
    assert found("s: {slot: {at: [200, 150], length: 60, width: 20}}", "none") == []


SLOT = "slot: {slot: {at: [200, 150], length: 60, angle: 90, %s}}"
TAB = "tab: {tabs: {edge: left, at: 30, width: 60, takes: ply}}"
JOINT = "tab: rail.tab, into: side.slot"


def test_a_slot_of_stated_width_that_a_joint_fills_is_told() -> None:
    (finding,) = remarks(plan_text(SLOT % "width: 18", TAB, JOINT), RULE)
    assert finding.message == "slot `side.slot` has no relief in its corners"
    assert "say which sheet it `takes`" in finding.advice
    assert remarks(plan_text(SLOT % "takes: ply", TAB, JOINT), RULE) == []
