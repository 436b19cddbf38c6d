"""Best settings and next trials, on logs invented from a truth that the program does not see."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from random import Random

import numpy as np
import pytest

from kerfolio.model.outcome import Feel, Grade, Mark, Outcome
from kerfolio.model.router import Router
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.alike import Axis, Places
from kerfolio.shop.settings import Settings
from kerfolio.trials.best import Answer, answer
from kerfolio.trials.cut import cut_of
from kerfolio.trials.next_trial import Why
from kerfolio.trials.subject import Subject, sorted_log
from tests.trials.hidden_truth import (
    COMPRESSION,
    CRISPEST,
    CUTTERS,
    MACHINE,
    PLYWOOD,
    SHEETS,
    at,
    cut,
    invented_log,
    stock,
    subject,
    trial,
)

SEEDS = range(10)
OURS = subject()
TIP = 5.0
RIGHT = {Grade.CLEAN, Grade.NEARLY_CLEAN}


def asked(log: tuple[Trial, ...], of: Subject = OURS, machine: Router = MACHINE) -> Answer:
    return answer(of, sorted_log(log, stock()), stock(), machine, "mm")


@cache
def answers(wrong: float) -> tuple[Answer, ...]:
    return tuple(asked(invented_log(seed, wrong)) for seed in SEEDS)


def test_the_invented_log_is_what_it_is_meant_to_be() -> None:
    log = invented_log(1, 0.1)
    assert len(log) >= 60
    assert {each.stock.name for each in log if each.stock} == set(SHEETS)
    assert {each.cutter.name for each in log if each.cutter} == set(CUTTERS)
    sound = invented_log(1)
    crisp = Settings(speed=16000, feed=3648, passes=(CRISPEST, 11.0), flutes=2)
    assert at(OURS, crisp) is Grade.CLEAN
    assert at(OURS, replace(crisp, passes=(TIP - 1, 14.0))) is Grade.TO_SAND
    assert log == invented_log(1, 0.1) != sound, "seeded"


@pytest.mark.parametrize("wrong", [0.0, 0.1])
def test_what_it_says_it_knows_is_true(wrong: float) -> None:
    known = [each.best for each in answers(wrong) if each.best and each.best.known]
    assert len(known) >= 7, "and mostly it does know"
    for best in known:
        first = best.settings.first
        assert first is not None
        assert TIP < first < 1.7 * OURS.cutter.diameter, "deeper than the tip"
        assert at(OURS, best.settings) in RIGHT
    clean = sum(at(OURS, best.settings) is Grade.CLEAN for best in known)
    assert clean >= 0.8 * len(known)


@pytest.mark.parametrize("wrong", [0.0, 0.1])
def test_what_failed_near_failed_in_truth(wrong: float) -> None:
    found = [
        fail for each in answers(wrong) if each.best and each.best.known for fail in each.failures
    ]
    assert len(found) >= 10
    right = sum(at(OURS, each.settings) not in RIGHT for each in found)
    assert right >= (len(found) if not wrong else 0.8 * len(found))


def test_a_first_pass_within_the_tip_is_told_to_fuzz() -> None:
    marks = [
        fail.marks
        for each in answers(0.0)
        for fail in each.failures
        if fail.axis is Axis.SHALLOWER and (fail.settings.first or 0) <= TIP
    ]
    assert len(marks) >= 3
    assert all(Mark.FUZZ in each for each in marks)
    for each in answers(0.1):
        assert each.tip
        assert each.tip.within.median < Grade.NEARLY_CLEAN


@pytest.mark.parametrize("wrong", [0.0, 0.1])
def test_its_suggestions_lead_there_from_three_trials(wrong: float) -> None:
    reached = 0
    for seed in SEEDS:
        chance = Random(seed)
        log = tuple(each for each in invented_log(seed, wrong) if each in _ours(seed, wrong))[:3]
        found = asked(log)
        assert found.best
        assert not found.best.known
        for day in range(30):
            if found.next.settings is None:
                break
            log = (*log, cut(OURS, found.next.settings, 1000 + day, wrong, chance))
            found = asked(log)
        assert found.best
        reached += found.best.known and at(OURS, found.best.settings) is Grade.CLEAN
    assert reached >= len(SEEDS) - 1


def _ours(seed: int, wrong: float) -> tuple[Trial, ...]:
    names = (PLYWOOD, COMPRESSION)
    return tuple(each for each in invented_log(seed, wrong) if _names(each) == names)


def _names(each: Trial) -> tuple[str, str]:
    return str(each.stock), str(each.cutter)


GOOD = Settings(speed=16000.0, feed=3648.0, plunge=900.0, passes=(CRISPEST, 10.8), flutes=2)
CLEAN = Outcome(whole=Grade.CLEAN)


def log_of(*cuts: tuple[Settings, Outcome], of: Subject = OURS) -> tuple[Trial, ...]:
    return tuple(trial(of, settings, day, outcome) for day, (settings, outcome) in enumerate(cuts))


def test_three_trials_are_not_known_however_clean() -> None:
    found = asked(log_of(*[(GOOD, CLEAN)] * 3))
    assert found.best
    assert (found.best.known, found.best.assured, found.best.needed) == (False, None, 1)
    assert (found.next.why, found.next.times, found.next.settings) == (Why.REPEAT, 1, GOOD)


def test_a_fourth_makes_them_known_and_one_wrong_verdict_of_seven_does_not_unmake_them() -> None:
    spoilt = (GOOD, Outcome(whole=Grade.SPOILED))
    for cuts in ([(GOOD, CLEAN)] * 4, [spoilt, *[(GOOD, CLEAN)] * 6]):
        found = asked(log_of(*cuts))
        assert found.best
        assert found.best.assured is Grade.CLEAN
    low, high = found.best.within
    assert 0.4 < low < 6 / 7 < high < 1


def test_an_empty_log_begins_in_the_published_range_with_a_first_pass_past_the_tip() -> None:
    found = asked(())
    assert (found.best, found.failures, found.cuts) == (None, (), ())
    assert found.next.why is Why.BEGIN
    settings = found.next.settings
    assert settings
    assert settings.first
    assert settings.first > TIP
    assert 0.0254 < settings.chip < 0.2794, "published for a light machine, 1/4 in, plywood"
    assert settings.feed <= 6000


def test_where_no_table_tells_it_says_so() -> None:
    found = answer(OURS, {}, Stock(), MACHINE, "mm")
    assert (found.next.why, found.next.settings) == (Why.NO_TABLE, None)


def test_the_next_trial_lies_between_the_best_and_the_failure() -> None:
    torn = GOOD.with_chip(0.3)
    badly = Outcome(whole=Grade.TO_MEND, marks=(Mark.CHATTER,))
    slow = replace(MACHINE, feed=5_000.0)
    found = asked(log_of(*[(GOOD, CLEAN)] * 4, (torn, badly)), machine=slow)
    assert [(each.axis, each.marks) for each in found.failures] == [(Axis.THICKER, (Mark.CHATTER,))]
    assert found.next.why is Why.BETWEEN
    assert found.next.settings
    assert found.next.settings.chip == pytest.approx((0.114 * 0.3) ** 0.5, rel=0.02)
    assert found.next.settings.feed <= 5000, "and the machine can do it"
    assert found.next.settings.speed < 16000


def test_a_shallower_pass_than_the_tip_is_never_suggested_once_deeper_ones_are_clean() -> None:
    shallow = replace(GOOD, passes=(3.0, 15.6))
    fuzzed = Outcome(whole=Grade.TO_SAND, marks=(Mark.FUZZ,))
    found = asked(log_of(*[(GOOD, CLEAN)] * 4, (shallow, fuzzed)))
    assert found.failures[0].axis is Axis.SHALLOWER
    assert found.next.settings
    assert (found.next.settings.first or 0) > TIP
    assert found.tip
    assert (found.tip.within.total, found.tip.deeper.at_least(Grade.CLEAN)) == (1, 4)


def test_fuzz_from_the_tip_is_cured_by_a_deeper_pass() -> None:
    shallow = replace(GOOD, passes=(3.0, 15.6))
    fuzzed = Outcome(whole=Grade.TO_SAND, marks=(Mark.FUZZ,))
    found = asked(log_of(*[(shallow, fuzzed)] * 2))
    assert found.next.why is Why.TIP
    assert found.next.settings
    assert found.next.settings.first == pytest.approx(7.5)


@pytest.mark.parametrize(("mark", "thicker"), [(Mark.BURN, True), (Mark.CHATTER, False)])
def test_what_is_seen_says_which_way_to_go(mark: Mark, thicker: bool) -> None:
    found = asked(log_of(*[(GOOD, Outcome(whole=Grade.TO_MEND, marks=(mark,)))] * 2))
    assert (found.next.why, found.next.mark) == (Why.MARK, mark)
    assert found.next.settings
    assert (found.next.settings.chip > GOOD.chip) is thicker


def test_every_next_trial_is_one_that_the_machine_can_make() -> None:
    small = Router(kind="light hobby", speed=(10_000.0, 18_000.0), feed=3_000.0, deepest=6.0)
    for seed in SEEDS:
        log = invented_log(seed, 0.1)
        for of in sorted_log(log, stock()):
            wanted = asked(log, of, small).next
            if wanted.settings is None or wanted.why in {Why.REPEAT, Why.RIVAL}:
                continue  # was done already
            assert 10_000 <= wanted.settings.speed <= 18_000
            assert wanted.settings.feed <= 3_000
            assert max(wanted.settings.passes) <= 6.0 + 1e-6
            assert sum(wanted.settings.passes) >= of.sheet.actual * 0.9


def test_a_sheet_alike_is_told_apart_and_lends_its_settings() -> None:
    other = subject("birch-plywood-18")
    third = subject("mdf-18")
    log = log_of(*[(GOOD, CLEAN)] * 4, of=third)
    assert asked(log, other).elsewhere == (), "MDF is not alike"
    log = log_of(*[(GOOD, CLEAN)] * 4, of=subject("birch-plywood-21"))
    found = asked(log, other)
    assert found.best is None
    assert [each.subject.sheet.name for each in found.elsewhere] == ["birch-plywood-21"]
    assert found.next.why is Why.ELSEWHERE
    assert found.next.settings
    assert found.next.settings.first == pytest.approx(GOOD.first, abs=0.05)
    assert sum(found.next.settings.passes) == pytest.approx(other.sheet.actual)


def test_a_trial_without_feed_or_verdict_is_counted_and_left_out() -> None:
    bare = replace(trial(OURS, GOOD, 1, CLEAN), feed_mm_per_min=None)
    ungraded = trial(OURS, GOOD, 2, Outcome())
    fitted = replace(ungraded, went=Feel.BY_PALM)
    found = asked((bare, ungraded, fitted))
    assert found.best is None
    assert len(found.left_out) == 3


def test_settings_without_a_first_pass_speak_for_those_with_one() -> None:
    unsaid = replace(GOOD, passes=())
    assert Places([unsaid], OURS.cutter).steps_from(GOOD) == [0.5]
    found = asked(log_of(*[(unsaid, CLEAN)] * 2, *[(GOOD, CLEAN)] * 2))
    assert found.best
    assert found.best.known


def test_distances_are_alike_both_ways_and_none_to_oneself() -> None:
    cuts = [cut_of(each, OURS.cutter) for each in _ours(3, 0.1)]
    settings = [each.settings for each in cuts if each]
    places = Places(settings, OURS.cutter)
    steps = np.array([places.steps_from(each) for each in settings])
    assert not steps.diagonal().any()
    assert steps == pytest.approx(steps.T)


def test_the_order_of_the_files_decides_nothing() -> None:
    log = invented_log(2, 0.1)
    mixed = tuple(Random(5).sample(log, len(log)))
    assert asked(log) == asked(mixed)
