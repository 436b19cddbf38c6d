"""Pieces that hang on screws alone: what those are allowed, against the load that is stated."""

from __future__ import annotations

import pytest

from tests.plans import altered, proved

TRAY = """\
plan: Tray under a top
version: 1.0.0
summary: A tray that hangs under a top.
sheets: {ply: {stock: birch-plywood-18, published-for: 17.8}}
parts:
  top:
    sheet: ply
    outline: {rectangle: [600, 400]}
    features:
      pilots:
        hole: {at: [[200, 150], [400, 150], [200, 250], [400, 250]], diameter: 2.6, depth: 12}
  tray:
    sheet: ply
    outline: {rectangle: [300, 200]}
    features:
      screws: {hole: {at: [[50, 50], [250, 50], [50, 150], [250, 150]], for: screw-4x30}}
standing: {piece: top, looks: down}
joints: [{face: tray.screws, on: top.pilots, side: show}]
fastenings: [{screw: screw-4x30, joins: [tray.screws, top.pilots]}]
spans: {tray: {part: tray, supports: [50, 250], load: {kg: LOAD}}}
steps: [{title: All, add: [top, tray], text: Screw.}]
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def plan(load: float) -> str:
    return TRAY.replace("LOAD", str(load))


def told(text: str) -> list[str]:
    return [each.message for each in proved(text).findings if each.rule == "screws-overpulled"]


def allowed_kg(screws: int) -> float:
    """NDS's table for a #8 screw (0.164 in) in wood of 0.50 is 117 lb an inch of thread: 2850 x
    0.25 x 0.164. Here birch plywood of its density over 1.1, a shank of 4 mm, 12.2 mm of thread."""
    (made,) = proved(plan(1)).made
    gravity = made.settled.sheet("ply").stock.density / 1000 / 1.1
    assert pytest.approx(117, abs=0.5) == 2850 * 0.5**2 * 0.164
    pounds_an_inch = 2850 * gravity**2 * (4 / 25.4)
    return screws * pounds_an_inch * (30 - 17.8) / 25.4 * 0.45359237


def test_a_tray_that_hangs_on_screws_is_compared_with_their_withdrawal() -> None:
    (made,) = proved(plan(1)).made
    assert made.build is not None
    own = made.build.drawn.assembled.piece("tray").mass
    most = allowed_kg(4) - own
    assert told(plan(round(most - 0.5, 2))) == []
    (message,) = told(plan(round(most + 0.5, 2)))
    assert message.startswith("`tray` hangs on 4 screws with ")
    assert message.endswith(f"which bear {allowed_kg(4):.1f} kg")


PEG = "      peg: {hole: {at: [%s], diameter: 8, depth: 12}}\n"
DOWEL = "{dowel: dowel-8x30, joins: [tray.peg, top.peg]}"
PLAINLY_NOT = {
    "lies": [("looks: down", "looks: up")],
    "dowel too": [
        ("top.pilots]}]", f"top.pilots]}}, {DOWEL}]"),
        ("      pilots:", f"{PEG % '300, 200'}      pilots:"),
        ("      screws:", f"{PEG % '150, 100'}      screws:"),
    ],
    "by the metre": [("load: {kg: 900}", "load: {kg-per-m: 900}")],
}


@pytest.mark.parametrize("case", PLAINLY_NOT)
def test_nothing_is_said_where_the_way_of_bearing_is_not_plain(
    case: str,
) -> None:
    assert told(plan(900))
    assert told(altered(plan(900), *PLAINLY_NOT[case])) == []
