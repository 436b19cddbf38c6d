"""Lengths for people, rounded in one place."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.lengths import (
    MM_PER_UNIT,
    both_text,
    inch_text,
    length_in,
    mm_text,
    sag_pair,
    size_in,
    size_pair,
    size_text,
)
from kerfolio.basis.reader import INCHES, METRIC
from kerfolio.basis.thickness import (
    caliper_inches,
    read_off,
    reading_in,
    sold_range_text,
    thickness_text,
)


def test_the_international_inch_and_foot() -> None:
    # International yard and pound agreement, 1959: 1 yd = 0.9144 m exactly.
    assert MM_PER_UNIT["in"] * 36 == Fraction(9144, 10)
    assert MM_PER_UNIT["ft"] * 3 == Fraction(9144, 10)


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (25.4, "1 in"),
        (19.05, "3/4 in"),
        (18.25625, "23/32 in"),  # 23/32 in, the US panel category, in mm
        (2438.4, "96 in"),
        (165.1, "6 1/2 in"),
        (0.0, "0 in"),
        (0.2, "0 in"),
        (-12.7, "-1/2 in"),
    ],
)
def test_inch_fractions(mm: float, text: str) -> None:
    assert inch_text(mm) == text


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        *((360.0, "360 mm"), (17.8, "17.8 mm"), (17.84, "17.8 mm"), (-0.01, "0 mm")),
        *((100.0, "100 mm"), (0.25, "0.3 mm"), (-0.25, "-0.2 mm")),  # halves go up
    ],
)
def test_millimetres(mm: float, text: str) -> None:
    assert mm_text(mm) == text


def test_the_readers_unit_stands_first() -> None:
    assert both_text(360.0) == "360 mm (14 3/16 in)"
    assert both_text(360.0, INCHES) == "14 3/16 in (360 mm)"


def test_inches_come_from_the_exact_length() -> None:
    """189.67 mm is 7.467 in: 7 15/32; rounded to 189.7 mm first and to sixteenths it was 7 1/2."""
    assert inch_text(189.67) == "7 15/32 in"
    assert inch_text(1280.22) == "50 13/32 in"
    assert size_pair((1280.22, 189.67), INCHES) == ("50 13/32 × 7 15/32 in", "1280.2 × 189.7 mm")
    assert size_text((360.0, 165.1), METRIC) == "360 × 165.1 mm (14 3/16 × 6 1/2 in)"


def test_thickness_in_inches_as_a_caliper_shows_it() -> None:
    """1 in = 25.4 mm exactly (international yard and pound agreement, 1959)."""
    assert thickness_text(17.8, METRIC) == "17.8 mm (0.701 in)"
    assert thickness_text(18.25625, INCHES) == "0.719 in (18.26 mm)"
    assert sold_range_text(17.2, 18.6, METRIC) == "17.2 to 18.6 mm (0.677 to 0.732 in)"
    assert sold_range_text(12.7, 12.7, INCHES) == "1/2 in (12.7 mm)"


def test_steps_of_a_ladder_stay_apart_in_inches() -> None:
    texts = [caliper_inches(17.2 + 0.1 * n) for n in range(15)]
    assert len(set(texts)) == 15


@pytest.mark.parametrize(
    ("mm", "metric", "inch"),
    [
        (0.0, "0 mm", "0 in"),
        (0.004, "under 0.01 mm", "under 0.001 in"),
        (0.127, "0.13 mm", "0.005 in"),
        (0.35, "0.35 mm", "0.014 in"),
        (1.5875, "1.6 mm", "1/16 in"),
        (2.3, "2.3 mm", "0.091 in"),  # 3/32 in is 3.5 % more
        (2.38, "2.4 mm", "3/32 in"),
        (5.16, "5.2 mm", "13/64 in"),
        (6.35, "6.4 mm", "1/4 in"),
        (9.5, "9.5 mm", "3/8 in"),
        (360.0, "360 mm", "14 3/16 in"),  # as `both_text` and every drawing
        (-12.7, "-12.7 mm", "-1/2 in"),
    ],
)
def test_a_length_in_the_plans_own_unit(mm: float, metric: str, inch: str) -> None:
    assert length_in(mm, METRIC) == metric
    assert length_in(mm, INCHES) == inch


@given(st.floats(min_value=-1e4, max_value=1e4))
def test_a_length_in_inches_is_within_two_hundredths_of_itself(mm: float) -> None:
    words = length_in(mm, INCHES)
    if words.startswith("under"):
        assert abs(mm) <= 0.0127
        return
    number = words.removesuffix(" in")
    sign = -1 if number.startswith("-") else 1
    inches = sign * float(sum(Fraction(part) for part in number.lstrip("-").split()))
    assert abs(inches - mm / 25.4) <= max(0.02 * abs(mm / 25.4), 0.0005) + 1e-6
    if abs(mm) >= 25 / 32 * 25.4:
        assert words == inch_text(mm)


def test_a_reading_in_the_plans_own_unit() -> None:
    assert reading_in(17.82, METRIC) == "17.82 mm"
    assert reading_in(17.82, INCHES) == "0.702 in"
    assert reading_in(0.2, INCHES) == "0.008 in"
    assert reading_in(0.002, METRIC) == "under 0.01 mm"
    assert reading_in(0.002, INCHES) == "under 0.001 in"
    assert reading_in(0.0, INCHES) == "0 in"


def test_a_size_in_the_plans_own_unit() -> None:
    assert size_in((360.0, 450.04), METRIC) == "360 x 450 mm"
    assert size_in((360.0, 165.1), INCHES) == "14 3/16 x 6 1/2 in"


def test_a_thickness_is_read_to_a_hundredth_of_a_millimetre() -> None:
    assert read_off(18.25625) == 18.26  # 23/32 in
    assert read_off(17.8) == 17.8
    assert read_off(11.90625) == 11.91  # 15/32 in
    assert read_off(17.865) == 17.87  # a half, though the nearest double lies below it


@given(st.floats(min_value=-1e5, max_value=1e5))
def test_an_inch_text_is_within_half_a_step(mm: float) -> None:
    number = inch_text(mm).removesuffix(" in")
    sign = -1 if number.startswith("-") else 1
    value = sign * sum(Fraction(part) for part in number.lstrip("-").split())
    assert abs(float(value) * 25.4 - mm) <= 25.4 / 64 + 1e-9


def test_a_sag_has_a_tenth_of_a_millimetre_and_a_hundredth_of_an_inch() -> None:
    assert sag_pair(2.44, METRIC) == ("2.4 mm", "0.10 in")
    assert sag_pair(25.4, INCHES) == ("1.00 in", "25.4 mm")
    assert sag_pair(0.04, METRIC) == ("under 0.1 mm", "under 0.01 in")
    assert sag_pair(0.1, INCHES) == ("under 0.01 in", "0.1 mm")
