"""Work by hand in steps: names that are not there, words without a picture, glue nobody presses."""

from __future__ import annotations

import pytest

from tests.plans import proved
from tests.tray_plan import TRAY

RULES = ("step-works", "work-undrawn", "work-elsewhere", "clamps-no-room", "glue-unpressed")


def told(text: str = "Lay it.", more: str = "", later: str = "", fit: str = "") -> list[str]:
    found = proved(TRAY.format(text=text, more=more, later=later, fit=fit)).findings
    return [each.rule for each in found if each.rule in RULES]


@pytest.mark.parametrize(
    ("text", "stated"),
    [
        ("Sand the edges.", ", sands: [top]"),
        ("Break all edges with paper.", ", sands: top"),
        ("Die Kanten brechen.", ", sands: [top.left]"),
        ("Mark the middle.", ", marks: [top.slot]"),
        ("Scribe along it.", ", marks: [{on: top, from: left, at: 40}]"),
        ("Linien anreißen.", ", marks: [{on: top, from: [left, right], at: 40}]"),
        ("Alles abschleifen.", ", sands: [top.show]"),
    ],
)
def test_words_of_work_that_no_picture_shows_are_asked_about(text: str, stated: str) -> None:
    assert told(text) == ["work-undrawn"]
    assert told(text, stated) == []


@pytest.mark.parametrize(
    "text", ["Turn it over.", "Flip it.", "Turn the tray over.", "Umdrehen.", "Das Brett wenden."]
)
def test_turning_is_drawn_where_the_work_lies_otherwise_next(text: str) -> None:
    assert told(text) == ["work-undrawn"]
    assert told(text, ", lies: {top: face down}") == []
    assert told(text, later=", lies: {top: face up}") in ([], ["work-undrawn"])
    assert told(text, later=", lies: {rib: on its left}") == []


@pytest.mark.parametrize(
    "text", ["Glue it.", "Clamp it.", "Alles verleimen.", "Zwei Zwingen ansetzen."]
)
def test_a_step_with_several_works_is_asked_about_once(text: str) -> None:
    assert told(f"{text} Then sand the edges.") == ["work-undrawn"]


@pytest.mark.parametrize(
    "text",
    ["No glue.", "It holds without glue.", "Turn the key.", "Mind the mark.", "Kein Leim.",
     "Ohne Leim.", "Wipe squeezed-out glue off.", "The sandwich side."],
)  # fmt: skip
def test_other_words_are_not(text: str) -> None:
    assert told(text) == []


@pytest.mark.parametrize(
    "more",
    [", sands: [rim]", ", sands: {of: [top.upper], grit: 120}", ", marks: [top.slit]",
     ", glues: [rib.tongue]", ", clamps: [side]"],
)  # fmt: skip
def test_work_is_on_what_there_is(more: str) -> None:
    assert "step-works" in told(later=more)


def test_a_line_lies_on_its_part() -> None:
    """The top is 400 mm wide and 300 high."""
    assert told(more=", marks: [{on: top, from: [left, right], at: 390}]") == []
    assert told(more=", marks: [{on: top, from: left, at: 400}]") == ["step-works"]
    assert told(more=", marks: [{on: top, from: [left, bottom], at: 310}]") == ["step-works"]


def test_the_nearest_name_is_told() -> None:
    found = proved(TRAY.format(text="So.", more="", later=", glues: [rib.tap]", fit="")).findings
    (fault,) = [each for each in found if each.rule == "step-works"]
    assert "`rib.tab`" in str(fault.advice)


def test_glue_and_clamps_are_where_a_joint_closes() -> None:
    assert told(more=", glues: [rib.tab]") == ["work-elsewhere"]
    assert told(later=", glues: [rib.tab]") == []
    assert told(more=", clamps: {count: 2}") == ["work-elsewhere"]
    assert told(later=", clamps: {of: [rib], count: 1}") == []
    assert told(later=", glues: [rib], clamps: {count: 2, minutes: 30}") == []


def test_more_clamps_than_there_is_room_for_are_told() -> None:
    assert told(later=", clamps: {of: [rib], count: 12}") == ["clamps-no-room"]


def test_a_glued_joint_is_pressed() -> None:
    assert told(fit=", fit: glued") == ["glue-unpressed"]
    assert told(fit=", fit: glued", later=", clamps: {count: 2}") == []
    assert told(later=", glues: [rib]") == []  # a knock-down joint with a drop of glue


@pytest.mark.parametrize(
    ("more", "part"),
    [
        (", sands: {grit: 120}", "`of`"),
        (", sands: {of: [top], grit: 5}", "whole number"),
        (", clamps: {count: 0}", "whole number"),
        (", marks: [{on: top, at: 40}]", "`from`"),
        (", marks: [{on: top, from: upper, at: 40}]", "`upper`"),
        (", glues: []", "what is glued"),
    ],
)
def test_forms_refuse_what_they_cannot_read(more: str, part: str) -> None:
    with pytest.raises(AssertionError, match=part):
        told(more=more)
