"""The play of joints, judged by size and purpose; the limits are the workshop's ``play``.

What counts as tight or loose is common practice, no single source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.proving.prove import prove_plan
from tests.plans import workshop
from tests.proving.two_panels import plan_text, remarks

RULES = ("fit-too-tight", "fit-too-loose", "joint-too-tight", "joint-too-loose")
ALL = (*RULES, "fit-shared", "fit-of-nothing", "tab-loose-in-slot")
SLOT = "slot: {slot: {at: [200, 150], length: 60, angle: 90, takes: ply}}"
TAB = "tab: {tabs: {edge: left, at: 30, width: 60, takes: ply}}"
JOINT = "tab: rail.tab, into: side.slot"


def joined(fit: str = "", sheet: str = "0.1", side: str = SLOT, ladder: str = "17.8") -> str:
    stated = f", fit: {fit}" if fit else ""
    text = plan_text(side, TAB, JOINT + stated, ladder=ladder)
    return text.replace("fit: 0.1}", f"fit: {sheet}}}")


def said(text: str, *rules: str) -> list[str]:
    return [_words(each) for each in remarks(text, *(rules or ALL))]


def _words(found: Finding) -> str:
    return f"{found.place.line}:{found.place.column} {found.message} / {found.advice}"


def in_inches(text: str) -> str:
    """Return the plan with its lengths in inches, but for those of the sheet."""
    numbers = {"[200, 150]": "[8, 6]", "length: 60": "length: 2.5", "at: 30": "at: 1.25"}
    numbers |= {"width: 60": "width: 2.5", "[400, 300]": "[16, 12]", "[300, 120]": "[12, 5]"}
    for old, new in numbers.items():
        text = text.replace(old, new)
    text = text.replace("size: 2440 x 1220", "size: 96 x 48")
    return text.replace("17.8", "0.7").replace("sheets:", "units: in\nsheets:")


@pytest.mark.parametrize("fit", ["0.05", "0.1", "0.25", "{value: 0.1, reader: 0.05 to 0.2}"])
def test_a_usual_fit_is_not_remarked_on(fit: str) -> None:
    assert said(joined(sheet=fit)) == []


HAND = "Write `fit: 0.1`, say: a tenth of a millimetre a side goes in by hand."


@pytest.mark.parametrize(
    ("fit", "words"),
    [
        ("3", "3 mm of fit a side for `ply`: rattling / Did you mean `0.3 mm`?"),
        ("0.1 in", "2.54 mm of fit a side for `ply`: rattling / Did you mean `0.1 mm`?"),
        ("0.4", f"0.4 mm of fit a side for `ply`: loose / {HAND}"),
        ("0.02", f"0.02 mm of fit a side for `ply`: too tight for hand / {HAND}"),
        (
            "0.004",
            "0.004 mm of fit a side for `ply`: too tight for hand / Did you mean `0.004 in`?",
        ),
        ("0", f"0 mm of fit a side for `ply`: too tight for hand / {HAND}"),
    ],
)
def test_a_sheets_fit_is_judged_with_the_likely_slip(fit: str, words: str) -> None:
    assert said(joined(sheet=fit)) == [f"5:79 {words}"]


def test_a_fit_in_inches_that_was_meant_in_mm_is_asked_for() -> None:
    text = in_inches(joined(sheet="0.1"))
    assert said(text) == [
        "6:74 0.1 in of fit a side for `ply`: rattling / Did you mean `0.1 mm`?",
    ]


def test_what_readers_may_choose_is_judged_at_both_ends() -> None:
    assert sorted(said(joined(sheet="{value: 0.1, reader: 0.01 to 0.6}"), *RULES)) == [
        "5:100 readers may choose 0.01 mm of fit a side for `ply`: too tight for hand / "
        "Did you mean `0.01 in`?",
        "5:100 readers may choose 0.6 mm of fit a side for `ply`: rattling / "
        "Did you mean `0.06 mm`?",
    ]


def test_a_sheet_that_no_joint_goes_by_is_not_judged() -> None:
    assert said(joined("glued", sheet="0.1")) == []
    assert said(joined("0.15", sheet="3")) == []
    assert said(plan_text().replace("fit: 0.1", "fit: 3")) == []


@pytest.mark.parametrize("fit", ["knock-down", "glued", "press", "drop-in", "0.05", "0.25"])
def test_the_room_that_each_purpose_gives_is_what_it_wants(fit: str) -> None:
    assert said(joined(fit, ladder="17.2 to 18.6")) == []


def test_a_fit_that_looks_like_a_slip_is_asked_about_whatever_joints_make_of_it() -> None:
    slip = "0.01 mm of fit a side for `ply`: too tight for hand / Did you mean `0.01 in`?"
    asked, _ = said(joined("glued", sheet="0.01"))
    assert asked.endswith(slip)


OWN = "Give it a purpose in place of the length, such as `fit: knock-down`."
FOLLOWS = "It follows the fit of `ply`: change that, or state its own `width`."


@pytest.mark.parametrize(
    ("fit", "sheet", "words"),
    [
        ("0.02", "0.1", f"has 0.02 mm a side: too tight for hand / {OWN}"),
        ("0.3", "0.1", f"has 0.3 mm a side: loose / {OWN}"),
        ("0.1 in", "0.1", "has 2.54 mm a side: rattling / Did you mean `0.1 mm`?"),
        ("{purpose: press, width: 0.1}", "0.1",
         f"has 0.1 mm a side: a push of the hand, for a press joint / {OWN}"),
        ("{purpose: glued, width: 0.06}", "0.1",
         f"has 0.06 mm a side: hand-tight, for a glued joint / {OWN}"),
        ("{purpose: drop-in, width: 0.6}", "0.1",
         "has 0.6 mm a side: rattling, for a drop-in joint / Did you mean `0.06 mm`?"),
        ("glued", "0.25", f"has 0.3 mm a side: loose, for a glued joint / {FOLLOWS}"),
        ("glued", "0.02", f"has 0.07 mm a side: hand-tight, for a glued joint / {FOLLOWS}"),
    ],
)  # fmt: skip
def test_a_joint_is_judged_by_its_purpose(fit: str, sheet: str, words: str) -> None:
    # At the fit that the joint states.
    assert said(joined(fit, sheet), *RULES) == [f"19:43 `side.slot` {words}"]


def test_play_at_the_ends_is_judged_apart() -> None:
    assert said(joined("{width: 0.1, ends: 0.9}")) == []
    assert said(joined("{width: 0.1, ends: 1.1}")) == [
        "19:5 the tab has 2.2 mm of play in `side.slot` / "
        "The tab is 60 mm wide: give both the same size by name."
    ]


def test_a_stated_width_is_judged_at_both_ends_of_the_range() -> None:
    """18.25 takes 17.2 with 0.525 a side, and is too narrow for 18.6."""
    fixed = joined(side=SLOT.replace("takes: ply", "width: 18.25"), ladder="17.2 to 18.6")
    assert sorted(said(fixed, *ALL, "sheet-thicker-than-slot")) == [
        "12:7 `side.slot` has 0.525 mm a side: rattling (at 17.2mm) / "
        "Write `takes: ply` in place of its width.",
        "12:7 slot `side.slot` is 0.35 mm too narrow for its sheet (at 18.6mm) / "
        "Write `takes: ply` in place of its width.",
    ]


COMB = """\
slots:
  slot: {at: [40, 150], length: 260, angle: 90, takes: ply}
  repeat: {count: 9, step: [40, 0]}
"""


def test_what_is_long_and_many_binds_sooner() -> None:
    """260 mm use up 0.032 mm, nine at once 0.06 mm: of 0.1 mm 0.008 mm are left to feel."""
    text = plan_text(COMB, TAB, "tab: rail.tab, into: side.slots.1")
    assert said(text, *RULES) == [
        "21:5 `side.slots.1` has 0.1 mm a side over 260 mm, 9 together: too tight for hand / "
        "Write `fit: knock-down` at the joint: what is long or many gets more room by it."
    ]
    assert said(text.replace("slots.1}", "slots.1, fit: knock-down}"), *RULES) == []


def test_one_feature_for_joints_of_several_fits_is_told() -> None:
    tabs = TAB + "\nother: {tabs: {edge: right, at: 30, width: 60, takes: ply}}"
    joints = f"{JOINT}, fit: press\ntab: rail.other, into: side.slot, fit: glued"
    (found,) = remarks(plan_text(SLOT, tabs, joints), "fit-shared")
    assert (found.severity, _words(found)) == (
        Severity.NOTE,
        "20:43 joints ask for press and glued at `side.slot`, which is cut once: 0.15 mm a side / "
        "The loosest counts: give them one fit, or features of their own.",
    )


def test_a_fit_where_nothing_follows_it_is_told() -> None:
    text = joined("glued", side=SLOT.replace("takes: ply", "width: 18"))
    assert said(text, "fit-of-nothing") == [
        "19:43 the fit changes nothing at `side.slot` / "
        "Write `takes:` with the sheet that goes in, in place of its width."
    ]
    # What the plan says for all of its joints need not count at each.
    whole = joined(side=SLOT.replace("takes: ply", "width: 18"))
    assert said(whole.replace("parts:", "joint-fit: glued\nparts:", 1), "fit-of-nothing") == []


def test_the_workshops_own_limits_count() -> None:
    found = workshop(joined(sheet="0.3"))
    plan = found.plans[0]
    loose = [each.rule for each in prove_plan(plan, found.stock).findings if each.rule in RULES]
    wider = replace(plan, play=replace(plan.play, slides=0.3))
    easy = [each.rule for each in prove_plan(wider, found.stock).findings if each.rule in RULES]
    assert (loose, easy) == (["fit-too-loose"], [])
