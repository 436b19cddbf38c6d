"""Which way round? Asked where it makes a difference, and never where it makes none."""

from __future__ import annotations

import re

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.geometry.rigid import between, length
from tests.assembly.written import changed, joints_told, text, together

_WORDS = re.compile(r", (?:show: (?:out|in)|looking: (?:up|down|left|right))")
_TAKEN = re.compile(r"Taken for now: (.*)\.$")


def asked(plan: str) -> list[Finding]:
    return [each for each in joints_told(plan) if each.rule == "which-way-round"]


def test_a_piece_alike_both_ways_is_not_asked_about() -> None:
    """Plain, and with its tabs in the middle, the stretcher goes in either way round."""
    plain = changed(
        "stool",
        ("      word: {engrave: {text: I, at: [between/2, 35], height: 15, depth: 0.5}}\n", ""),
        ("side.left.low-slot, looking: right}", "side.left.low-slot}"),
        ("{tabs: {edge: left, at: 20,", "{tabs: {edge: left, at: 15,"),
        ("{tabs: {edge: right, at: 20,", "{tabs: {edge: right, at: 15,"),
    )
    assert asked(plain) == []


def test_loops_and_housings_answer_for_themselves() -> None:
    plan = _WORDS.sub("", text("cupboard"))
    assert asked(plan) == []
    for each in together(plan).assembled.pieces:
        there = together(text("cupboard")).assembled.piece(each.label).pose
        assert length(between(each.pose.origin, there.origin)) < 1e-9


def test_a_word_on_one_face_makes_the_difference() -> None:
    plan = changed("stool", ("side.left.low-slot, looking: right}", "side.left.low-slot}"))
    (found,) = asked(plan)
    assert found.message == (
        "which way round do `stretcher.left-tab` and `side.left.low-slot` meet?"
    )
    assert found.advice == (
        "Add `looking:` with `left` or `right`, for the show face of `stretcher` as `side.left` is "
        "drawn. Taken for now: `looking: right`."
    )


def answered(plan: str, questions: list[Finding]) -> str:
    """Write what was taken for now into the joints that were asked about."""
    lines = plan.splitlines()
    for each in questions:
        taken = _TAKEN.search(each.advice)
        assert taken is not None
        words = taken.group(1).replace("`", "")
        at = each.place.line - 1
        lines[at] = lines[at].replace("}", f", {words}}}")
    return "\n".join(lines) + "\n"


QUESTIONS = {"stool": 3, "workshop-table": 13}
"""Of the table: eight ends of trays whose grips would be lower, the stretcher, two wedges, the
backboard and its shelf."""


@pytest.mark.parametrize("name", QUESTIONS)
def test_what_is_taken_for_now_answers_every_question(name: str) -> None:
    plan = _WORDS.sub("", text(name))
    questions = asked(plan)
    assert len(questions) == QUESTIONS[name]
    settled_for = answered(plan, questions)
    assert asked(settled_for) == []
    before, after = together(plan).assembled, together(settled_for).assembled
    for each in before.pieces:
        there = after.piece(each.label).pose
        assert length(between(each.pose.origin, there.origin)) < 1e-9


def test_no_question_where_a_loop_does_not_close() -> None:
    """A mistake elsewhere leaves no sure ground to ask from."""
    plan = changed(
        "stool",
        ("side.left.low-slot, looking: right}", "side.left.low-slot}"),
        ("outline: {rectangle: [between, 70]}", "outline: {rectangle: [between - 4, 70]}"),
    )
    assert {each.rule for each in joints_told(plan)} == {"joint-off"}
