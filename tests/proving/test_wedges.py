"""Wedges: each mistake is blamed on what was spoilt. The trestle of ``docs`` is what is spoilt.

1 in 8 to 1 in 6, grain along the wedge, wood behind the slot: common practice, no single source.
Lengths are sums: its slot is 28 mm and the fit of 0.1 mm at either end, the wedge 24.5 mm half way.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from kerfolio.assembly.wedged import Wedged, wedges_of
from kerfolio.basis.finding import Severity
from kerfolio.proving import wedges
from kerfolio.proving.rules import rules_of
from tests.plans import altered, proved
from tests.tools.docs_pictures import DOCS

IDS = {id for rule in rules_of(wedges) for id in rule.ids}
PLAN: Path = DOCS / "example" / "plans" / "trestle" / "plan.yaml"
OUTLINE = "[[0, 0], [16, 0], [33, 120], [0, 120]]"


@cache
def trestle(*changes: tuple[str, str]) -> str:
    return altered(PLAN.read_text("utf-8"), *changes)


LEFT = "left-wedge-slot: {slot: {at: [-t - 12, 35], length: 28, takes: ply}}"
TUSK = "left-tusk: {tabs: {edge: left, at: 10, width: 50, depth: 70}}"
AT = "rail.left-wedge-slot, at: [12, 60], show: out, looking: down"


def moved(slot: str, at: str) -> list[tuple[str, str]]:
    """Return the changes that move the left slot, and the point of its wedge that lies in it."""
    there = AT.replace("[12, 60]", f"[{at}, 60]")
    return [(LEFT, f"left-wedge-slot: {{slot: {slot}}}"), (AT, there)]


def tusk(depth: int) -> tuple[str, str]:
    """Return the change that makes the left tusk so long, mm."""
    return TUSK, TUSK.replace("depth: 70", f"depth: {depth}")


FAULTS = {
    "grain-across": (
        [(f"y\n    outline: {{polygon: {OUTLINE}", f"x\n    outline: {{polygon: {OUTLINE}")],
        *("wedge-grain", "the grain of wedge `wedge` does not run along it"),
    ),
    # 5 mm over 120 mm, and 29 mm.
    "slight": (
        [(OUTLINE, "[[0, 0], [22, 0], [27, 120], [0, 120]]")],
        *("wedge-taper", "wedge `wedge` widens 1 in 24, which is too slight"),
    ),
    "steep": (
        [(OUTLINE, "[[0, 0], [10, 0], [39, 120], [0, 120]]")],
        *("wedge-taper", "wedge `wedge` widens 1 in 4.1, which is too steep"),
    ),
    "turned": (
        [(AT, "rail.left-wedge-slot, at: [12.5, 60], show: out, looking: up")],
        *("wedge-turned", "the slanted side of `wedge.left` lies against `post.left`"),
    ),
    # 3 mm further out: 2 + 0.1 - 3 mm.
    "slot-outside": (
        moved("{at: [-t - 15, 35], length: 28, takes: ply}", "15"),
        *("wedge-cannot-draw", "slot `rail.left-wedge-slot` begins 0.9 mm outside `post.left`"),
    ),
    # Stated for 18 mm of sheet: 31.6 - 14.1 = 17.5 mm, 0.1 mm inside a sheet of 17.6 mm.
    "slot-for-one-thickness": (
        moved("{at: [-31.6, 35], length: 28, takes: ply}", "31.6 - t"),
        *("wedge-cannot-draw", "slot `rail.left-wedge-slot` begins 0.1 mm inside `post.left` (at"),
    ),
    "off-its-face": (
        moved("{at: [-t - 12, 35], length: 29, takes: ply}", "11"),
        *("wedge-off-face", "wedge `wedge.left` lies 1 mm off `post.left`"),
    ),
    # 36.2 mm of slot, 25.8 mm of wedge: 8.3 mm at 1 in 7 are 59 mm, 8 mm more than stand out.
    "slot-too-long": (
        [*moved("{at: [-t - 16, 35], length: 36, takes: ply}", "16"), tusk(80)],
        *("wedge-driven-out", "wedge `wedge.left` is 17.8 mm too short: it bears when"),
    ),
    # 56 - 18.2 - 26.1 mm.
    "little-wood-behind": (
        [tusk(56)],
        *("wedge-short-wood", "11.7 mm of wood is left behind `rail.left-wedge-slot`"),
    ),
    "loose-across": (
        moved("{at: [-t - 12, 35], length: 28.2, width: 20}", "12"),
        *("wedge-loose", "wedge `wedge.left` has 2.4 mm of play in `rail.left-wedge-slot`"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FAULTS)
def test_each_fault_is_blamed_on_what_was_spoilt(name: str) -> None:
    changes, rule, begins = FAULTS[name]
    found = [each for each in proved(trestle(*changes)).findings if each.rule in IDS]
    assert [each.rule for each in found] == [rule], [*map(str, found)]
    assert found[0].message.startswith(begins), found[0].message


def fits(text: str) -> tuple[Wedged, ...]:
    (made,) = proved(text).made
    assert made.build is not None
    return wedges_of(made.settled, made.build.drawn.assembled)


def test_a_right_wedge_is_not_remarked_on() -> None:
    assert [each for each in proved(trestle()).findings if each.rule in IDS] == []
    assert all(e.severity is Severity.NOTE for e in proved(trestle()).findings)


def test_what_a_wedge_does_is_reckoned_as_by_hand() -> None:
    """Half the slot is 14.1 mm. Half a sheet above the rail's middle the wedge is widest."""
    left, right = fits(trestle())
    thick = left.slotted.thickness
    assert left.taper == right.taper == pytest.approx(17 / 120)
    assert left.inside == pytest.approx(14.1 - 12)
    assert left.gap == pytest.approx(0)
    high = 16 + 17 * (60 + thick / 2) / 120 - 12
    assert left.to_drive == pytest.approx((14.1 - high) * 120 / 17, abs=0.02)
    assert left.left == pytest.approx(120 - 60 - thick / 2 - left.to_drive)
    assert left.behind == pytest.approx(70 - thick - 26.1)
    assert left.play == pytest.approx(0.2)
    assert left.bearing == pytest.approx(thick**2, rel=0.02)
