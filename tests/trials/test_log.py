"""Queries of the log."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from kerfolio.basis.reader import INCHES
from kerfolio.model.outcome import Grade, Mark, Operation, Outcome
from kerfolio.model.statement import Named
from kerfolio.model.stock import CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Identity, Workshop
from kerfolio.trials.asking import Asked, answering, unknown_in
from kerfolio.trials.log import public, public_for, settings_text

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
CUTTER = CutterStock(
    name="compression-6", title="C", diameter=6.0, kind="compression", flutes=2, cutting_length=22.0
)
STOCK = Stock(cutters=(CUTTER,))
BARE = Trial(date=date(2026, 5, 2), title="Just a note", public=True)


def test_only_what_is_marked_public_is_public() -> None:
    assert public([OLD, NEW, BARE]) == (BARE, OLD)
    assert public_for([OLD, NEW, BARE], "stool") == (OLD,)


def test_filters_combine_and_newest_comes_first() -> None:
    log = [OLD, NEW, BARE]
    both = Asked(cutter="compression-6", verdict="clean")
    assert answering(log, Asked(), STOCK) == (NEW, BARE, OLD)
    assert answering(log, Asked(cutter="compression-6"), STOCK) == (NEW, OLD)
    assert answering(log, both, STOCK) == (NEW,)
    assert answering(log, Asked(plan="stool", since=date(2026, 5, 2)), STOCK) == (NEW,)
    assert answering(log, Asked(sheet="mdf-18"), STOCK) == ()


def test_what_was_cut_is_stated_or_told_by_the_passes() -> None:
    groove = replace(NEW, passes=(4.0, 4.0))
    letters = replace(NEW, operation=Operation.LETTERS)
    log = [groove, letters, NEW, BARE]
    assert answering(log, Asked(operation="part way"), STOCK) == (groove,)
    assert answering(log, Asked(operation="letters"), STOCK) == (letters,)
    assert answering(log, Asked(operation="through"), STOCK) == (NEW, BARE)


def test_unknown_words_are_refused_with_the_nearest() -> None:
    shop = Workshop(
        identity=Identity(title="A", maker="B"),
        stock=Stock(cutters=(CUTTER,)),
        trials=(OLD, NEW),
    )
    asked = Asked(
        sheet="birch-plywod-18",
        cutter="compresion-6",
        operation="thru",
        plan="stol",
        verdict="cleen",
    )
    assert list(unknown_in(asked, shop)) == [
        "No sheet is called `birch-plywod-18`. Did you mean `birch-plywood-18`?",
        "No cutter is called `compresion-6`. Did you mean `compression-6`?",
        "No operation is called `thru`. Did you mean `through`?",
        "No plan is called `stol`. Did you mean `stool`?",
        "No verdict is called `cleen`. Did you mean `clean`?",
    ]
    assert list(unknown_in(Asked(sheet="birch-plywood-18", verdict="to mend"), shop)) == []


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
