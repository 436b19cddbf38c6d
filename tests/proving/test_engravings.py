"""What is offered for an engraving works, and one step less does not: the edge of it, by proving.

Strokes by hand: flat + 2 x depth x tan(angle / 2), on a sheet that lies 0.3 mm higher.
"""

from __future__ import annotations

import re
from math import radians, tan

import pytest

from tests.proving.two_panels import plan_text, remarks

RULE = "engraving-unreadable"
CUTS = """\
cuts:
  words:
    {sheet: ply, cutter: CUTTER, speed: 18000 rpm, feed: 1500 mm/min, plunge: 400 mm/min,
     passes: [DEPTH]}
"""
V = {"v-60": (60, 0.1), "v-90": (90, 0.1)}


def told(word: str, height: float, depth: float, cutter: str) -> str:
    """Return the advice about a word, nothing where it reads."""
    head = CUTS.replace("CUTTER", cutter).replace("DEPTH", f"{depth:g}")
    word = f"{{text: {word}, at: [200, 150], height: {height:g}, depth: {depth:g}}}"
    found = remarks(plan_text(f"words: {{engrave: {word}}}", head=head), RULE)
    return found[0].advice if found else ""


def offered(advice: str, words: str) -> float:
    found = re.search(words.replace("N", r"([\d.]+)"), advice)
    assert found, advice
    return float(found[1])


@pytest.mark.parametrize("cutter", V)
@pytest.mark.parametrize("word", ["KEEP", "8@B"])
def test_the_least_height_and_the_greatest_depth_are_at_the_edge(word: str, cutter: str) -> None:
    height, depth = 6.0, 1.0
    advice = told(word, height, depth, cutter)
    least = offered(advice, "make it N mm high or more")
    assert told(word, least, depth, cutter) == ""
    assert told(word, least - 0.5, depth, cutter) != ""
    if "deep or less" in advice:
        deepest = offered(advice, "engrave it N mm deep or less")
        assert told(word, height, deepest, cutter) == ""
        assert told(word, height, deepest + 0.1, cutter) != ""


@pytest.mark.parametrize("cutter", V)
def test_the_stroke_of_a_v_cutter_is_told_where_the_sheet_lies_off(cutter: str) -> None:
    angle, flat = V[cutter]
    low, drawn, high = (flat + 2 * (1 + off) * tan(radians(angle / 2)) for off in (-0.3, 0, 0.3))
    advice = told("KEEP", 6.0, 1.0, cutter)
    told_ = re.match(
        r"They are ([\d.]+) mm wide, ([\d.]+) mm to ([\d.]+) mm where .* 0.3 mm off", advice
    )
    assert told_, advice
    assert [*map(float, told_.groups())] == pytest.approx([drawn, low, high], abs=0.006)


def test_the_largest_straight_cutter_is_at_the_edge() -> None:
    advice = told("KEEP", 9.0, 0.5, "up-cut-3")
    least, widest = offered(advice, "make it N mm high"), offered(advice, "strokes of N mm or less")
    assert told("KEEP", least, 0.5, "up-cut-3") == ""
    assert told("KEEP", least - 0.5, 0.5, "up-cut-3") != ""
    assert "where the sheet lies" not in advice, "its strokes have one width"
    # A stroke of that width by a V cutter reads, one a step of 0.1 mm wider does not.
    deep = [(wide - 0.1) / 2 / tan(radians(30)) - 0.3 for wide in (widest, widest + 0.1)]
    assert [bool(told("KEEP", 9.0, each, "v-60")) for each in deep] == [False, True]
