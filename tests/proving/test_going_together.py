"""Rules over a plan put together: each fires on its mistake and is silent on a good plan."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.plans import RACK, proved
from tests.proving.two_panels import plan_text

BOX = """\
plan: Probe box
version: 1.0.0
summary: Two sides, two rails, four joints that make a loop.
sizes: {t: thickness(ply)}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.6 to 18.2 by 0.2, fit: 0.1}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    grain: along y
    outline: {rectangle: [200, 300]}
    features:
      low-slots: {slot: {at: [70, 60], length: 30, takes: ply}, repeat: {count: 2, step: [60, 0]}}
      high-slots:
        {slot: {at: [70, HIGH], length: 30, takes: ply}, repeat: {count: 2, step: [60, 0]}}
      mark: {engrave: {text: I, at: [100, 150], height: 8, depth: 0.5}}
  shelf:
    sheet: ply
    pieces: [low, high]
    grain: along x
    outline: {rectangle: [LENGTH, 160]}
    features:
      left-tabs: {tabs: {edge: left, at: [35, 95], width: 30, depth: t}}
      right-tabs: {tabs: {edge: right, at: [35, 95], width: 30, depth: t}}
joints:
  - {tab: shelf.low.left-tabs, into: side.left.low-slots, show: in}
  - {tab: shelf.low.right-tabs, into: side.right.low-slots}
  - {tab: shelf.high.left-tabs, into: side.left.high-slots}
  - {tab: shelf.high.right-tabs, into: side.right.high-slots}
steps:
  - title: Shelves into the left side
    add: [side.left, shelf.low, shelf.high]
    lies: {side.left: on its outer face}
    text: Push.
  - {title: The right side, add: [side.right], text: Push.}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""
GOOD = BOX.replace("HIGH", "240").replace("LENGTH", "400")


def told(text: str) -> dict[str, tuple[Severity, str]]:
    return {
        each.rule: (each.severity, each.message)
        for each in proved(text).findings
        if each.rule.split("-")[0] in ("joint", "pieces", "piece", "which", "step")
    }


def test_a_good_plan_is_not_remarked_on() -> None:
    assert told(GOOD) == {}


def test_a_plan_of_one_joint_that_cannot_be_made_is_told() -> None:
    """With no joint left nothing is put together, yet what is wrong stands."""
    text = plan_text(
        side="slot: {slot: {at: [200, 150], length: 40, angle: 0, takes: ply}}",
        rail="tab: {tabs: {edge: top, at: [60, 160], width: 40, depth: 17.8}}",
        joints="tab: rail.tab, into: side.slot, show: out, looking: up",
    )
    found = [each.message for each in proved(text).findings if each.rule == "joint-count"]
    assert found == ["`rail.tab` are 2, `side.slot` are 1"]


def test_a_shelf_too_long_is_named_and_measured() -> None:
    """The other shelf, of another part, holds the sides where they belong."""
    text = GOOD.replace("pieces: [low, high]\n    grain: along x", "grain: along x")
    text = text.replace("shelf.low.", "shelf.").replace("shelf.low,", "shelf,")
    text = text.replace("shelf.high.", "upper.").replace("shelf.high]", "upper]")
    upper = text[text.index("  shelf:") : text.index("joints:")].replace("  shelf:", "  upper:")
    long = upper.replace("[400, 160]", "[403, 160]")
    found = told(text.replace("joints:", f"{long}joints:", 1))
    assert found["joint-off"][0] is Severity.ERROR
    assert "3 mm" in found["joint-off"][1]


def test_an_undecided_way_is_asked_for() -> None:
    found = told(GOOD.replace(", show: in", ""))
    assert found["which-way-round"][0] is Severity.WARNING


def test_a_piece_in_no_joint_is_a_warning() -> None:
    lone = GOOD.replace("pieces: [low, high]", "pieces: [low, high, spare]")
    lone = lone.replace("add: [side.right]", "add: [side.right, shelf.spare]")
    assert told(lone)["piece-unjoined"] == (
        Severity.WARNING,
        "no joint says where `shelf.spare` goes",
    )


def test_joints_that_nothing_checks_are_noted() -> None:
    assert told(RACK)["joint-unchecked"][0] is Severity.NOTE


def test_pieces_that_need_the_same_space_are_an_error() -> None:
    """Shelves 10 mm apart, 18 mm thick."""
    severity, message = told(BOX.replace("HIGH", "70").replace("LENGTH", "400"))["pieces-clash"]
    assert severity is Severity.ERROR
    assert message.startswith("`shelf.low` and `shelf.high` need the same space")


def test_a_step_that_cannot_be_done_is_a_warning() -> None:
    early = "  - {title: Sides, add: [side.left, shelf.low, side.right], text: Push.}\n"
    late = "  - {title: Shelf, add: [shelf.high], text: Push.}\n"
    text = GOOD[: GOOD.index("  - title: Shelves")] + early + late + GOOD[GOOD.index("releases:") :]
    severity, message = told(text)["step-blocked"]
    assert severity is Severity.WARNING
    assert message.startswith("step 2: `shelf.high` cannot slide in")


def test_uprights_without_a_brace_are_noted() -> None:
    """Two sides and two shelves on edge joints: the classic parallelogram."""
    found = {each.rule: each for each in proved(GOOD).findings}
    assert found["unbraced"].severity is Severity.NOTE
    assert "against a push to the left or right" in found["unbraced"].message


def test_what_is_tall_says_what_it_is_for() -> None:
    """27 in are 685.8 mm (16 CFR 1261)."""

    def told_of_use(high: int, more: str = "") -> list[str]:
        text = GOOD.replace("[200, 300]", f"[200, {high}]").replace("joints:", f"{more}joints:")
        return [each.message for each in proved(text).findings if each.rule == "use-unsaid"]

    assert told_of_use(680) == told_of_use(700, "uses: [store things]\n") == []
    assert told_of_use(700) == ["it stands 700 mm tall, and nothing says what for"]


@pytest.mark.parametrize(("kind", "count"), [("tab", 2)])
def test_ends_of_different_count_are_an_error(kind: str, count: int) -> None:
    odd = GOOD.replace(
        "at: [35, 95], width: 30, depth: t}}\n      right",
        "at: 35, width: 30, depth: t}}\n      right",
    )
    assert told(odd)["joint-count"][0] is Severity.ERROR
