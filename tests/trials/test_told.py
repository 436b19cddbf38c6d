"""What the log answers, in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.reader import INCHES, METRIC, Reader
from kerfolio.model.outcome import Grade, Mark, Outcome
from kerfolio.shop.alike import Axis
from kerfolio.trials.next_trial import Next, Why
from kerfolio.trials.told import (
    failure_told,
    first_pass_told,
    in_one_line,
    next_told,
    settings_told,
    standing_told,
    tally_told,
)
from tests.trials.test_best import CLEAN, GOOD, asked, log_of

GERMAN = Reader(language="de")
FUZZED = Outcome(whole=Grade.TO_SAND, marks=(Mark.FUZZ,))


def test_what_is_known_comes_with_its_count_and_its_spread() -> None:
    """Ten of ten: at least the tenth root of 0.05, which is 0.741 (Clopper and Pearson)."""
    best = asked(log_of(*[(GOOD, CLEAN)] * 10)).best
    assert standing_told(best, METRIC) == (
        "10 of 10 cuts with settings alike came out well. Of all such cuts, 74 to 100 in a hundred"
        " will."
    )
    assert best
    assert tally_told(best.tally, METRIC) == "10 × Clean"


def test_three_trials_are_told_not_to_be_known() -> None:
    best = asked(log_of(*[(GOOD, CLEAN)] * 3)).best
    assert standing_told(best, METRIC) == (
        "Not known yet. 3 of 3 cuts with settings alike came out well; 1 more that does would make"
        " them known."
    )
    assert standing_told(best, GERMAN).startswith("Noch nicht sicher.")
    assert standing_told(None, METRIC).startswith("Not known: no cut")
    poor = asked(log_of((GOOD, FUZZED))).best
    assert standing_told(poor, METRIC).endswith("none came out well.")


def test_settings_are_told_in_the_readers_unit_or_in_both() -> None:
    assert in_one_line(GOOD, METRIC) == (
        "Feed 3648 mm/min · Speed 16000 rpm · Chip load 0.114 mm · Plunge 900 mm/min"
        " · First pass 7.87 mm · Then 10.8 mm"
    )
    told = dict(settings_told(GOOD, INCHES, twice=True))
    assert told["First pass"] == "0.31 in (7.87 mm)"
    assert told["Feed"] == "144 in/min (3648 mm/min)"


def test_what_failed_is_told_by_how_it_differs_and_what_was_seen() -> None:
    shallow = replace(GOOD, passes=(3.0, 15.6))
    found = asked(log_of(*[(GOOD, CLEAN)] * 4, (shallow, FUZZED)))
    assert [failure_told(each, METRIC) for each in found.failures] == [
        "A shallower first pass, 3 mm: 1 × To sand, fuzz"
    ]
    assert first_pass_told(found, METRIC) == (
        "First pass deeper than the up-cut tip of 5 mm: within it the tip lifts the face.",
        "Deeper, 4 of 4 came out well; within it, 0 of 1.",
    )


@pytest.mark.parametrize("reader", [METRIC, GERMAN])
def test_every_reason_has_its_own_words(reader: Reader) -> None:
    told = {
        next_told(Next(why=why, axis=axis, mark=Mark.BURN, times=2), reader)
        for why in Why
        for axis in Axis
    }
    plain = len(set(Why) - {Why.MARK, Why.BETWEEN, Why.FURTHER})
    assert len(told) == plain + 3 * len(Axis)
