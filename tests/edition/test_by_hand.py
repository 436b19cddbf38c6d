"""Whether a plan can be cut by hand, and why not; its figures are common practice."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from kerfolio.edition.by_hand import ByHand, Verdict, by_hand
from kerfolio.layouts.layout import Layout
from tests.paper.sample_editions import edition, sample
from tests.plans import RACK, settled_at, workshop

LOOSE = RACK.replace("fit: 0.1", "fit: 0.25")
BARE = "\n".join(
    line for line in LOOSE.splitlines() if "{engrave:" not in line and "{pocket:" not in line
)
"""Loose joints, no recess and no engraving."""


@cache
def judged(text: str, unit: str = "mm") -> ByHand:
    none = Layout(sheets=(), engine="by hand", computed_from="")
    identity = replace(workshop(text).identity, units_first=unit)
    return by_hand(replace(edition(settled_at(17.6, text), none), identity=identity))


def heads(found: ByHand) -> list[str]:
    return [each.head for each in found.reasons]


def test_loose_joints_of_openings_alone_can_be_cut_by_hand() -> None:
    found = judged(BARE)
    assert (found.verdict, heads(found)) == (Verdict.YES, ["Corners"])
    assert found.words == "Can be cut by hand: drill, jigsaw and file will do."


@pytest.mark.parametrize(
    ("text", "verdict", "head"),
    [
        (BARE.replace("0.25", "0.1"), Verdict.CARE, "Close joints"),
        (BARE.replace("joints:", "joint-fit: press\njoints:"), Verdict.CARE, "Close joints"),
        (
            BARE.replace("0.25", "0.1").replace("joints:", "joint-fit: press\njoints:"),
            *(Verdict.NO, "Joints that are driven in"),
        ),
        (LOOSE, Verdict.CARE, "Recesses"),
        (LOOSE, Verdict.CARE, "Engraving"),
        (BARE.replace("angle: 90", "angle: 80"), Verdict.CARE, "Tilted joints"),
        (
            BARE.replace(
                "  rail:", "  wedge: {sheet: ply, outline: {rectangle: [90, 49]}}\n  rail:"
            ),
            Verdict.CARE,
            "Small pieces",
        ),
        (
            BARE.replace("depth: 20, takes: ply", "depth: 20, width: 2.5"),
            Verdict.NO,
            "Narrow openings",
        ),
        (
            BARE.replace("for: bolt-m6x40}}", "diameter: 8, depth: 9}}"),
            Verdict.YES,
            "Bores to a depth",
        ),
    ],
)
def test_what_is_hard_by_hand_is_told(text: str, verdict: Verdict, head: str) -> None:
    found = judged(text)
    assert head in heads(found)
    assert found.verdict == verdict
    assert {each.head: each.weighs for each in found.reasons}[head] == verdict


def test_the_hardest_stands_first() -> None:
    order = [Verdict.NO, Verdict.CARE, Verdict.YES]
    weights = [order.index(each.weighs) for each in judged(LOOSE).reasons]
    assert weights == sorted(weights)
    assert len(set(weights)) > 1


def test_the_work_is_that_of_all_pieces() -> None:
    """A board of 200 x 120 mm with round corners of 30 mm and openings, twice, and a rail."""
    side = 2 * (200 + 120) - 2 * 30 * (2 - 3.14159265 / 2) + 2 * (60.5 + 18.1) + 2 * 20.25
    rail = 2 * (300 + 120) + 4 * 17.6
    found = judged(BARE)
    assert found.work.saw == pytest.approx((2 * side + rail) / 1000, abs=0.002)
    assert (found.work.holes, found.work.corners) == (2, 2 * (4 + 2) + 4)
    assert found.effort == "About 3 metres to saw, 2 holes and 16 inside corners to drill."
    assert judged(BARE, "in").effort.startswith("About 8 feet to saw")


def test_the_stool_is_cut_with_care() -> None:
    found = by_hand(sample("harbour-stool"))
    assert found.verdict is Verdict.CARE
    assert heads(found) == ["Close joints", "Engraving", "Bores to a depth", "Corners"]
