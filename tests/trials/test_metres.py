"""How far a cutter has cut, and whether outcomes fall."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from kerfolio.model.outcome import Grade, Outcome
from kerfolio.model.statement import Named
from kerfolio.model.stock import CutterStock
from kerfolio.model.trial import Spent, Trial
from kerfolio.trials.metres import chance_of_fall, metres_at, trends
from tests.trials.log_checks import TUNA

FIRST = date(2026, 5, 1)
CUTTER = CutterStock(
    name="own", title="Own", diameter=6, kind="up-cut", flutes=2, cutting_length=22
)


def job(day: int, metres: float | None, grade: Grade | None = None, **more: object) -> Trial:
    plain = Trial(
        date=FIRST + timedelta(days=day),
        job=True,
        cutter=Named("own"),
        stock=Named("birch-plywood-18"),
        spent=Spent(metres=metres),
        outcome=Outcome(whole=grade),
    )
    return replace(plain, **more)  # type: ignore[arg-type]


LOG = (job(0, 40), job(10, 25.5), job(12, None), job(20, 30), job(21, 9, cutter=Named("other")))


def test_metres_are_summed_since_it_was_new_and_since_it_was_sharpened() -> None:
    sharp = replace(CUTTER, metres_before=100, sharpened=(FIRST + timedelta(days=10),))
    found = metres_at(sharp, LOG)
    assert (found.new, found.sharp, found.jobs, found.silent) == (195.5, 55.5, 3, 1)
    assert found.sharpened == FIRST + timedelta(days=10)
    early = metres_at(sharp, LOG, FIRST + timedelta(days=5))
    assert (early.new, early.sharp, early.sharpened) == (140, 140, None)


def test_what_came_before_its_first_day_was_another_one() -> None:
    found = metres_at(replace(CUTTER, in_use_since=FIRST + timedelta(days=11)), LOG)
    assert (found.new, found.sharp) == (30, 30)


def falling(*grades: Grade) -> tuple[Trial, ...]:
    return tuple(job(n, 50, grade) for n, grade in enumerate(grades))


def test_a_fall_is_told_a_few_entries_are_too_few_and_chance_is_no_fall() -> None:
    worse = (*[Grade.CLEAN] * 4, Grade.NEARLY_CLEAN, Grade.TO_SAND, Grade.TO_SAND, Grade.TO_MEND)
    (found,) = trends(CUTTER, falling(*worse))
    assert found.falls is True
    assert found.points[0] == (50, Grade.CLEAN)
    assert found.points[-1] == (400, Grade.TO_MEND)
    (few,) = trends(CUTTER, falling(Grade.CLEAN, Grade.TO_SAND, Grade.TO_MEND))
    assert few.falls is None
    (at_once,) = trends(CUTTER, (*falling(*worse[:2]), *(job(0, None, each) for each in worse)))
    assert at_once.falls is None
    (level,) = trends(CUTTER, falling(*[Grade.CLEAN, Grade.TO_SAND] * 4))
    assert level.falls is False
    (better,) = trends(CUTTER, falling(*worse[::-1]))
    assert better.falls is False


def test_sharpening_begins_anew() -> None:
    sharp = replace(CUTTER, sharpened=(FIRST + timedelta(days=3),))
    (found,) = trends(sharp, falling(*[Grade.CLEAN] * 6))
    assert [metres for metres, _ in found.points] == [50, 100, 150, 50, 100, 150]


def test_the_chance_is_that_of_the_printed_example() -> None:
    """Hollander and Wolfe, as R's help prints it: T = 26, one-sided p = 0.05972 (from memory)."""
    fallen = [(lightness, -liked) for lightness, liked in TUNA]
    assert chance_of_fall(fallen) == pytest.approx(0.05972, abs=0.000005)
    # By hand: one order in six, turned wholly, of the 720 that six may stand in.
    assert chance_of_fall([(n, -n) for n in range(6)]) == pytest.approx(1 / 720)
    assert chance_of_fall(TUNA) > 0.9


def test_all_alike_is_no_fall() -> None:
    assert chance_of_fall([(1, 5), (2, 5), (3, 5)]) == 1.0
