"""Queries of the log."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from kerfolio.basis.reader import INCHES
from kerfolio.model.outcome import Grade, Mark, Outcome
from kerfolio.model.statement import Named
from kerfolio.model.trial import Trial
from kerfolio.trials.log import matching, public, public_for, settings_text

OLD = Trial(
    date=date(2026, 5, 1),
    title="First pass of 4 mm",
    plan=Named("stool"),
    stock=Named("birch-plywood-18"),
    cutter=Named("compression-6"),
    outcome=Outcome(whole=Grade.TO_MEND, marks=(Mark.TEAR_OUT,)),
    public=True,
)
NEW = Trial(
    date=date(2026, 5, 3),
    title="First pass of 8 mm",
    plan=Named("stool"),
    stock=Named("birch-plywood-18"),
    thickness=17.8,
    cutter=Named("compression-6"),
    speed_rpm=18000.0,
    feed_mm_per_min=4500.0,
    plunge_mm_per_min=1200.0,
    passes=(8.0, 9.8),
    fit=0.1,
    outcome=Outcome(whole=Grade.CLEAN),
)
BARE = Trial(date=date(2026, 5, 2), title="Just a note", public=True)


def test_only_what_is_marked_public_is_public() -> None:
    assert public([OLD, NEW, BARE]) == (BARE, OLD)
    assert public_for([OLD, NEW, BARE], "stool") == (OLD,)


def test_filters_combine_and_newest_comes_first() -> None:
    assert matching([OLD, NEW, BARE], cutter="compression-6") == (NEW, OLD)
    assert matching([OLD, NEW, BARE], cutter="compression-6", verdict="clean") == (NEW,)
    assert matching([OLD, NEW, BARE], stock="mdf-18") == ()
    assert matching([OLD, NEW, BARE]) == (NEW, BARE, OLD)


def test_settings_read_in_one_line() -> None:
    assert settings_text(NEW) == (
        "birch-plywood-18 · 17.8 mm · compression-6 · 18000 rpm · feed 4500 mm/min"
        " · plunge 1200 mm/min · passes 8, 9.8 mm · fit 0.1 mm a side"
    )
    assert settings_text(BARE) == ""


def test_settings_read_in_inches_in_a_workshop_of_inches() -> None:
    inches = replace(NEW, thickness=18.26, feed_mm_per_min=3556.0, passes=(7.874, 9.525), fit=0.127)
    assert settings_text(inches, INCHES) == (
        "birch-plywood-18 · 0.719 in · compression-6 · 18000 rpm · feed 140 in/min"
        " · plunge 47 in/min · passes 0.31, 0.375 in · fit 0.005 in a side"
    )
