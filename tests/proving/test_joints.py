"""Joints: ends that are not there, kinds that cannot meet, sheets that do not fit."""

from __future__ import annotations

import pytest

from tests.plans import proved

PLAN = """\
plan: Joined
version: 1.0.0
summary: Three panels of two sheets.
sheets:
  ply: {stock: birch-plywood-18}
  thin: {stock: birch-plywood-6-5}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [300, 200]}
    features:
      opening: {slot: {at: [100, 100], length: 60, angle: 90, takes: ply}}
      thin-opening: {slot: {at: [200, 100], length: 60, angle: 90, takes: thin}}
      crossing: {notch: {edge: top, at: 40, depth: 60, takes: ply}}
      corner: {fingers: {edge: left, count: 5, takes: ply}}
      bolt: {hole: {at: [[280, 20], [280, 40]], diameter: 8}}
  rail:
    sheet: ply
    outline: {rectangle: [300, 100]}
    features:
      tabs: {tabs: {edge: right, at: [10, 60], width: 30, depth: 18}}
      crossing: {notch: {edge: bottom, at: 150, depth: 40, takes: ply}}
  back:
    sheet: thin
    outline: {rectangle: [300, 100]}
    features:
      tab: {tabs: {edge: right, at: 20, width: 60, depth: 18}}
joints:
  - {JOINT}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


OF_NAMES = ("joint-kind", "joint-sheet", "unknown-joint-piece", "unknown-joint-feature")


def remarks(joint: str) -> list[tuple[str, str, str]]:
    found = proved(PLAN.replace("JOINT", joint)).findings
    return [(f.rule, f.message, f.advice) for f in found if f.rule in OF_NAMES]


def test_the_whole_stands_by_a_piece_that_is_there() -> None:
    text = PLAN.replace("joints:", "standing: {piece: sied.left, looks: left}\njoints:")
    found = proved(text.replace("JOINT", "tab: rail.tabs.2, into: side.left.opening")).findings
    assert [(f.message, f.advice) for f in found if f.rule == "unknown-standing"] == [
        ("no piece `sied.left`", "Did you mean `side.left`?")
    ]


@pytest.mark.parametrize(
    "joint",
    [
        "tab: rail.tabs, into: side.left.opening",
        "tab: rail.tabs.2, into: side.left.opening",
        "tab: back.tab, into: side.right.thin-opening",
        "notch: side.left.crossing, with: rail.crossing",
        "fingers: side.left.corner, with: side.right.corner",
        "face: side.left.bolt, on: side.right.bolt",
        "face: back, on: side.left, at: [10, 10]",
        "edge: rail.left, on: side.left.bolt",
        "wedge: back, through: side.left.thin-opening",
    ],
)
def test_joints_that_can_be_made_are_not_remarked_on(joint: str) -> None:
    assert remarks(joint) == []


@pytest.mark.parametrize(
    ("joint", "expected"),
    [
        (
            "tab: rail.tab, into: side.left.opening",
            ("unknown-joint-feature", "`rail` has no feature `tab`", "Did you mean `tabs`?"),
        ),
        (
            "tab: rail.tabs.x, into: side.left.opening",
            ("unknown-joint-feature", "`rail` has no feature `tabs.x`", "Did you mean `tabs`?"),
        ),
        (
            "tab: back.tab.1, into: side.left.thin-opening",
            ("unknown-joint-feature", "`back` has no feature `tab.1`", "Did you mean `tab`?"),
        ),
        (
            "tab: rail.tabs, into: side.opening",
            (
                "unknown-joint-piece",
                "no piece for `side.opening`",
                "Did you mean `side.left.opening` or `side.right.opening`?",
            ),
        ),
        (
            "tab: rail.tabs, into: side.left.corner",
            (
                "joint-kind",
                "`side.left.corner` is fingers",
                "Here belongs a slot or a notch or a groove or a pocket or a window, such as "
                "`side.left.opening` or `side.left.thin-opening` or `side.left.crossing`.",
            ),
        ),
        (
            "tab: side.left.opening, into: rail.tabs",
            ("joint-kind", "`side.left.opening` is a slot", "Here belongs a tab."),
        ),
        (
            "notch: side.left.crossing, with: rail.tabs",
            (
                "joint-kind",
                "`rail.tabs` is a tab",
                "Here belongs a notch or a slot, such as `rail.crossing`.",
            ),
        ),
        (
            "notch: side.left.crossing, with: side.left.crossing",
            ("joint-kind", "`side.left` is joined to itself", "A joint is between two pieces."),
        ),
        (
            "tab: back.tab, into: side.left.opening",
            (
                "joint-sheet",
                "`side.left.opening` takes `ply`, not `thin`",
                "`back` is cut from `thin`: write `takes: thin`.",
            ),
        ),
    ],
)
def test_joints_that_cannot_be_made_are_told(joint: str, expected: tuple[str, str, str]) -> None:
    assert expected in remarks(joint)
