"""Named sizes of a plan in inches: lengths in mm, worked by hand with 25.4 mm an inch."""

from __future__ import annotations

import json

import pytest

from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from kerfolio.publishing.plan_json import plan_json
from tests.agreement.spoilings import BOX, box_layout
from tests.plans import RACK, proved, workshop

SIZES = """\
sizes:
  t: thickness(ply)
  long: 12
  wide: 127 mm
  tilt: 30 + 3
  slots: 2
  turns: 2*slots
  pitch: long/slots
  room: long - 2*t + 1/16 in
  face: long*wide
  side: sqrt(face)
  rows: round(long/pitch)
  slope: tan(tilt)
  least: min(long, 3)
parts:
"""
STATED = BOX.replace("parts:\n", SIZES).replace("angle: 33", "angle: tilt")
STATED = STATED.replace(
    "bed: {pocket: {at: [3, 2], rectangle: [2, 1], depth: 1/8}}",
    "bed: {pocket: {at: [1.5, 2], rectangle: [0.5, 1], depth: 1/8}, "
    "repeat: {count: slots, step: [pitch/4, 0]}}",
)


def test_lengths_are_in_mm_and_other_numbers_as_they_are() -> None:
    assert STATED.count("angle: tilt") == STATED.count("count: slots") == 1
    found = LaidOut(proof=proved(STATED), layout=box_layout(), fresh="")
    (variant,) = json.loads(plan_json(edition_of(workshop(STATED), found)))["variants"]
    values = {name: each["value"] for name, each in variant["sizes"].items()}
    thickness = variant["sheets"]["ply"]["thickness"]
    assert thickness == 12.3, "31/64 in as a calliper reads it"
    assert values == {
        "t": pytest.approx(12.3, abs=1e-4),
        "long": 304.8,
        "wide": 127,
        "tilt": 33,
        "slots": 2,
        "turns": 4,
        "pitch": 152.4,
        "room": pytest.approx(304.8 - 24.6 + 1.5875, abs=1e-4),
        "face": pytest.approx(304.8 * 127, abs=1e-3),
        "side": pytest.approx((304.8 * 127) ** 0.5, abs=1e-4),
        "rows": 2,
        "slope": pytest.approx(0.6494, abs=1e-4),
        "least": pytest.approx(76.2),
    }
    assert variant["sizes"]["room"]["reason"] == "long - 2*t + 1/16 in"


def test_a_plan_in_mm_states_its_sizes_as_they_are() -> None:
    drawn = proved(RACK).drawn
    assert drawn is not None
    assert [(name, size.value) for name, size in drawn.sizes] == [
        ("t", 17.6),
        ("w", 300.0),
        ("h", 120.0),
    ]
