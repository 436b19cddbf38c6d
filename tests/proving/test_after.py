"""Rules over a settled plan: where features lie, and what cutters and sheets allow."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding, Severity
from tests.plans import RACK, remarks
from tests.settling.panels import findings_of

Told = list[tuple[str, str]]


def told(findings: tuple[Finding, ...]) -> Told:
    return [(each.rule, each.message) for each in findings]


@pytest.mark.parametrize(
    ("features", "expected"),
    [
        (
            "w: {window: {at: [390, 150], rectangle: [40, 40]}}",
            [("feature-outside", "window `panel.w` lies partly outside the part")],
        ),
        (
            "p: {pocket: {at: [500, 150], circle: 40, depth: 5}}",
            [("feature-outside", "pocket `panel.p` lies outside the part")],
        ),
        (
            "g: {groove: {from: [500, 0], to: [500, 300], width: 12, depth: 5}}",
            [("feature-outside", "groove `panel.g` lies outside the part")],
        ),
        (
            "e: {engrave: {text: I, at: [395, 150], angle: 90, height: 12, depth: 0.5}}",
            [("feature-outside", "engraving `panel.e` lies partly outside the part")],
        ),
        ("g: {groove: {from: [0, 40], to: [400, 40], width: 12, depth: 5}}", []),
        (
            "n: {notch: {edge: top, at: 100, depth: 60, width: 5.9}}",
            [("smaller-than-cutter", "notch `panel.n` is 5.9 mm wide")],
        ),
        # Relief is for walls as long as these; a stated width asks for none.
        (
            "n: {notch: {edge: top, at: 100, depth: 5, takes: ply}}",
            [("relief-eats-wall", "relief leaves 0.79 mm of a wall of 5.1 mm at `panel.n`")],
        ),
        ("n: {notch: {edge: top, at: 100, depth: 5, width: 18}}", []),
        (
            "w: {window: {at: [200, 150], rounded-slot: [60, 4]}}",
            [("smaller-than-cutter", "window `panel.w` is 4 mm wide")],
        ),
        (
            "g: {groove: {from: [0, 40], to: [400, 40], width: 4, depth: 5}}",
            [("smaller-than-cutter", "groove `panel.g` is 4 mm wide")],
        ),
        (
            "g: {groove: {from: [0, 40], to: [400, 40], width: 12, depth: 17.8}}",
            [("deeper-than-sheet", "groove `panel.g` is 17.8 mm deep")],
        ),
        (
            "e: {engrave: {text: I, at: [200, 150], height: 12, depth: 20}}",
            [("deeper-than-sheet", "engraving `panel.e` is 20 mm deep")],
        ),
        (
            "h: {hole: {at: [50, 50], diameter: 7, counterbore: {diameter: 14, depth: 18}}}",
            [("deeper-than-sheet", "a recess of `panel.h` goes through the sheet")],
        ),
    ],
)
def test_features_of_a_panel(features: str, expected: Told) -> None:
    assert told(findings_of(features)) == expected


OVERLAPS = """
one: {window: {at: [100, 100], rectangle: [80, 40]}}
two: {%s}
"""


@pytest.mark.parametrize(
    ("second", "meets"),
    [
        ("window: {at: [150, 100], circle: 40}", True),
        ("window: {at: [170, 100], circle: 40}", False),
        ("notch: {edge: left, at: 100, depth: 70, takes: ply}", True),
        ("hole: {at: [100, 100], diameter: 8}", True),
        ("hole: {at: [100, 100], diameter: 8, depth: 9}", False),
        ('engrave: {text: "PLANK", at: [140, 100], height: 12, depth: 0.5}', True),
        ("pocket: {at: [100, 100], circle: 60, depth: 6}", False),
    ],
)
def test_openings_that_run_into_each_other(second: str, meets: bool) -> None:
    rules = [each.rule for each in findings_of(OVERLAPS % second)]
    assert ("features-overlap" in rules) is meets


def test_a_part_cut_in_two_names_the_part() -> None:
    findings = findings_of("w: {window: {at: [200, 150], rectangle: [20, 300]}}")
    assert ("falls-apart", "part `panel` falls into 2 pieces") in told(findings)


def test_a_part_cut_away_altogether_is_told() -> None:
    findings = findings_of("w: {window: {at: [200, 150], rectangle: [500, 500]}}")
    assert ("falls-apart", "part `panel` is cut away") in told(findings)


def test_relief_that_cuts_a_part_in_two_is_told() -> None:
    # A wall of 1 mm beside it stands, but reliefs of a radius of 3.05 mm go through it.
    text = "s: {slot: {at: [10, 150], length: 200, angle: 90, takes: ply}}"
    wide = told(findings_of(text.replace("takes: ply", "width: 18")))
    assert wide == [("breaks-out", "1 mm of wood between slot `panel.s` and the edge")]
    # The panel, and what stands between the two reliefs.
    expected = [("falls-apart", "part `panel` falls into 2 pieces")]
    assert told(findings_of(text, relief="sideways")) == expected


def test_a_size_that_is_not_sold_is_a_warning() -> None:
    found = remarks(RACK.replace("size: 2440 x 1220", "size: 2000 x 1000"))
    assert [(each.rule, each.severity) for each in found] == [("size-not-sold", Severity.WARNING)]
    assert found[0].message == "`birch-plywood-18` is not sold as 2000 x 1000 mm"


def test_a_size_in_inches_is_that_in_millimetres_within_the_trade() -> None:
    # 96 x 48 in is 2438.4 x 1219.2 mm, sold as 2440 x 1220; mills allow 3 to 4 mm on either side
    # (birch plywood mill, table of size tolerances).
    assert remarks(RACK.replace("size: 2440 x 1220", "size: 96 in x 48 in")) == []


def test_a_gap_that_the_cutter_does_not_pass_is_an_error() -> None:
    found = remarks(RACK.replace("fit: 0.1}", "fit: 0.1, gap: 5}"))
    assert told(found) == [("gap-too-small", "the gap is 5 mm on sheet `ply`")]
    assert remarks(RACK.replace("fit: 0.1}", "fit: 0.1, gap: 6}")) == []
