"""Ladders: rungs counted, and the steps that advice proposes."""

from __future__ import annotations

import pytest

from kerfolio.basis.ladder import rung_count, sparse_step


@pytest.mark.parametrize(
    ("first", "last", "least", "step", "count"),
    [
        (17.2, 18.6, 0.1, 0.2, 8),
        (17.0, 19.0, 0.1, 0.2, 11),
        (17.2, 17.4, 0.1, 0.1, 3),
        (17.0, 17.05, 0.1, 0.1, 1),
        (10.0, 100.0, 0.1, 10.0, 10),
        (0.677, 0.732, 0.005, 0.005, 12),
    ],
)
def test_a_step_makes_a_dozen_rungs_at_most(
    first: float, last: float, least: float, step: float, count: int
) -> None:
    assert sparse_step(first, last, least) == pytest.approx(step)
    assert rung_count(first, last, step) == count
