"""Cut settings against cutter and sheet; where a check is common practice it says so."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.proving.two_panels import plan_text, remarks, told, weighs

RULES = (
    *("first-pass-in-tip", "pass-too-deep", "passes-not-deeper", "cutter-too-short"),
    *("stops-short", "no-skim", "deep-skim", "plunge-over-feed"),
)
GOOD = (
    "cutter: compression-6, speed: 18000 rpm, feed: 4500 mm/min, plunge: 1200 mm/min, "
    "passes: [8, rest], skim: 0.3, bridges: 4"
)


def cut(setting: str = GOOD, ladder: str = "17.8") -> str:
    return plan_text(head=f"cuts:\n  profile: {{sheet: ply, {setting}}}", ladder=ladder)


def test_settings_of_a_clean_job_are_not_remarked_on() -> None:
    assert told(cut(ladder="17.2 to 18.6 by 0.2"), *RULES) == []


@pytest.mark.parametrize(
    ("old", "new", "rule", "severity", "message"),
    [
        (
            "[8, rest]",
            "[4, 8, rest]",
            "first-pass-in-tip",
            Severity.WARNING,
            "`profile`: a first pass of 4 mm lifts the face",
        ),
        (
            "[8, rest]",
            "[5, rest]",  # just the tip: the pass must be deeper than it
            "first-pass-in-tip",
            Severity.WARNING,
            "`profile`: a first pass of 5 mm lifts the face",
        ),
        (
            "compression-6, speed",
            "compression-3, speed",
            "pass-too-deep",
            Severity.WARNING,
            "`profile` takes 10.1 mm in one pass",
        ),
        (
            "compression-6, speed",
            "compression-3, speed",
            "cutter-too-short",
            Severity.WARNING,
            "`profile` goes 18.1 mm deep",
        ),
        (
            "[8, rest]",
            "[8, 8]",
            "passes-not-deeper",
            Severity.WARNING,
            "`profile`: a pass is no deeper than the one before",
        ),
        (
            "[8, rest]",
            "[8, 17.5]",
            "stops-short",
            Severity.WARNING,
            "`profile` leaves 0.3 mm uncut",
        ),
        (", skim: 0.3", "", "no-skim", Severity.NOTE, "`profile` ends on the lower face"),
        (
            "skim: 0.3",
            "skim: 2",
            "deep-skim",
            Severity.WARNING,
            "`profile` goes 2 mm into the spoilboard",
        ),
        (
            "plunge: 1200",
            "plunge: 5000",
            "plunge-over-feed",
            Severity.WARNING,
            "`profile` plunges faster than it feeds",
        ),
    ],
)
def test_each_mistake_is_told(
    old: str, new: str, rule: str, severity: Severity, message: str
) -> None:
    assert GOOD.count(old) == 1
    text = cut(GOOD.replace(old, new))
    assert told(text, rule) == [message]
    assert weighs(text, rule) == {severity}


def test_a_quarter_inch_compression_cutter_with_a_first_pass_of_0_31_in_is_right() -> None:
    # Three-quarter-inch plywood, first pass 0.31 in: a crisp edge (common practice).
    text = """\
plan: Three quarters
version: 1.0.0
summary: One panel.
units: in
sheets: {ply: {stock: plywood-23-32, published-for: 23/32 in, fit: 0.004}}
parts:
  panel: {sheet: ply, outline: {rectangle: [20, 10]}}
cuts:
  profile: {sheet: ply, cutter: compression-1-4in, speed: 18000 rpm, feed: 180 in/min,
    plunge: 45 in/min, passes: [0.31, rest], skim: 0.01, bridges: 4}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
    assert told(text, *RULES) == []
    shallow = text.replace("0.31", "0.19")  # less than the tip of 5 mm
    assert told(shallow, "first-pass-in-tip") == [
        "`profile`: a first pass of 0.190 in lifts the face"
    ]


def test_a_pocket_within_the_tip_of_a_compression_cutter_is_told() -> None:
    text = cut(GOOD.replace("[8, rest]", "[4]"))
    (finding,) = remarks(text, "first-pass-in-tip")
    assert finding.advice.endswith("go deeper at once, or use a down-cut cutter.")
    assert told(text.replace("compression-6", "down-cut-6"), *RULES) == []


def test_a_fixed_last_pass_is_told_where_thick_sheets_are_not_cut_through() -> None:
    text = cut(GOOD.replace("[8, rest]", "[8, 18]"), ladder="17.2 to 18.6 by 0.2")
    assert told(text, "stops-short") == ["`profile` leaves 0.6 mm uncut (at 18.6mm)"]
