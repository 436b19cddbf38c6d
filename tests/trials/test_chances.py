"""Statistics of ordered words, against tables and worked examples printed elsewhere."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.model.outcome import Grade
from kerfolio.trials.chances import (
    RISK,
    assured,
    is_most,
    more_needed,
    share_within,
    tally,
)

SIGN_TEST = {5: 0, 6: 0, 7: 0, 8: 1, 9: 1, 10: 1, 11: 2, 12: 2, 13: 3, 16: 4, 18: 5, 21: 6, 25: 7}
"""How many of so many may be of the less frequent sign, one tail, 0.05: Triola, Elementary
Statistics, Table A-7 (critical values for the sign test)."""


@pytest.mark.parametrize(("total", "odd"), SIGN_TEST.items())
def test_the_sign_test_is_that_of_the_printed_table(total: int, odd: int) -> None:
    assert is_most(total - odd, total, 0.05)
    assert not is_most(total - odd - 1, total, 0.05)


@pytest.mark.parametrize("total", [1, 2, 3, 4])
def test_the_table_has_no_value_for_so_few(total: int) -> None:
    assert not is_most(total, total, 0.05)


def test_a_worked_example_of_the_sign_test() -> None:
    """HyperStat, sign test: 7 of 8 have a one-tailed probability of 0.0352."""
    assert is_most(7, 8, 0.0353)
    assert not is_most(7, 8, 0.0351)


def test_three_cuts_are_never_enough_and_four_alike_are() -> None:
    """Binomial tail by hand: 1/2^3 = 0.125 and 1/2^4 = 0.0625, against a risk of 0.1."""
    assert RISK == 0.1
    assert not is_most(3, 3)
    assert is_most(4, 4)
    assert not is_most(4, 5)
    assert is_most(6, 7)


def test_shares_lie_where_the_printed_examples_say() -> None:
    """NIST/SEMATECH e-Handbook 7.2.4.1: 4 of 20, 90 % (from memory). All or none of n: the root of
    half the risk, as the reference of R's GenBinomApps prints it."""
    assert share_within(4, 20) == pytest.approx((0.071354, 0.401029), abs=1e-6)
    assert share_within(6, 6) == pytest.approx((0.05 ** (1 / 6), 1.0))
    assert share_within(0, 6) == pytest.approx((0.0, 1 - 0.05 ** (1 / 6)))


CLEAN, NEARLY, SAND, MEND, SPOILED = reversed(Grade)


def test_grades_are_counted_and_the_middle_one_is_one_of_them() -> None:
    counted = tally([CLEAN, SAND, CLEAN, SPOILED])
    assert counted.seen == ((CLEAN, 2), (SAND, 1), (SPOILED, 1))
    assert counted.median is SAND, "of two middle ones the worse"
    assert counted.at_least(SAND) == 3


def test_what_is_assured_is_what_most_reach() -> None:
    assert assured(tally([CLEAN] * 4)) is CLEAN
    assert assured(tally([CLEAN] * 3 + [NEARLY])) is NEARLY
    assert assured(tally([CLEAN] * 6 + [SPOILED])) is CLEAN, "one in seven does not spoil it"
    assert assured(tally([CLEAN] * 3)) is None
    assert assured(tally([])) is None


def test_it_says_how_many_more_would_tell() -> None:
    assert more_needed(tally([CLEAN]), NEARLY) == 3
    assert more_needed(tally([CLEAN, CLEAN, SAND]), NEARLY) == 4
    assert more_needed(tally([CLEAN] * 4), NEARLY) == 0


@given(st.lists(st.sampled_from(Grade), max_size=30), st.sampled_from(Grade))
def test_a_better_cut_never_makes_it_look_worse(grades: list[Grade], more: Grade) -> None:
    before, after = assured(tally([*grades, Grade.SPOILED])), assured(tally([*grades, more]))
    assert (after or 0) >= (before or 0)


@given(st.lists(st.sampled_from(Grade), min_size=1, max_size=30))
def test_so_many_more_are_just_enough(grades: list[Grade]) -> None:
    counted = tally(grades)
    more = more_needed(counted, NEARLY)
    assert is_most(counted.at_least(NEARLY) + more, counted.total + more)
    assert not more or not is_most(counted.at_least(NEARLY) + more - 1, counted.total + more - 1)
