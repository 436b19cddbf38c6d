"""Lengths for people, rounded in one place."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.lengths import MM_PER_UNIT, both_text, inch_text, mm_text, sag_pair


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
    [(360.0, "360 mm"), (17.8, "17.8 mm"), (17.84, "17.8 mm"), (-0.01, "0 mm"), (100.0, "100 mm")],
)
def test_millimetres(mm: float, text: str) -> None:
    assert mm_text(mm) == text


def test_the_readers_unit_stands_first() -> None:
    assert both_text(360.0) == "360 mm (14 3/16 in)"
    assert both_text(360.0, "in") == "14 3/16 in (360 mm)"


@given(st.floats(min_value=-1e5, max_value=1e5))
def test_an_inch_text_is_within_half_a_step(mm: float) -> None:
    number = inch_text(mm).removesuffix(" in")
    sign = -1 if number.startswith("-") else 1
    value = sign * sum(Fraction(part) for part in number.lstrip("-").split())
    assert abs(float(value) * 25.4 - mm) <= 25.4 / 64 + 1e-9


def test_a_sag_has_a_tenth_of_a_millimetre_and_a_hundredth_of_an_inch() -> None:
    assert sag_pair(2.44, "mm") == ("2.4 mm", "0.10 in")
    assert sag_pair(25.4, "in") == ("1.00 in", "25.4 mm")
    assert sag_pair(0.04, "mm") == ("under 0.1 mm", "under 0.01 in")
    assert sag_pair(0.1, "in") == ("under 0.01 in", "0.1 mm")
