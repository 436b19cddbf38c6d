"""Lengths that cannot be, and what they were perhaps meant to be."""

from __future__ import annotations

import pytest

from kerfolio.basis.reader import INCHES, METRIC
from kerfolio.basis.said import told
from kerfolio.basis.slips import meant_length, slip_advice


@pytest.mark.parametrize(
    ("mm", "inches", "meant"),
    [
        (178.0, False, "17.8 mm"),
        (1.78, False, "17.8 mm"),
        (0.7, False, "0.7 in"),
        (18 * 25.4, True, "18 mm"),
        (40.0, False, ""),
    ],
)
def test_a_point_out_of_place_or_the_other_unit(mm: float, inches: bool, meant: str) -> None:
    assert told(meant_length(mm, 15.0, 20.0, inches=inches), METRIC) == meant


def test_a_point_out_of_place_is_told_in_the_plans_unit() -> None:
    assert (
        told(slip_advice(meant_length(177.8, 15.0, 20.0), ""), INCHES) == "Did you mean `0.7 in`?"
    )
    assert told(slip_advice(meant_length(40.0, 15.0, 20.0), "Measure."), INCHES) == "Measure."
