"""Quantities with a unit, read exactly; what can be read two ways is refused with advice."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.quantity import read_quantity
from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told


@pytest.mark.parametrize(
    ("unit", "metres"),
    # NIST SP 811, Appendix B: inch 2.54 E-02 m and foot 3.048 E-01 m, both exact (from memory).
    [("in", Fraction(254, 10000)), ("ft", Fraction(3048, 10000)), ("cm", Fraction(1, 100))],
)
def test_one_of_each_unit(unit: str, metres: Fraction) -> None:
    assert read_quantity(f"1 {unit}") == metres * 1000


@pytest.mark.parametrize(
    ("text", "mm"),
    # Exact products of the international inch of 1959 (25.4 mm).
    [
        ("18", Fraction(18)),
        ("18 mm", Fraction(18)),
        ("17.8mm", Fraction("17.8")),
        (".5 mm", Fraction(1, 2)),
        ("3 cm", Fraction(30)),
        ("1.2 m", Fraction(1200)),
        ("3/4 in", Fraction("19.05")),
        ("3/4in", Fraction("19.05")),
        ('23/32"', Fraction("18.25625")),
        ("23/32″", Fraction("18.25625")),
        ("3 / 4 in", Fraction("19.05")),
        ('6-1/2"', Fraction("165.1")),
        ("6 1/2 in", Fraction("165.1")),
        ("2 ft", Fraction("609.6")),
        ("4'", Fraction("1219.2")),
        ("1' 6-1/2\"", Fraction("469.9")),
        ("1'6\"", Fraction("457.2")),
        ("1'-6 1/2\"", Fraction("469.9")),
        ("1’ 6”", Fraction("457.2")),
        ("1 ft 6 in", Fraction("457.2")),
        ("1 ft 6-1/2 in", Fraction("469.9")),
        ("  8 ft ", Fraction("2438.4")),
    ],
)
def test_reads(text: str, mm: Fraction) -> None:
    assert read_quantity(text) == mm


@pytest.mark.parametrize(
    ("text", "message", "advice"),
    [
        ("", "nothing is no length", "Write a length such as `18 mm` or `3/4 in`."),
        ("about 18", "`about 18` is no length", "Write a length such as `18 mm` or `3/4 in`."),
        ("-3 mm", "`-3 mm` is no length", "Write a length such as `18 mm` or `3/4 in`."),
        (
            "18,5 mm",
            "`18,5` has a comma",
            "Write a point: `18.5`; no mark between thousands.",
        ),
        (
            "1½ in",
            "`½` is one sign",
            "Write the fraction with a slash and a unit: `1-1/2 in`.",
        ),
        ("1 1/2", "`1 1/2` has no unit", "Write `1 1/2 in`, or a decimal."),
        ("3/4", "`3/4` has no unit", "Write `3/4 in`, or a decimal."),
        (
            "6-1/2",
            "`6-1/2` can be read two ways",
            "Write `6-1/2 in` for a mixed number, `6 - 1/2` to subtract.",
        ),
        (
            "6-3/2 in",
            "`6-3/2 in` is no mixed number",
            "Put blanks round the minus to subtract, or write a fraction below one.",
        ),
        ("1/0 in", "`1/0 in` divides by zero", "Write another fraction."),
        ("18 MM", "`MM` is no unit here", "Write `18 mm`."),
        (
            "3/4 inch",
            "`inch` is no unit here",
            "Write `3/4 in`.",
        ),
        ("2 inches", "`inches` is no unit here", "Write `2 in`."),
        ("6''", "`6''` has two marks", 'Write `"` for inches.'),
        ("2' 6", "no inches after the feet in `2' 6`", "Write `1' 6\"` or `1 ft 6 in`."),
        ("2' 6'", "no inches after the feet in `2' 6'`", "Write `1' 6\"` or `1 ft 6 in`."),
        (
            "18 mm 5",
            "`18 mm 5` is no single length",
            "Write one length, such as `18 mm` or `1' 6-1/2\"`.",
        ),
        (
            "18 parsec",
            "`18 parsec` has no operator",
            "To multiply write `18*parsec`; units are `mm`, `cm`, `m`, `in`, `ft`.",
        ),
    ],
)
def test_refuses_with_advice(text: str, message: str, advice: str) -> None:
    read = read_quantity(text)
    assert isinstance(read, Complaint)
    assert (str(read), told(read.advice, METRIC)) == (message, advice)


COUNTS = st.integers(0, 10**6)


@given(
    st.decimals(0, 10**6, places=4),
    st.sampled_from(sorted(MM_PER_UNIT)),
    st.sampled_from(["", " "]),
)
def test_decimals_are_exact(number: object, unit: str, blank: str) -> None:
    assert read_quantity(f"{number}{blank}{unit}") == Fraction(str(number)) * MM_PER_UNIT[unit]


@given(
    COUNTS,
    st.integers(1, 64),
    st.integers(1, 63),
    st.sampled_from("- "),
    st.sampled_from(['"', " in"]),
)
def test_mixed_numbers_are_exact(whole: int, bottom: int, top: int, joint: str, unit: str) -> None:
    read = read_quantity(f"{whole}{joint}{top}/{bottom}{unit}")
    if top < bottom:
        assert read == (whole + Fraction(top, bottom)) * Fraction(254, 10)
    else:
        assert isinstance(read, Complaint)


@given(st.integers(0, 999), st.integers(0, 11), st.integers(1, 63))
def test_feet_and_inches_are_exact(feet: int, inches: int, top: int) -> None:
    read = read_quantity(f"{feet}' {inches}-{top}/64\"")
    assert read == (feet * 12 + inches + Fraction(top, 64)) * Fraction(254, 10)


@given(st.text(alphabet="0123456789.,/'\"′″½ -+mcinft", max_size=20) | st.text(max_size=20))
def test_any_text_is_a_length_or_a_complaint(text: str) -> None:
    read = read_quantity(text)
    if isinstance(read, Complaint):
        assert read
        assert read.advice
    else:
        assert read >= 0
