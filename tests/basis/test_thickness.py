"""Thicknesses as sheets are sold and as callipers read, and the names of their folders."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.reader import INCHES, METRIC
from kerfolio.basis.thickness import (
    caliper_inches,
    precise_in,
    read_off,
    sold_in,
    sold_range_in,
    sold_text,
    thickness_label,
    thickness_text,
)


@pytest.mark.parametrize(
    ("mm", "metric", "inch"),
    [
        (17.8, "17.8mm", "0.701in"),
        (18.0, "18.0mm", "0.709in"),
        (17.86, "17.86mm", "45-64in"),
        (18.26, "18.26mm", "23-32in"),  # 23/32 in, the US panel category
        (18.25625, "18.26mm", "23-32in"),
        (18.27, "18.27mm", "0.719in"),
        (25.4, "25.4mm", "1in"),
        (28.58, "28.58mm", "1-1-8in"),
    ],
)
def test_a_folder_is_called_by_what_the_sheet_is_sold_as(mm: float, metric: str, inch: str) -> None:
    assert thickness_label(mm, "mm") == metric
    assert thickness_label(mm, "in") == inch


def test_a_thickness_is_told_by_its_fraction_where_it_is_one() -> None:
    assert sold_in(18.26, INCHES) == "23/32 in"
    assert sold_in(18.0, INCHES) == "0.709 in"
    assert sold_in(28.58, INCHES) == "1 1/8 in"
    assert sold_in(17.8, METRIC) == "17.8 mm"
    assert sold_text(18.26, INCHES) == "23/32 in (18.26 mm)"
    assert sold_text(18.26, METRIC) == "18.26 mm (0.719 in)"
    assert sold_range_in(17.46, 18.26, INCHES) == "11/16 to 23/32 in"
    assert sold_range_in(17.46, 17.46, INCHES) == "11/16 in"
    assert thickness_text(18.26, INCHES) == "0.719 in (18.26 mm)"


@given(st.integers(1, 128))
def test_every_64th_of_an_inch_is_known_again_as_a_calliper_shows_it(count: int) -> None:
    exact = Fraction(count, 64)
    mm = read_off(float(exact) * 25.4)
    assert Fraction(sum(map(Fraction, sold_in(mm, INCHES).removesuffix(" in").split()))) == exact
    assert abs(float(caliper_inches(mm).removesuffix(" in")) - float(exact)) <= 0.0005 + 1e-9


def test_eleven_sixteenths_are_0688() -> None:
    """11/16 = 0.6875, a half that goes up; from 17.46 mm alone it was 0.687."""
    assert caliper_inches(17.46) == "0.688 in"


def test_a_width_is_a_fraction_only_where_it_is_one() -> None:
    assert precise_in(18.51, INCHES) == "0.729 in", "no 47/64, which is 0.734"
    assert precise_in(6.35, INCHES) == "1/4 in"
