"""Depths, drills, clearances and feeds as people read them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.cutting_lengths import (
    acceleration_in,
    depth_in,
    depth_text,
    depths_in,
    drill_in,
    drill_text,
    feed_in,
    fit_in,
    place_text,
    tool_text,
)
from kerfolio.basis.reader import INCHES, METRIC


def test_depths_are_decimals_of_an_inch_as_machines_show_them() -> None:
    assert depth_in(0.31 * 25.4, INCHES) == "0.31 in"
    assert depth_in(0.254, INCHES) == "0.01 in", "not 1/64"
    assert depth_in(25.4 / 64, INCHES) == "0.016 in"
    assert depth_text(0.31 * 25.4, INCHES) == "0.31 in (7.87 mm)"
    assert depth_text(8.0, METRIC) == "8 mm (5/16 in)"
    assert depths_in((6.0, 8.0), METRIC, " and ") == "6 and 8 mm"
    assert depths_in((3.175, 6.35), INCHES, " and ") == "0.125 and 0.25 in"


@pytest.mark.parametrize(
    ("mm", "drill"),
    [
        # Clearance holes of ASME B18.2.8, normal series, in mm and their inch drills
        # (Machinery's Handbook, 31st edition): 1/4, 5/16, 7/16 in.
        *((7.1, "9/32 in"), (8.7, "11/32 in"), (11.8, "15/32 in")),
        *((6.35, "1/4 in"), (3 / 32 * 25.4, "3/32 in")),
        (6.0, "1/4 in, 0.014 in over"),
    ],
)
def test_a_drill_is_the_next_of_the_fractional_series(mm: float, drill: str) -> None:
    assert drill_in(mm, INCHES) == drill


def test_a_drill_in_millimetres_is_the_hole() -> None:
    assert drill_in(6.6, METRIC) == "6.6 mm"
    assert drill_text(7.1, INCHES) == "9/32 in (7.1 mm)"
    assert drill_text(6.35, METRIC) == "6.35 mm (1/4 in)"


@given(st.floats(0.5, 40.0))
def test_no_drill_is_smaller_than_its_hole(mm: float) -> None:
    number = drill_in(mm, INCHES).split(" in")[0]
    size = sum(
        int(a) / int(b) if b else int(a) for a, _, b in (x.partition("/") for x in number.split())
    )
    assert size >= mm / 25.4 - 0.0005 - 1e-9
    assert size - mm / 25.4 < 1 / 64 + 1e-9
    told = drill_in(mm, INCHES).partition(", ")[2]
    assert bool(told) == (size - mm / 25.4 > 0.005) or math.isclose(size - mm / 25.4, 0.005)


def test_clearances_feeds_places_and_cutters() -> None:
    assert (fit_in(0.127, INCHES), fit_in(0.125, METRIC)) == ("0.005 in", "0.125 mm")
    assert (feed_in(3556.0, INCHES), feed_in(3556.0, METRIC)) == ("140 in/min", "3556 mm/min")
    assert (acceleration_in(500.0, INCHES), acceleration_in(500.0, METRIC)) == (
        "20 in/s²",
        "500 mm/s²",
    )
    assert place_text(18 * 25.4, INCHES) == "18 in (457.2 mm)"
    assert place_text(17.5 * 25.4 - 1.0, INCHES) == "17.461 in (443.5 mm)"
    assert tool_text(6.35, INCHES) == "1/4 in (6.35 mm)"
    assert tool_text(6.35, METRIC) == "6.35 mm (0.250 in)"
