"""What entries of the log say of a cut setting.

That outcomes are ordered words, which have a middle but no mean, is Stevens' ordinal scale (On the
theory of scales of measurement, Science 103, 1946, from memory).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from kerfolio.model.outcome import Grade, Operation, Outcome
from kerfolio.model.plan import CutSetting
from kerfolio.model.statement import Named
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.logged import Fed, comparable, cut_alike, fed_by, operation_logged, verdict_on
from tests.plans import workshop

PLY = "birch-plywood-18"
SETTING = CutSetting(
    name="profile",
    sheet=Named("ply"),
    cutter=Named("compression-6"),
    speed_rpm=18000,
    feed_mm_per_min=4000,
    plunge_mm_per_min=1200,
    passes=("8", "rest"),
)
FED = fed_by(SETTING, "mm")


def stock() -> Stock:
    return workshop().stock


def entry(day: int, grade: Grade | None = Grade.CLEAN, feed: float | None = 4000, **more: object):
    plain = Trial(
        date=date(2026, 5, day),
        stock=Named(PLY),
        cutter=Named("compression-6"),
        speed_rpm=18000,
        feed_mm_per_min=feed,
        passes=(8.0, 10.1),
        outcome=Outcome(whole=grade),
    )
    return replace(plain, **more)  # type: ignore[arg-type]


def test_what_is_compared_is_feed_speed_plunge_and_first_pass() -> None:
    assert Fed(speed=18000, feed=4000, plunge=1200, first_pass=8.0) == FED
    assert FED.unlike(Fed(speed=18000, feed=4100, first_pass=7.9)) == ()
    other = Fed(speed=16000, feed=4500, plunge=1000, first_pass=4)
    assert FED.unlike(other) == ("feed", "speed", "plunge", "first_pass")
    assert fed_by(replace(SETTING, passes=("t/2", "rest")), "mm").first_pass is None
    assert fed_by(replace(SETTING, passes=("5/16",)), "in").first_pass == 5 / 16 * 25.4


def test_what_was_cut_is_stated_or_told_by_the_passes() -> None:
    ply = stock().sheet(PLY)
    assert operation_logged(entry(1), ply) is Operation.THROUGH
    assert operation_logged(entry(1, passes=(4.0, 4.0)), ply) is Operation.PART_WAY
    assert operation_logged(entry(1, operation=Operation.LETTERS), ply) is Operation.LETTERS
    assert operation_logged(entry(1, passes=()), ply) is None


def of(*trials: Trial) -> tuple[Trial, ...]:
    return comparable(SETTING, PLY, trials, stock(), "mm")


def test_only_the_same_sheet_cutter_and_operation_with_a_verdict_and_a_feed_compare() -> None:
    fine = entry(1)
    others = (
        entry(1, stock=Named("birch-plywood-9")),
        entry(1, cutter=Named("down-cut-6")),
        entry(1, passes=(4.0, 4.0)),
        entry(1, None),
        entry(1, feed=None),
    )
    assert of(fine, *others) == (fine,)
    untold = entry(1, passes=())
    assert of(untold) == (untold,)


def test_nothing_is_said_where_nothing_was_cut_like_it() -> None:
    found = verdict_on(FED, of(entry(1, feed=4500), entry(2, Grade.SPOILED, passes=(3.0, 15.1))))
    assert (found.asis, found.better) == (None, None)


def test_the_middle_verdict_counts_and_of_two_the_worse() -> None:
    grades = (Grade.CLEAN, Grade.TO_SAND, Grade.TO_SAND, Grade.NEARLY_CLEAN)
    asis = verdict_on(FED, of(*(entry(n + 1, g) for n, g in enumerate(grades)))).asis
    assert asis is not None
    assert asis.typical is Grade.TO_SAND
    assert not asis.agrees
    assert [each.date.day for each in asis.entries] == [4, 3, 2, 1]


def test_the_best_is_what_agrees_came_out_better_and_was_cut_most_often() -> None:
    sanded = entry(3, Grade.TO_SAND)
    twice = (entry(4, feed=4500), entry(5, feed=4550))
    once = entry(6, feed=5200)
    torn = (entry(7, feed=6000), entry(8, Grade.TO_MEND, feed=6000), entry(9, feed=6000))
    found = verdict_on(FED, of(sanded, *twice, once, *torn))
    assert found.better is not None
    assert found.better.entries == twice[::-1]
    slow = verdict_on(FED, of(sanded, *twice, once), lambda fed: (fed.feed or 0) > 5000)
    assert slow.better is not None
    assert slow.better.entries == (once,)
    assert verdict_on(FED, of(entry(1), *twice)).better is None


def test_entries_that_know_different_things_are_not_one_group() -> None:
    told, silent = entry(1), entry(2, speed_rpm=None)
    assert len(cut_alike((told, silent))) == 2
