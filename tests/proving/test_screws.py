"""Screws through one part into another; lengths are plain sums, shares are common practice."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.proving.two_panels import plan_text, told, weighs

RULES = ("screw-pokes-through", "screw-too-short", "pilot-missing", "screw-near-edge")
SIDE = "holes: {hole: {at: [[100, 150], [160, 150]], diameter: 5.5%s}}"
RAIL = "pilots: {hole: {at: [[100, 60], [160, 60]], %s}}"
FACE = "face: rail.pilots, on: side.holes"


def screwed(screw: str = "pilot: screw-5x30", sunk: str = "") -> str:
    return plan_text(SIDE % sunk, RAIL % screw, FACE)


def sink(depth: float) -> str:
    return f", counterbore: {{diameter: 12, depth: {depth}}}"


@pytest.mark.parametrize(
    ("screw", "sunk", "rule", "messages"),
    [
        # Two sheets of 17.8 mm are 35.6 mm: a screw of 30 mm ends 5.6 mm under the far face.
        ("pilot: screw-5x30", "", "screw-pokes-through", []),
        ("pilot: screw-5x40", "", "screw-pokes-through", ["`screw-5x40` comes through `rail`"]),
        # Sunk by 5 mm it ends 0.6 mm under it, less than the millimetre asked for.
        (
            "pilot: screw-5x30",
            sink(5),
            "screw-pokes-through",
            ["`screw-5x30` comes through `rail`"],
        ),
        ("pilot: screw-5x30", sink(4), "screw-pokes-through", []),
        # 25 mm less 17.8 mm leave 7.2 mm of thread, less than half of the second sheet.
        ("pilot: screw-4x25", "", "screw-too-short", ["`screw-4x25` bites 7.2 mm of `rail`"]),
        ("pilot: screw-5x30", "", "screw-too-short", []),
    ],
)
def test_how_deep_a_screw_goes(screw: str, sunk: str, rule: str, messages: list[str]) -> None:
    assert sorted({*told(screwed(screw, sunk), rule)}) == messages


def test_a_screw_hole_needs_a_pilot_hole_opposite() -> None:
    side = "holes: {hole: {at: [[100, 150], [160, 150]], for: screw-5x30}}"
    plain = plan_text(side, RAIL % "diameter: 3", FACE)
    assert "`rail.pilots.1` is no pilot hole" in told(plain, "pilot-missing")
    assert weighs(plain, "pilot-missing") == {Severity.WARNING}
    assert told(plan_text(side, RAIL % "pilot: screw-5x30", FACE), *RULES) == []


@pytest.mark.parametrize(("away", "fires"), [(9, True), (11, False)])
def test_pilot_holes_keep_two_diameters_from_an_edge(away: float, fires: bool) -> None:
    # A screw of 5 mm: 10 mm from its middle to the edge.
    rail = f"pilots: {{hole: {{at: [[100, {away}]], pilot: screw-5x30}}}}"
    messages = told(plan_text(rail=rail), "screw-near-edge")
    assert messages == ([f"screw `rail.pilots` is {away} mm from the edge"] if fires else [])
