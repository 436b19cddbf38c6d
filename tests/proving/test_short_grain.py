"""Tabs as wide as their sheet is thick, and nothing slim across the grain (common practice)."""

from __future__ import annotations

import pytest

from tests.plans import proved

PLAN = """\
plan: Grain
version: 1.0.0
summary: A part to look at.
sheets: {{ply: {{stock: {stock}, published-for: {thick}, fit: 0.1}}}}
parts:
  panel: {{sheet: ply, grain: {grain}, outline: {outline}{features}}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""
PANEL = "{rectangle: [400, 300]}"
FEET = (
    "{polygon: [[0, 0], [60, 0], [60, 200], [340, 200], [340, 0], [400, 0], [400, 300], [0, 300]]}"
)
HALVED = ", features: {n: {notch: {edge: top, at: [50, 350], depth: 100, takes: ply}}}"
WIDE_FEET = FEET.replace("[60,", "[110,").replace("[340,", "[290,")
STUBS = FEET.replace("200]", "50]")


def tabs(width: float, depth: float) -> str:
    return (
        f", features: {{t: {{tabs: {{edge: top, at: [40, 200], width: {width}, depth: {depth}}}}}}}"
    )


def told(rule: str, **asked: object) -> list[str]:
    stated: dict[str, object] = {
        **{"stock": "birch-plywood-18", "thick": 17.8, "grain": "along x"},
        **{"outline": PANEL, "features": ""},
        **asked,
    }
    found = proved(PLAN.format(**stated)).findings
    return [each.message for each in found if each.rule == rule]


@pytest.mark.parametrize(
    ("width", "messages"),
    [
        (12, ["tab `panel.t.1` is 12 mm wide, narrower than its sheet"]),
        (17.5, ["tab `panel.t.1` is 17.5 mm wide, narrower than its sheet"]),
        (17.8, []),
        (30, []),
    ],
)
def test_tabs_are_as_wide_as_their_sheet_is_thick(width: float, messages: list[str]) -> None:
    assert told("tab-narrow", features=tabs(width, 17.8)) == messages


THREE = {"stock": "birch-plywood-4", "thick": 3.8}


@pytest.mark.parametrize(
    ("asked", "messages"),
    [
        # Of three plies one thin one is left along a tab across the grain.
        ({**THREE, "features": tabs(20, 3.8)}, ["the grain runs across tab `panel.t.1`"]),
        ({**THREE, "features": tabs(20, 3.8), "grain": "along y"}, []),
        # Thirteen plies run both ways: a stout tab holds, a prong does not.
        ({"features": tabs(30, 45)}, ["the grain runs across tab `panel.t.1`"]),
        ({"features": tabs(30, 45), "grain": "along y"}, []),
        ({"features": tabs(30, 17.8)}, []),
        # A board without grain has none across.
        ({"stock": "mdf-18", "thick": 18, "features": tabs(30, 45)}, []),
        (
            {"outline": FEET},
            # Both feet, told once.
            [
                "the grain runs across an arm of `panel` at 30 mm, 200 mm, 200 mm long and 60 mm "
                "wide"
            ],
        ),
        ({"outline": FEET, "grain": "along y"}, []),
        ({"outline": STUBS}, []),
        # Beside a halving its mate holds them; solid or thin wood splits all the same.
        ({"features": HALVED}, []),
        (
            {**THREE, "features": HALVED},
            [
                "the grain runs across an arm of `panel` at 24 mm, 199.9 mm, 100.1 mm long and "
                "48 mm wide"
            ],
        ),
        ({"outline": WIDE_FEET}, []),
    ],
)
def test_what_is_slim_across_the_grain_is_told(
    asked: dict[str, object], messages: list[str]
) -> None:
    assert told("short-grain", **asked) == messages
