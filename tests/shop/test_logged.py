"""What entries of the log say of a cut setting.

That outcomes are ordered words, which have a middle but no mean, is Stevens' ordinal scale (On the
theory of scales of measurement, Science 103, 1946, from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from kerfolio.model.outcome import Grade, Operation, Outcome
from kerfolio.model.plan import CutSetting
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.logged import Verdict, comparable, cut_alike, verdict_on
from kerfolio.shop.operation import operation_counted, operation_logged
from kerfolio.shop.settings import Settings, settings_stated
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


def stock() -> Stock:
    return workshop().stock


def cutter(name: str = "compression-6") -> CutterStock:
    found = stock().cutter(name)
    assert found is not None
    return found


PLAN = workshop().plans[0]
STATED = settings_stated(SETTING, PLAN, stock())


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


def test_what_a_plan_states_are_passes_at_the_thickness_it_is_drawn_for() -> None:
    assert (STATED.speed, STATED.feed, STATED.plunge) == (18000, 4000, 1200)
    assert STATED.passes == pytest.approx((8.0, 9.6))
    assert STATED.chip == pytest.approx(4000 / (18000 * 2))
    skimmed = replace(SETTING, passes=("6", "12", "rest"), skim=Amount("0.3"))
    assert settings_stated(skimmed, PLAN, stock()).passes == pytest.approx((6, 6, 5.9))
    of_sizes = replace(SETTING, passes=("depth / 2", "rest"))
    assert settings_stated(of_sizes, PLAN, stock()).passes == ()
    inches = replace(PLAN, units="in")
    assert settings_stated(replace(SETTING, passes=("5/16",)), inches, stock()).first == 7.9375


@pytest.mark.parametrize(
    ("more", "cut"),
    [
        ({}, Operation.THROUGH),
        ({"passes": (4.0, 4.0)}, Operation.PART_WAY),
        ({"passes": (8.0, 8.0)}, Operation.THROUGH),  # a skin is left
        ({"passes": (8.0, 8.0), "thickness": 21.0}, Operation.PART_WAY),
        ({"passes": (4.0, 4.0), "stock": Named("birch-plywood-9")}, Operation.THROUGH),
        ({"operation": Operation.LETTERS}, Operation.LETTERS),
        ({"cutter": Named("v-60"), "passes": (0.5,)}, Operation.LETTERS),
        ({"passes": ()}, None),
        ({"stock": Named("nobody-knows")}, None),
    ],
)
def test_what_was_cut_is_stated_or_told_by_cutter_and_passes(more, cut) -> None:  # type: ignore[no-untyped-def]
    assert operation_logged(entry(1, **more), stock()) is cut
    assert operation_counted(entry(1, **more), stock()) is (cut or Operation.THROUGH)


def of(*trials: Trial) -> tuple[Trial, ...]:
    return comparable(SETTING, PLAN, trials, stock())


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


def test_a_short_entry_of_a_v_cutter_is_one_of_letters() -> None:
    letters = replace(SETTING, cutter=Named("v-60"), passes=("0.5",))
    short = entry(1, cutter=Named("v-60"), passes=(0.5,))
    deep = entry(1, cutter=Named("v-60"), operation=Operation.PART_WAY)
    assert comparable(letters, PLAN, (short, deep), stock()) == (short,)


def verdict(
    found: tuple[Trial, ...], possible: Callable[[Settings], bool] = lambda _: True
) -> Verdict:
    return verdict_on(STATED, found, cutter(), possible)


def test_nothing_is_said_where_nothing_was_cut_like_it() -> None:
    found = verdict(of(entry(1, feed=4500), entry(2, Grade.SPOILED, passes=(3.0, 15.1))))
    assert (found.asis, found.better) == (None, None)


def test_the_middle_verdict_counts_and_of_two_the_worse() -> None:
    grades = (Grade.CLEAN, Grade.TO_SAND, Grade.TO_SAND, Grade.NEARLY_CLEAN)
    asis = verdict(of(*(entry(n + 1, g) for n, g in enumerate(grades)))).asis
    assert asis is not None
    assert asis.typical is Grade.TO_SAND
    assert not asis.agrees
    assert [each.date.day for each in asis.entries] == [4, 3, 2, 1]


def test_the_best_is_what_agrees_came_out_better_and_was_cut_most_often() -> None:
    sanded = entry(3, Grade.TO_SAND)
    twice = (entry(4, feed=4500), entry(5, feed=4550))
    once = entry(6, feed=5200)
    torn = (entry(7, feed=6000), entry(8, Grade.TO_MEND, feed=6000), entry(9, feed=6000))
    found = verdict(of(sanded, *twice, once, *torn))
    assert found.better is not None
    assert found.better.entries == twice[::-1]
    slow = verdict(of(sanded, *twice, once), lambda run: (run.feed or 0) > 5000)
    assert slow.better is not None
    assert slow.better.entries == (once,)
    assert verdict(of(entry(1), *twice)).better is None


def test_entries_that_know_different_things_are_not_one_group() -> None:
    told, silent = entry(1), entry(2, speed_rpm=None)
    assert len(cut_alike((told, silent), cutter())) == 2


def test_a_group_is_of_one_direction_and_of_alike_later_passes_at_any_plunge() -> None:
    climbs = replace(entry(1), climb=True)
    groups = cut_alike(
        (
            climbs,
            replace(climbs, plunge_mm_per_min=500.0),
            replace(climbs, passes=(8.0, 10.9)),
            replace(climbs, climb=False),
            replace(climbs, passes=(8.0, 5.0, 5.1)),
        ),
        cutter(),
    )
    assert [len(each.entries) for each in groups] == [3, 1, 1]
