"""Texts beyond their budgets: the exact words, and nothing a letter below it."""

from __future__ import annotations

import pytest

from kerfolio.basis import budgets
from kerfolio.basis.budgets import Budget
from kerfolio.reading.forms import Form
from kerfolio.reading.page import read_page
from kerfolio.reading.prose import PROSE, read_prose
from kerfolio.reading.values import NAMED, SUMMARY_TEXT, TEXT, TITLE_TEXT
from tests.reading.desks import changed, plan_of, read, said


def letters(count: int) -> str:
    """Return a text of so many letters in words of ten."""
    return ("sawn edges " * (count // 11 + 1))[: count - 1] + "s"


@pytest.mark.parametrize(
    ("form", "budget", "words"),
    [
        (TITLE_TEXT, budgets.TITLE, "a title of 121 letters, at most 120"),
        (SUMMARY_TEXT, budgets.SUMMARY, "a summary of 401 letters, at most 400"),
        (TEXT, budgets.LINE, "a text of 1001 letters, at most 1000"),
        (PROSE, budgets.PROSE, "a text of 30001 letters, at most 30000"),
    ],
)
def test_a_letter_too_many(form: Form[object], budget: Budget, words: str) -> None:
    value, findings = read(form, letters(budget.most))
    assert value is not None
    assert findings == []
    _, findings = read(form, letters(budget.most + 1))
    assert findings == [f"{words} / {budget.advice}"]


def test_any_single_value_is_bounded() -> None:
    assert read(NAMED, "n" * 1001) == (
        None,
        [f"a text of 1001 letters, at most 1000 / {budgets.LINE.advice}"],
    )


def test_a_word_too_long_for_a_line() -> None:
    told = [f"a word of 101 letters, at most 100 / {budgets.WORD.advice}"]
    assert read(TEXT, "see " + "w" * 100)[1] == []
    assert read(TEXT, "see " + "w" * 101) == (None, told)
    assert read(PROSE, "see " + "w" * 101)[1] == told
    assert read(PROSE, "see *" + "w" * 60 + "*" + "w" * 41)[1] == told


def test_an_address_behind_a_link_is_no_word() -> None:
    assert read(PROSE, f"see [the film](https://example.org/{'w' * 200})")[1] == []


def test_a_word_of_prose_is_told_with_its_line() -> None:
    text = f"first\n\nsecond\n\n- one\n- two {'w' * 101}\n"
    _, findings = read_prose(text, "a.md", first_line=10)
    assert [(each.rule, each.place.line) for each in findings] == [("too-long", 15)]


def test_a_title_of_a_page() -> None:
    _, findings = read_page(f"# {letters(121)}\n\nText.\n".encode(), "pages/a.md", "a")
    assert said(findings) == [
        f"a title of 121 letters, at most 120 / {budgets.TITLE.advice}",
    ]


def test_a_plan_with_a_title_of_megabytes_is_told_once() -> None:
    _, findings = plan_of(changed("plan: Desk rack", "plan: " + letters(1_900_000)))
    assert [str(each) for each in findings if each.rule != "picture"] == [
        "plans/rack/plan.yaml:1:7: error: a title of 1900000 letters, at most 120 [too-long]\n"
        "    Say it in a few words; what follows it holds the rest."
    ]
