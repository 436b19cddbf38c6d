"""Spans in proving: each remark where it belongs, and silence where all is well."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding, Severity
from tests.plans import RACK, remarks

SOUND = "s: {part: rail, load: {kg: 5}}"


def said(span: str) -> list[Finding]:
    return remarks(f"{RACK}spans:\n  {span}\n")


def test_a_span_that_bears_what_is_asked_is_not_remarked_on() -> None:
    assert said(SOUND) == []
    assert said("s: {part: side, as: leg, load: {kg: 5}}") == []


@pytest.mark.parametrize(
    ("span", "rule", "message"),
    [
        ("s: {part: rial, load: {kg: 5}}", "unknown-part", "no part `rial`"),
        ("s: {board: batten, load: {kg: 5}}", "unknown-board", "no board `batten`"),
        (
            "s: {part: rail, supports: [0, 900], load: {kg: 5}}",
            "span-outside",
            "the support at 900 mm is not on the part",
        ),
    ],
)
def test_a_span_on_nothing_is_an_error(span: str, rule: str, message: str) -> None:
    (found,) = said(span)
    assert (found.rule, found.message) == (rule, message)
    assert found.severity is Severity.ERROR
    assert found.place.line


def test_more_than_it_bears_is_one_warning_for_all_thicknesses() -> None:
    (found,) = said("s: {part: rail, load: {kg: 5000}}")
    assert (found.rule, found.severity) == ("span-overloaded", Severity.WARNING)
    assert found.message.startswith("`s` is reckoned for ")
    assert found.message.endswith(" kg, not 5000 kg")


def test_a_sheet_of_unknown_stiffness_is_a_note() -> None:
    text = RACK.replace("  ply: {", "  thin: {stock: mdf-3, size: 2440 x 1220}\n  ply: {").replace(
        "joints:\n", "  back: {sheet: thin, outline: {rectangle: [200, 100]}}\njoints:\n"
    )
    text = text.replace("add: [side.left, ", "add: [back, side.left, ")
    found = remarks(f"{text}spans:\n  s: {{part: back, load: {{kg: 1}}}}\n")
    (only,) = [each for each in found if each.rule.startswith("span")]
    assert (only.rule, only.severity) == ("span-unreckoned", Severity.NOTE)
    assert only.message == "`s`: no stiffness of it is known"
