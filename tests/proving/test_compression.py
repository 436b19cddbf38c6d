"""Compression cutters: tips, housings and where they enter; common practice, no single source.

A first pass of 0.31 in with a quarter-inch cutter, 1.24 diameters, is what the trade takes.
"""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.plans import lay_down
from tests.proving.two_panels import plan_text, remarks, told

PROFILE = (
    "profile: {{sheet: ply, cutter: {cutter}, speed: 18000 rpm, feed: 4500 mm/min, "
    "passes: {passes}, skim: 0.3, bridges: 4}}"
)
HOUSINGS = (
    "housings: {sheet: ply, cutter: down-cut-6, speed: 18000 rpm, feed: 3000 mm/min, passes: [4]}"
)
DISH = "dish: {{pocket: {{at: [200, 150], circle: 60, depth: {depth}}}}}"
GAP = "gap: {{slot: {{at: [200, 150], length: 60, angle: 90, width: {width}}}}}"


def cut(
    side: str = DISH.format(depth=8),
    passes: str = "[8, rest]",
    more: str = "",
    cutter: str = "compression-6",
) -> str:
    lines = [f"  {PROFILE.format(cutter=cutter, passes=passes)}", *([f"  {more}"] if more else [])]
    return plan_text(side, head="cuts:\n" + "\n".join(lines))


@pytest.mark.parametrize(
    ("passes", "messages"),
    [
        (
            "[6, rest]",
            [
                "`profile` begins 6 mm deep with `compression-6`: its tip is the library's, not "
                "measured"
            ],
        ),
        (
            "[7.3, rest]",
            [
                "`profile` begins 7.3 mm deep with `compression-6`: its tip is the library's, not "
                "measured"
            ],
        ),
        ("[7.44, rest]", []),
        ("[8, rest]", []),
        ("[4, rest]", []),  # told as too shallow even for the tip that the library gives
    ],
)
def test_a_shallow_first_pass_asks_for_the_measured_tip(passes: str, messages: list[str]) -> None:
    assert told(cut(passes=passes), "tip-unmeasured") == messages


def test_the_advice_gives_what_the_trade_takes() -> None:
    (finding,) = remarks(cut(passes="[6, rest]"), "tip-unmeasured")
    assert finding.advice.endswith("or begin 7.44 mm deep, as the trade does with such a cutter.")


def with_own_cutter(stated: str) -> list[Finding]:
    with TemporaryDirectory() as folder:
        shop = lay_down(Path(folder) / "shop", cut(passes="[6.2, rest]", cutter="mine"), "panels")
        (shop / "stock").mkdir()
        (shop / "stock" / "own.yaml").write_text(
            f"cutters:\n  mine: {{title: Mine, kind: compression, diameter: 6 mm, flutes: 2, "
            f"cutting-length: 22 mm{stated}, source: measured}}\n",
            "utf-8",
        )
        read, faults = read_workshop(shop)
    assert read is not None, faults
    return [
        each
        for each in prove_plan(read.plans[0], read.stock).findings
        if each.rule in ("tip-unmeasured", "first-pass-in-tip")
    ]


def test_a_tip_that_the_maker_measured_is_believed() -> None:
    assert with_own_cutter(", up-cut-length: 6 mm") == []
    (long,) = with_own_cutter(", up-cut-length: 6.5 mm")
    assert long.rule == "first-pass-in-tip"
    (unknown,) = with_own_cutter("")
    assert unknown.message.endswith("its tip is not known")


@pytest.mark.parametrize(
    ("depth", "more", "messages"),
    [
        (4, "", ["pocket `side.dish` is 4 mm deep, and `profile` frays its rim"]),
        (5, "", ["pocket `side.dish` is 5 mm deep, and `profile` frays its rim"]),
        (5.2, "", []),
        (4, HOUSINGS, []),
    ],
)
def test_a_recess_within_the_tip_is_told(depth: float, more: str, messages: list[str]) -> None:
    assert told(cut(DISH.format(depth=depth), more=more), "recess-in-tip") == messages


@pytest.mark.parametrize(
    ("width", "messages"),
    [
        (6, ["slot `side.gap` is 6 mm wide: `profile` enters at its walls"]),
        (7.5, ["slot `side.gap` is 7.5 mm wide: `profile` enters at its walls"]),
        (8, []),
        (18, []),
    ],
)
def test_an_opening_without_waste_to_enter_by_is_told(width: float, messages: list[str]) -> None:
    assert told(cut(GAP.format(width=width)), "no-waste-to-enter") == messages


def test_other_cutters_enter_where_they_like() -> None:
    text = cut(GAP.format(width=6.5), cutter="down-cut-6")
    assert told(text, "no-waste-to-enter", "recess-in-tip", "tip-unmeasured") == []
