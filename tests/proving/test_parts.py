"""Whole parts: small ones held, strips along their grain. Both are common practice."""

from __future__ import annotations

import pytest

from tests.plans import proved

PLAN = """\
plan: Parts
version: 1.0.0
summary: Parts to look at.
sheets: {{ply: {{stock: {stock}, published-for: {thick}}}}}
cuts:
  profile: {{sheet: ply, cutter: compression-6, speed: 18000 rpm, feed: 4500 mm/min,
    passes: [8, rest], skim: 0.3{bridges}}}
parts:
  panel: {{sheet: ply, grain: {grain}, outline: {{rectangle: [{width}, {height}]}}}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""


def told(rule: str, **asked: object) -> list[str]:
    stated: dict[str, object] = {
        **{"stock": "birch-plywood-18", "thick": 17.8, "bridges": ", bridges: 4"},
        **{"grain": "any", "width": 400, "height": 300},
        **asked,
    }
    found = proved(PLAN.format(**stated)).findings
    return [each.message for each in found if each.rule == rule]


@pytest.mark.parametrize(
    ("asked", "messages"),
    [
        (
            {"width": 90, "height": 60, "bridges": ""},
            ["part `panel` is small, 90 x 60 mm, and nothing holds it"],
        ),
        (
            {"width": 90, "height": 60, "bridges": ", bridges: 0"},
            ["part `panel` is small, 90 x 60 mm, and nothing holds it"],
        ),
        ({"width": 90, "height": 60}, []),
        ({"width": 101, "height": 100, "bridges": ""}, []),
    ],
)
def test_small_parts_are_held(asked: dict[str, object], messages: list[str]) -> None:
    assert told("small-part-loose", **asked) == messages


@pytest.mark.parametrize(
    ("asked", "fires"),
    [
        ({"width": 900, "height": 60, "grain": "along y"}, True),
        ({"width": 60, "height": 900, "grain": "along x"}, True),
        ({"width": 900, "height": 60, "grain": "along x"}, False),
        ({"width": 900, "height": 60, "grain": "any"}, False),
        ({"width": 180, "height": 60, "grain": "along y"}, False),  # short
        ({"width": 900, "height": 301, "grain": "along y"}, False),  # not three times as long
        # Fibreboard has no grain.
        ({"width": 900, "height": 60, "grain": "along y", "stock": "mdf-18", "thick": 18}, False),
    ],
)
def test_strips_run_along_their_grain(asked: dict[str, object], fires: bool) -> None:
    message = "the grain of `panel` runs across its length"
    assert told("grain-across-length", **asked) == ([message] if fires else [])
