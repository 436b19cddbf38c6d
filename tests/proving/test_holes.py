"""Holes for hardware want hardware: the figures are the plans' own."""

from __future__ import annotations

import pytest

from tests.plans import RACK
from tests.proving.two_panels import plan_text, told

RULE = "hole-without-hardware"
HOLE = "bolt: {hole: {at: [100, 150], for: bolt-m6x40}}"
PILOT = "pilot: {hole: {at: [100, 60], pilot: screw-4x30}}"
BORE = "bore: {bore: {edge: left, at: 60, pilot: screw-4x50, depth: 30}}"
LISTED = "hardware: [{item: bolt-m6x40, count: 1, for: the side}]"
SCREWED = "fastenings: [{screw: screw-4x30, joins: [side.screw, rail.pilot]}]"


@pytest.mark.parametrize(
    ("side", "rail", "head", "messages"),
    [
        (HOLE, PILOT, LISTED, ["`rail.pilot` is for `screw-4x30`, which no list names"]),
        (HOLE, BORE, LISTED, ["`rail.bore` is for `screw-4x50`, which no list names"]),
        (
            HOLE,
            "plain: {hole: {at: [9, 60], diameter: 6}}",
            "",
            ["`side.bolt` is for `bolt-m6x40`, which no list names"],
        ),
        (HOLE, "plain: {hole: {at: [9, 60], diameter: 6}}", LISTED, []),
        ("screw: {hole: {at: [100, 60], diameter: 4.5}}", PILOT, SCREWED, []),
    ],
)
def test_a_hole_for_what_nothing_names_is_told(
    side: str, rail: str, head: str, messages: list[str]
) -> None:
    assert told(plan_text(side, rail, head=head), RULE) == messages


def test_hardware_of_a_step_counts() -> None:
    assert told(RACK, RULE) == []
    listed = "hardware: [{item: bolt-m6x40, count: 2, for: sides}]\n"
    stepped = RACK.replace(listed, "")
    assert told(stepped, RULE) == []
    none = stepped.replace("    hardware: {bolt-m6x40: 2}\n", "")
    assert told(none, RULE) == ["`side.bolt` is for `bolt-m6x40`, which no list names"]
