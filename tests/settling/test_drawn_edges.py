"""Notches and tabs within drawn outlines: those of a sheet's thickness follow their sheet.

A part drawn whole is compared with the same part stated: a plain rectangle with notches and tabs.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.model.outline import Drawing, Drawn, DrawnEdgeRule
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Amount, Named
from kerfolio.model.stock import Stock
from kerfolio.proving.prove import prove_plan
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPart
from tests.settling.panels import flat, panel, stated, variant
from tests.settling.test_drawn import Vertices, element

STATED = """
notches: {notch: {edge: top, at: 111, depth: 50, takes: ply}}
tabs: {tabs: {edge: right, at: 20, width: 60, takes: ply}}
"""
TAKES = DrawnEdgeRule(takes=Named("ply"))
LEFT = DrawnEdgeRule()
UNSAID = "h: {hole: {at: [9, 9], diameter: 8}}"
K = math.sqrt(2) * 3.175
QUARTER = math.tan(math.pi / 8)


def path(*points: tuple[float, ...]) -> Vertices:
    return tuple((float(p[0]), float(p[1]), float(p[2]) if len(p) > 2 else 0.0) for p in points)


RIGHT_TAB = ((300, 20), (318, 20), (318, 80), (300, 80))
TOP_NOTCH = ((120, 200), (120, 150), (102, 150), (102, 200))
WHOLE = path((0, 0), (300, 0), *RIGHT_TAB, (300, 200), *TOP_NOTCH, (0, 200))


def plan_of(
    outline: Vertices, features: str = UNSAID, *, drawn_for: str = "18", **said: object
) -> tuple[Plan, Stock]:
    """Return a plan of one drawn part with typed features; 7 in, -3 in off the drawing's 0,0."""
    plan, stock = stated(features, relief="dog-bone", ladder="17.2 to 18.6 by 0.7")
    off = tuple((x + 177.8, y - 76.2, b) for x, y, b in outline)
    shape = Drawn(
        file="p.svg",
        outline=Named("outline"),
        drawn_for=Amount(drawn_for) if drawn_for else None,
        **said,  # type: ignore[arg-type]
    )
    typed = () if features == UNSAID else plan.parts[0].features
    part = replace(plan.parts[0], shape=shape, features=typed)
    drawing = Drawing(file="p.svg", elements=(element("outline", off),))
    return replace(plan, parts=(part, plan.parts[1]), drawings=(drawing,)), stock


def made(outline: Vertices, thickness: float = 17.6, **said: object) -> SettledPart:
    settled, findings = settle(*plan_of(outline, **said), variant(thickness))  # type: ignore[arg-type]
    assert settled is not None, findings
    return settled.parts[0]


def told(outline: Vertices, features: str = UNSAID, **said: object) -> list[Finding]:
    """Return the findings on notches and tabs."""
    found = prove_plan(*plan_of(outline, features, **said)).findings  # type: ignore[arg-type]
    return [each for each in found if each.rule.startswith(("edge-", "tab-", "notch-", "no-t"))]


@pytest.mark.parametrize("thickness", [17.2, 18.0, 18.6])
@pytest.mark.parametrize("said", [{"notches": TAKES, "tabs": TAKES}, {}])
def test_a_part_drawn_whole_is_the_part_stated(thickness: float, said: dict[str, object]) -> None:
    drawn = made(WHOLE, thickness, **said)
    typed = panel(STATED, thickness, outline="{rectangle: [300, 200]}")
    for mine, theirs in ((drawn.plain, typed.plain), (drawn.routed, typed.routed)):
        assert flat(mine).symmetric_difference(flat(theirs)).area < 1e-6
    for mine, theirs in zip(drawn.drill_centres, typed.drill_centres, strict=True):
        assert mine == pytest.approx(theirs)
    for one, other in zip(drawn.features, typed.features, strict=True):
        assert (one.name, one.kind, one.takes) == (other.name, other.kind, other.takes)
        assert one.at == pytest.approx(other.at)
        assert one.direction == pytest.approx(other.direction)
        assert (one.width.value, one.length.value) == pytest.approx(
            (other.width.value, other.length.value)
        )


def test_dog_bones_and_roundings_of_the_makers_own_are_seen_through() -> None:
    """Discs of 6.35 mm in the notch and at the tab's root; the tab's rounded end stays as drawn."""
    tab = ((300, 20 - K, -1), (300 + K, 20), (315, 20, QUARTER), (318, 23), (318, 77, QUARTER))
    tab += ((315, 80), (300 + K, 80, -1), (300, 80 + K))
    notch = ((120, 200), (120, 150 + K, -1), (120 - K, 150), (102 + K, 150, -1), (102, 150 + K))
    outline = path((0, 0), (300, 0), *tab, (300, 200), *notch, (102, 200), (0, 200))
    drawn = made(outline, notches=TAKES, tabs=TAKES)
    features = STATED.replace("width: 60", "width: 60, round: 3")
    typed = panel(features, 17.6, outline="{rectangle: [300, 200]}")
    assert flat(drawn.routed).symmetric_difference(flat(typed.routed)).area < 1e-3


@pytest.mark.parametrize("turn", [30.0, 90.0, 217.0])
def test_outlines_may_lie_at_any_angle(turn: float) -> None:
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    turned = tuple((x * cos - y * sin, x * sin + y * cos, b) for x, y, b in WHOLE)
    drawn, straight = made(turned), made(WHOLE)
    assert flat(drawn.routed).area == pytest.approx(flat(straight.routed).area, abs=1e-3)
    assert {each.name for each in drawn.features} == {"notches", "tabs"}


def test_a_notch_on_a_slanting_or_curved_edge_follows() -> None:
    slant = path((0, 0), (300, 0), (300, 160), (120, 196), (120, 150), (102, 150), (102, 199.6))
    slant = (*slant, *path((0, 220)))
    curve = path((0, 0), (300, 0), (300, 200), (120, 200, 0), (120, 150), (102, 150), (102, 200))
    curve = (*curve, *path((0, 200)))
    bowed = tuple((x, y, 0.1 if (x, y) in {(300, 200), (102, 200)} else b) for x, y, b in curve)
    for outline in (slant, bowed):
        for thickness in (17.2, 18.6):
            (notch,) = made(outline, thickness).features
            assert notch.width.value == pytest.approx(thickness + 0.2)
            assert flat(made(outline, thickness).plain).is_valid


def test_several_are_numbered_along_the_outline() -> None:
    comb = path((0, 0), (300, 0), (300, 200), (220, 200), (220, 150), (202, 150), (202, 200))
    comb = (*comb, *path((120, 200), (120, 150), (102, 150), (102, 200), (0, 200)))
    part = made(comb, notches=TAKES)
    assert [each.name for each in part.features] == ["notches.1", "notches.2"]
    assert [round(each.at[0]) for each in part.features] == [211, 111]


def test_what_follows_without_being_stated_is_noted() -> None:
    notch, tab = told(WHOLE)
    assert (notch.rule, notch.severity) == ("edge-follows", Severity.NOTE)
    assert notch.message == (
        "the outline `outline` has a notch 18 mm wide, at 288.8, 123.8 mm from the drawing's "
        "lower left: it is `panel.notches`, which takes `ply`"
    )
    assert notch.advice == (
        "Write `notches: takes ply` in the part's `drawing` to say so, or `notches: as drawn`."
    )
    assert tab.message.endswith("it is `panel.tabs`, which takes `ply`")
    assert told(WHOLE, notches=TAKES, tabs=TAKES) == []


def test_what_does_not_follow_is_told_with_what_to_write() -> None:
    """Nobody says what the drawing was made for: 18 mm is what the plywood is sold as."""
    notch, tab = told(WHOLE, drawn_for="")
    assert (notch.rule, notch.severity) == ("edge-as-drawn", Severity.WARNING)
    assert notch.message == (
        "the outline `outline` has a notch 18 mm wide, at 288.8, 123.8 mm from the drawing's "
        "lower left: it stays as drawn"
    )
    assert notch.advice == (
        "It follows no sheet and gets no relief: write `notches: takes ply` in the part's "
        "`drawing`, or `notches: as drawn`."
    )
    assert tab.message.startswith("the outline `outline` has a tab 18 mm long, at ")
    assert told(WHOLE, drawn_for="", notches=LEFT, tabs=LEFT) == []
    part = made(WHOLE, drawn_for="", notches=LEFT, tabs=LEFT)
    assert (part.features, part.size) == ((), (318, 200))


def test_a_notch_drawn_with_clearance_is_told_until_it_is_stated() -> None:
    wider = tuple((120.3 if x == 120 else x, y, b) for x, y, b in WHOLE)
    assert [each.rule for each in told(wider, tabs=LEFT)] == ["edge-as-drawn"]
    (notch,) = made(wider, notches=TAKES, tabs=LEFT).features
    assert (notch.width.value, notch.at[0]) == pytest.approx((17.8, 111.15))


FINGERS = path(
    *((0, 0), (300, 0), (300, 40), (318, 40), (318, 80), (300, 80), (300, 98), (318, 98)),
    *((318, 140), (300, 140), (300, 200), (0, 200)),
)


def test_fingers_share_their_walls_and_stay_as_drawn() -> None:
    rules = [(each.rule, each.message.partition(",")[0]) for each in told(FINGERS)]
    assert ("edge-as-drawn", "the outline `outline` has 2 tabs 18 mm long") in rules
    stated_ = told(FINGERS, tabs=TAKES, notches=LEFT)
    assert [each.advice for each in stated_] == [
        "They share walls, or their corners are not level: draw the edge straight there and "
        "state them under `features`, or write `tabs: as drawn`."
    ]


def test_fingers_of_which_some_end_the_edge_all_stay_as_drawn() -> None:
    """Else some would be as long as the sheet is thick, and some as they are drawn."""
    row = path((0, 0), (318, 0), (318, 40), (300, 40), (300, 80), (318, 80), (318, 120))
    row = (*row, *path((300, 120), (300, 160), (318, 160), (318, 200), (0, 200)))
    tabs, steps = told(row)
    assert tabs.message.startswith("the outline `outline` has a tab 18 mm long")
    assert tabs.message.endswith("it stays as drawn")
    assert steps.message.startswith("the outline `outline` steps back 18 mm 2 times, the first at")
    assert made(row).features == ()


def test_a_tab_at_the_end_of_an_edge_is_a_step() -> None:
    corner = path((0, 0), (318, 0), (318, 60), (300, 60), (300, 200), (0, 200))
    (finding,) = told(corner)
    assert finding.message == (
        "the outline `outline` steps back 18 mm once, at 486.8, -16.2 mm from the drawing's "
        "lower left: it stays as drawn"
    )
    assert finding.advice.startswith("A tab or notch at the end of an edge follows no sheet")
    assert told(corner, tabs=LEFT) == []


def test_a_stated_tab_over_a_drawn_one_is_an_error() -> None:
    """At 18 mm the part would grow from 318 to 336 mm."""
    features = "end-tabs: {tabs: {edge: right, at: 20, width: 60, takes: ply}}"
    for said in ({}, {"tabs": LEFT}):
        (finding,) = (each for each in told(WHOLE, features, **said) if each.rule[0] == "t")
        assert (finding.rule, finding.subject) == ("tab-drawn-twice", "panel.end-tabs")
        assert finding.message == (
            "tab `panel.end-tabs` lies over one that is drawn in the outline, at 309 mm, 50 mm"
        )
        assert finding.advice == (
            "Take it out of the plan and write `tabs: takes ply` in the part's `drawing`; "
            "or draw the edge straight."
        )
    beside = "end-tabs: {tabs: {edge: left, at: 20, width: 60, takes: ply}}"
    assert "tab-drawn-twice" not in [each.rule for each in told(WHOLE, beside)]


def test_a_stated_notch_over_a_drawn_one_is_an_error() -> None:
    features = "slit: {notch: {edge: top, at: 111, depth: 50, takes: ply}}"
    assert "notch-drawn-twice" in [each.rule for each in told(WHOLE, features)]


def test_a_sheet_that_no_notch_takes_is_an_error() -> None:
    plain = path((0, 0), (300, 0), (300, 200), (0, 200))
    settled, findings = settle(*plan_of(plain, notches=TAKES), variant(17.6))
    assert settled is None
    (finding,) = findings
    assert finding.message == "the outline `outline` has no notch 18 mm wide"
    assert finding.rule == "no-notch"
