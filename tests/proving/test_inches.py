"""Inch plans are told in inches: the twins of remarks that other tests make in millimetres."""

from __future__ import annotations

import re
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.reader import INCHES
from kerfolio.basis.said import told
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.plans import lay_down, proved

RACK = """\
plan: Probe rack
version: 1.0.0
summary: A rack to measure with.
units: in
sizes: {t: thickness(ply), w: 12, h: 5}
sheets:
  ply: {stock: plywood-23-32, size: 96 x 48, published-for: 23/32 in, fit: 0.005}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    grain: along y
    outline: {polygon: [[0, 0], [8, 0], [8, h, {round: 1}], [0, h, {round: 1}]]}
    features:
      rail-slot: {slot: {at: [4, 2.5], length: 2.5, angle: 90, takes: ply}}
      bolt: {hole: {at: [1.5, 1.5], for: bolt-m6x40}}
  rail:
    sheet: ply
    grain: along x
    outline: {rectangle: [w, h]}
    features:
      left-tab: {tabs: {edge: left, at: 1.25, width: 2.5, depth: t}}
      right-tab: {tabs: {edge: right, at: 1.25, width: 2.5, takes: ply}}
joints:
  - {tab: rail.left-tab, into: side.left.rail-slot, show: out, looking: right}
  - {tab: rail.right-tab, into: side.right.rail-slot, show: out, looking: left}
hardware: [{item: bolt-m6x40, count: 2, for: sides}]
cuts:
  profile: {sheet: ply, cutter: compression-1-4in, speed: 18000 rpm, feed: 180 in/min,
    plunge: 45 in/min, passes: [0.31, rest], skim: 0.01, bridges: 4}
steps:
  - title: Put it together
    add: [side.left, rail, side.right]
    hardware: {bolt-m6x40: 2}
    text: Push the tabs home.
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""


def test_a_good_inch_plan_is_not_warned_of() -> None:
    assert [each for each in every_finding(RACK) if each.severity is not Severity.NOTE] == []


@pytest.mark.parametrize(
    ("old", "new", "rule", "message", "advice"),
    [
        (
            "size: 96 x 48",
            "size: 13 x 12",
            "larger-than-sheet",
            "part `rail` is 13 7/16 x 5 in, too large",
            "The sheet leaves 12 7/32 x 11 7/32 in inside its margins (grain along x).",
        ),
        (
            "size: 96 x 48",
            "size: 72 x 36",
            "size-not-sold",
            "`plywood-23-32` is not sold as 72 x 36 in",
            "`plywood-23-32` (content/sheets.yaml) is sold as 96 x 48 in, 120 x 48 in; a size of "
            "your own goes into `stock/`.",
        ),
        (
            "depth: t}",
            "depth: 0.8}",
            "tab-not-flush",
            "`rail.left-tab` stands proud by 0.081 in",
            "Write `takes: ply` in place of its depth to end flush, or `end: proud` if that is "
            "meant.",
        ),
        (
            "depth: t}",
            "depth: 0.2}",
            "tab-barely-enters",
            "`rail.left-tab` reaches 13/64 in into its slot",
            "The sheet is 23/32 in thick: write `takes: ply`.",
        ),
        (
            "length: 2.5, angle",
            "length: 2.4, angle",
            "tab-wider-than-slot",
            "`side.right.rail-slot` is 0.090 in too short for its tab",
            "The tab is 2 1/2 in wide: give both the same size by name.",
        ),
        (
            "angle: 90, takes: ply",
            "angle: 90, width: 0.7",
            "sheet-thicker-than-slot",
            "slot `side.rail-slot` is 0.019 in too narrow for its sheet",
            "Write `takes: ply` in place of its width.",
        ),
        (
            "for: bolt-m6x40}}",
            "diameter: 3/16 in}}",
            "hole-to-drill",
            "hole `side.bolt` is 3/16 in wide",
            "Cutter `compression-1-4in` is 1/4 in: drill it, or use a smaller cutter.",
        ),
        (
            "skim: 0.01",
            "skim: 0.125",
            "deep-skim",
            "`profile` goes 1/8 in into the spoilboard",
            "A hundredth of an inch is enough: `skim: 0.01`.",
        ),
        (
            "feed: 180 in/min",
            "feed: 180",
            "wrong-value",
            "`180` is no feed with a unit",
            "Write it with its unit: `180 in/min`.",
        ),
        (
            "fit: 0.005",
            "fit: 0",
            "fit-too-tight",
            "0 in of fit a side for `ply`: too tight for hand",
            "Write `fit: 0.005`, say: five thousandths of an inch a side goes in by hand.",
        ),
        (
            "published-for: 23/32 in, ",
            "published-for: 11/16 by 1/64, ",
            "wrong-value",
            "`11/16 by 1/64` is no range",
            "Write `11/16 in to 3/4 in`, or one thickness.",
        ),
        (
            "published-for: 23/32 in, ",
            "published-for: 1 in, ",
            "outside-stock",
            "`ply` is published from 1 in",
            "`plywood-23-32` (content/sheets.yaml) is sold at 0.688 to 0.750 in: correct the "
            "range or name another stock.",
        ),
        (
            "outline: {rectangle: [w, h]}",
            "outline: {rectangle: 12}",
            "wrong-kind",
            "expected two sides, found `12`",
            "Write `[14, 18]`.",
        ),
        (
            "left-tab: {tabs: {edge: left, at: 1.25, width: 2.5",
            "left-tab: {tabs: {edge: left, at: 4.25, width: 2.5",
            "tab-off-edge",
            "tab `rail.left-tab` is not on the edge: edge 0 in to 5 in, tab 4 1/4 in to 6 3/4 in",
            "The edge must be straight, and as long as the feature, where it stands.",
        ),
    ],
)
def test_a_mistake_is_told_in_inches(
    old: str, new: str, rule: str, message: str, advice: str
) -> None:
    assert RACK.count(old) == 1
    text = RACK.replace(old, new)
    meant = [each for each in every_finding(text) if each.rule == rule and each.message == message]
    assert [each.advice for each in meant] == [advice], every_finding(text)
    for each in every_finding(text):
        assert not re.search(r"\b(mm|kg)\b", f"{each.message} {each.advice}"), each


def every_finding(text: str) -> list[Finding]:
    with TemporaryDirectory() as folder:
        workshop, read = read_workshop(lay_down(Path(folder) / "shop", text))
    assert workshop is not None
    proofs = [prove_plan(plan, workshop.stock) for plan in workshop.plans]
    return [*read, *(each for proof in proofs for each in proof.findings)]


def test_the_thickness_concerned_is_told_in_inches() -> None:
    ladder = "published-for: 11/16 in to 3/4 in by 1/32 in"
    text = RACK.replace("published-for: 23/32 in", ladder).replace(
        "right-tab:", "dish: {pocket: {at: [6, 3], circle: 1, depth: 0.7}}\n      right-tab:"
    )
    (found,) = [each for each in proved(text).findings if each.rule == "deeper-than-sheet"]
    assert found.message == "pocket `rail.dish` is 0.700 in deep (at 11/16 in)"
    facts = [(each.name, round(each.value, 4), each.unit) for each in found.facts]
    assert facts == [
        ("depth", 17.78, "mm"),
        ("thickness", 17.46, "mm"),
        ("thickness", 17.46, "mm"),
    ]
    assert found.subject == "rail.dish"
    assert found.mark
    assert told(found.mark.at, INCHES) == "11/16 in"
    assert found.mark.variant == "11-16in"
