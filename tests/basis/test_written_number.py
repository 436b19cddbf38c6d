"""Numbers written with marks or exponents: refused with every reading, never bent into one."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.expression import Expression, parse
from kerfolio.basis.quantity import read_quantity
from kerfolio.basis.written_number import number_fault

TWO_WAYS = "Write `1.2` if it is a decimal comma, `1200` if it parts thousands."


@pytest.mark.parametrize(
    ("text", "message", "advice"),
    [
        ("1,200", "`1,200` can be read two ways", TWO_WAYS),
        ("1,200 mm", "`1,200` can be read two ways", TWO_WAYS),
        ("1,200.5", "`1,200.5` has a mark between thousands", "Write `1200.5`."),
        ("1.200,5", "`1.200,5` has a mark between thousands", "Write `1200.5`."),
        ("1,200,000", "`1,200,000` has a mark between thousands", "Write `1200000`."),
        ("1.200.000", "`1.200.000` has a mark between thousands", "Write `1200000`."),
        ("1 200", "`1 200` has a mark between thousands", "Write `1200`."),
        ("12 200,50 mm", "`12 200,50` has a mark between thousands", "Write `12200.50`."),
        ("1'200", "`1'200` has a mark between thousands", "Write `1200`."),
        ("1’200 mm", "`1’200` has a mark between thousands", "Write `1200`."),
        ("0,125", "`0,125` has a comma", "Write a point: `0.125`; no mark between thousands."),
        ("17,8 mm", "`17,8` has a comma", "Write a point: `17.8`; no mark between thousands."),
        ("12,34,5", "`12,34,5` is no number", "Write digits with one point: `12.5`."),
        ("1.2.0", "`1.2.0` is no number", "Write digits with one point: `12.5`."),
        ("1e7", "`1e7` has an exponent", "Write `10000000`."),
        ("1e+007", "`1e+007` has an exponent", "Write `10000000`."),
        ("1e99", "`1e99` has an exponent", "Write it out in digits."),
        ("1e9999999999", "`1e9999999999` has an exponent", "Write it out in digits."),
        ("1e-9999999999", "`1e-9999999999` has an exponent", "Write it out in digits."),
        ("2.5E-3 mm", "`2.5E-3` has an exponent", "Write `0.0025`."),
        ("1e300", "`1e300` has an exponent", "Write it out in digits."),
    ],
)
def test_what_cannot_be_meant_as_it_stands_is_refused(text: str, message: str, advice: str) -> None:
    for read in (read_quantity(text), parse(text, "mm"), parse(f"2*({text})", "in")):
        assert isinstance(read, Complaint)
        assert (str(read), read.advice) == (message, advice)


@pytest.mark.parametrize("text", ["1.200", "1200", "max(1,200)", "min(1, 200)", "1/200", "2' 6\""])
def test_what_can_be_read_one_way_is_read(text: str) -> None:
    assert isinstance(parse(text, "mm"), Expression)


def test_a_reading_that_cannot_be_is_not_offered() -> None:
    fault = number_fault("18,000", possible=lambda each: float(each) > 100)
    assert fault is not None
    assert (str(fault), fault.advice) == ("`18,000` has a comma", "Write `18000`.")


@given(
    st.integers(1, 999),
    st.lists(st.integers(0, 999), min_size=1, max_size=3),
    st.sampled_from(",' "),
)
def test_thousands_keep_every_digit(head: int, groups: list[int], mark: str) -> None:
    # All digits, in their order: what the standard library reads without the marks.
    written = mark.join([str(head), *(f"{each:03d}" for each in groups)])
    fault = number_fault(written)
    assert fault is not None
    assert f"`{Decimal(written.replace(mark, ''))}`" in fault.advice
