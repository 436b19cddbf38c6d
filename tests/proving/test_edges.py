"""Edges against joints: roundings, banding and masks.

The largest radii are geometry (half a sheet, the way to a wall). That shoulders stay square and
that walls keep two thirds is common practice, no single source.
"""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.reader import INCHES
from kerfolio.basis.said import told
from kerfolio.proving import edges
from kerfolio.proving.prove import prove_plan
from kerfolio.proving.rules import rules_of
from tests.edged import BARE, EDGED, edged_panel, settled_panel, with_edges
from tests.plans import RACK, settled_at, workshop

SQUARE = "Leave that edge `square`, or round over a stretch of it that keeps clear."
SLOT = "s: {slot: {at: [200, 283], length: 60, width: 18}}"  # its wall is 8 mm from the top
NOTCH = "n: {notch: {edge: top, at: 100, depth: 12, width: 18}}"
TAB = "t: {tabs: {edge: top, at: 100, depth: 12, width: 18}}"
GROOVE = "g: {groove: {from: [50, 0], to: [50, 300], takes: ply, depth: 6}}"


def found_in(plan: str) -> list[Finding]:
    """Return what the rules of edges say of a plan at 17.8 mm."""
    settled = settled_panel(plan) if plan.startswith("plan: Panel") else settled_at(17.8, plan)
    return [each for rule in rules_of(edges) for each in rule.check(settled)]


def remarks(plan: str) -> list[tuple[str, str, str]]:
    return [(each.rule, each.message, each.advice) for each in found_in(plan)]


def test_nothing_stated_is_nothing_told() -> None:
    assert remarks(RACK) == []


@pytest.mark.parametrize(
    ("edge", "features", "radius", "message", "advice"),
    [
        (
            "top",
            BARE,
            8.9,
            "edge `top` of `panel` is larger than half of the sheet, 8.9 mm",
            "At most 8.9 mm fits.",
        ),
        (
            "top",
            SLOT,
            8.0,
            "edge `top` of `panel` runs into slot `panel.s`, 8 mm away",
            "At most 8 mm fits.",
        ),
        (
            "all",
            SLOT,
            8.0,
            "`all` other edges of `panel` runs into slot `panel.s`, 8 mm away",
            "At most 8 mm fits.",
        ),
        (
            "top",
            NOTCH,
            4.0,
            "edge `top` of `panel` takes more than a third of the walls of notch `panel.n`, 4 mm",
            "At most 4 mm fits.",
        ),
        # A gap of 300 / 21 mm and half of the fit; a third of that is 4.778 mm.
        (
            "top",
            "f: {fingers: {edge: left, count: 21, takes: ply, first: gap}}",
            4.77,
            "edge `top` of `panel` takes more than a third of the walls of fingers `panel.f`, "
            "4.78 mm",
            "At most 4.7 mm fits.",
        ),
    ],
)
def test_the_largest_radius_is_told_and_goes(
    edge: str, features: str, radius: float, message: str, advice: str
) -> None:
    def at(mm: float) -> list[tuple[str, str, str]]:
        return remarks(edged_panel(f"{{{edge}: {{round-over: {mm}}}}}", features))

    assert at(radius) == []
    ((rule, words, fits),) = at(round(radius + 0.05, 2))
    assert rule == "round-over-too-large"
    assert words.partition(" on ")[2] == message
    assert fits == advice


def test_a_rim_keeps_off_what_is_beside_it() -> None:
    features = """
w: {window: {at: [200, 150], rectangle: [60, 40]}}
h: {hole: {at: [200, 180], diameter: 10}}
"""
    stated = "{{also: [{{opening: w, treatment: {{round-over: {}}}}}]}}"
    assert remarks(edged_panel(stated.format(5), features)) == []
    ((rule, words, _),) = remarks(edged_panel(stated.format(6), features))
    assert rule == "round-over-too-large"
    assert words.startswith(
        "round-over of 6 mm on the rim of `panel.w` runs into hole `panel.h`, 5"
    )


def test_of_one_face_the_whole_sheet_and_only_what_is_cut_in_it() -> None:
    shown = "{{top: {{round-over: {}, faces: {}}}}}"
    assert remarks(edged_panel(shown.format(17.8, "show"))) == []
    ((_, words, _),) = remarks(edged_panel(shown.format(17.9, "show")))
    assert (
        words == "round-over of 17.9 mm on edge `top` of `panel` is larger than the sheet, 17.8 mm"
    )
    assert remarks(edged_panel(shown.format(6, "back"), GROOVE)) == [], (
        "the groove is in the show face"
    )


@pytest.mark.parametrize(
    ("features", "message"),
    [
        (TAB, "takes the shoulders of tab `panel.t`"),
        (
            "f: {fingers: {edge: top, count: 5, takes: ply}}",
            "takes the shoulders of fingers `panel.f`",
        ),
        (GROOVE, "runs into groove `panel.g`, which reaches the edge"),
    ],
)
def test_an_edge_within_a_joint_takes_no_rounding(features: str, message: str) -> None:
    words = f"round-over of 2 mm on edge `top` of `panel` {message}"
    found = remarks(edged_panel("{top: {round-over: 2}}", features))
    assert found == [("round-over-in-joint", words, SQUARE)]


def test_a_stretch_that_keeps_clear_may_be_rounded() -> None:
    clear = "{also: [{from: [140, 300], to: [400, 300], treatment: {round-over: 6}}]}"
    assert remarks(edged_panel(clear, TAB)) == []


BUTTED = RACK.replace("joints:\n", "joints:\n  - {edge: rail.top, on: side.left.bolt}\n")


@pytest.mark.parametrize("edge", ["top", "all"])
def test_an_edge_that_butts_takes_neither(edge: str) -> None:
    rules = [
        each.rule
        for each in found_in(
            with_edges(
                BUTTED, "rail", f"{{{edge}: {{round-over: 1}}, left: square, right: square}}"
            )
        )
    ]
    assert rules == ["round-over-in-joint"]
    ((rule, words, _),) = remarks(with_edges(BUTTED, "rail", "{top: {band: Oak, thickness: 2}}"))
    assert rule == "banding-in-joint"
    assert words == "banding on edge `top` of `rail` makes it longer by 2 mm, where it butts"


@pytest.mark.parametrize(
    ("stated", "features", "message", "advice"),
    [
        (
            "{top: {band: Oak, thickness: 2}}",
            NOTCH,
            "makes notch `panel.n` deeper by 2 mm",
            "Draw that edge 2 mm further in, or leave it `square`.",
        ),
        (
            "{top: {band: Oak}}",
            TAB,
            "makes tab `panel.t` shorter by its thickness",
            "Draw that edge its thickness further in, or leave it `square`.",
        ),
    ],
)
def test_banding_within_a_joint_is_told(
    stated: str, features: str, message: str, advice: str
) -> None:
    (found,) = found_in(edged_panel(stated, features))
    assert found.severity is Severity.WARNING
    assert found.message == f"banding on edge `top` of `panel` {message}"
    assert found.advice == advice


def test_banding_elsewhere_is_nobodys_business() -> None:
    assert remarks(edged_panel("{bottom: {band: Oak, thickness: 2}}", TAB)) == []


def test_glued_edges_are_asked_for_their_mask() -> None:
    glued = RACK.replace("looking: right}", "looking: right, fit: glued}")
    assert remarks(glued) == [], "a part that says nothing of its edges is not asked"
    message = "the edge that `rail.left-tab` stands on is glued and not masked"
    advice = "Mark it `mask`, so that no finish comes between wood and glue."
    # The slot that both tabs go into is one, so that the tab on the right is glued, too.
    found = remarks(with_edges(glued, "rail", "{top: ease, right: mask}"))
    assert found == [("glued-edge-unmasked", message, advice)]
    assert remarks(with_edges(glued, "rail", "{top: ease, left: mask, right: mask}")) == []


@pytest.mark.parametrize(("when", "count"), [("before assembly", 2), ("after assembly", 0)])
def test_a_finish_after_assembly_asks_for_no_mask(when: str, count: int) -> None:
    glued = RACK.replace("looking: right}", "looking: right, fit: glued}")
    finished = f"{glued}finish: {{of: varnish, coats: 3, when: {when}}}\n"
    assert len(remarks(with_edges(finished, "rail", "{top: ease}"))) == count


def test_a_tab_as_wide_as_its_edge_has_no_shoulders_to_mask() -> None:
    glued = RACK.replace("looking: right}", "looking: right, fit: glued}")
    wide = glued.replace("edge: left, at: 30, width: 60", "edge: left, at: 0, width: 120")
    assert remarks(with_edges(wide, "rail", "{top: ease, right: mask}")) == []


def test_the_tightest_place_of_a_range_counts() -> None:
    """Published for 17.6 to 18.2 mm: half of the thinnest sheet is 8.8 mm."""
    found = workshop(with_edges(RACK, "rail", "{top: {round-over: 9}}"))
    told = prove_plan(found.plans[0], found.stock).findings
    (words,) = (each.message for each in told if each.rule == "round-over-too-large")
    assert words.endswith("is larger than half of the sheet, 8.8 mm (at 17.6mm)")


def test_inches_are_rounded_down_to_64ths() -> None:
    """8 mm are 20.2 sixty-fourths of an inch."""
    (found,) = found_in(edged_panel("{top: {round-over: 8.5}}", SLOT))
    assert told(found.counsel, INCHES) == "At most 5/16 in fits."


def test_every_treatment_may_stand_in_one_plan() -> None:
    assert [each for each in found_in(EDGED) if each.severity is Severity.ERROR] == []
