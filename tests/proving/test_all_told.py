"""What is wrong with a part hides nothing that is found about the others; nothing is told twice."""

from __future__ import annotations

from pathlib import Path

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.layouts.frozen import freeze
from kerfolio.proving.prove import prove_plan
from kerfolio.publishing.examine import examine
from kerfolio.publishing.fresh import foretold
from kerfolio.reading.workshop import read_workshop
from tests.fastened_plan import spoilt
from tests.plans import RACK, lay_down, proved, small_layout
from tests.proving.test_going_together import GOOD

HEAD, TAIL = GOOD.split("joints:\n")
UPPER = """\
  upper:
    sheet: ply
    grain: along x
    outline: {rectangle: [403, 160]}
    features:
      left-tabs: {tabs: {edge: left, at: [35, 95], width: 30, depth: t}}
      right-tabs: {tabs: {edge: right, at: [35, 95], width: 30, depth: t}}
"""
WRONG = {
    "tab-off-edge": """\
  lip:
    sheet: ply
    outline: {rectangle: [300, 60]}
    features: {feet: {tabs: {edge: top, at: [-5, 255], width: 50, depth: t}}}
""",
    "feature-outside": """\
  lid:
    sheet: ply
    outline: {rectangle: [300, 60]}
    features: {knob: {hole: {at: [310, 30], diameter: 8}}}
""",
    "unknown-sheet": """\
  tray:
    sheet: ply
    outline: {rectangle: [300, 60]}
    features: {slot: {slot: {at: [150, 30], length: 40, takes: oak}}}
""",
    "unknown-stock": """\
  base:
    sheet: odd
    outline: {rectangle: [300, 60]}
""",
}
"""Parts that each have an error of their own."""


def text(*wrong: str, upper: str = "upper", more: str = "") -> str:
    """Return a box whose upper shelf is 3 mm too long, with further parts."""
    parts = HEAD.replace("pieces: [low, high]\n    grain: along x", "grain: along x") + UPPER
    parts = parts.replace("parts:\n", f"{more}parts:\n")
    joints = TAIL.replace("shelf.high.", f"{upper}.").replace("shelf.high]", f"{upper}]")
    joints = joints.replace("shelf.low.", "shelf.").replace("shelf.low,", "shelf,")
    return f"{parts}{''.join(WRONG[each] for each in wrong)}joints:\n{joints}"


def errors(plan: str, folder: Path) -> list[Finding]:
    """Return the errors of reading and proving a plan."""
    workshop, read = read_workshop(lay_down(folder / "shop", plan))
    assert workshop is not None
    found = [*read, *prove_plan(workshop.plans[0], workshop.stock).findings]
    return [each for each in found if each.severity is Severity.ERROR]


def rules(plan: str, folder: Path) -> list[str]:
    return sorted(each.rule for each in errors(plan, folder))


ODD = "  odd: {stock: oak-9, published-for: 9, fit: 0.1}\n"


@pytest.mark.parametrize("wrong", WRONG)
def test_an_error_in_a_part_hides_no_joint_of_others(wrong: str, tmp_path: Path) -> None:
    more = ODD if wrong == "unknown-stock" else ""
    # Steps leave out what is wrong, which is a mistake of its own.
    expected = sorted(["joint-off", "piece-never-added", wrong])
    assert rules(text(wrong, more=more), tmp_path) == expected


def test_errors_of_all_parts_come_in_one_run(tmp_path: Path) -> None:
    found = rules(text(*WRONG, more=ODD), tmp_path)
    assert sorted({*found}) == sorted(["joint-off", "piece-never-added", *WRONG])


def test_a_sheet_in_error_hides_nothing_of_others(tmp_path: Path) -> None:
    outside = (
        "  odd: {stock: birch-plywood-9, published-for: 8.8 to 9.2, ready-made: [12], fit: 0.1}\n"
    )
    plan = text("unknown-stock", more=outside)
    assert rules(plan, tmp_path) == ["joint-off", "piece-never-added", "ready-made-outside"]


def test_a_slip_of_reading_hides_no_joint_of_others(tmp_path: Path) -> None:
    """The part of the slip is not read, and nothing that names it is blamed."""
    plan = text("feature-outside").replace("diameter: 8}", "diameter: eight}")
    assert rules(plan, tmp_path) == ["joint-off", "unknown-name"]


def test_what_is_of_no_part_hides_nothing(tmp_path: Path) -> None:
    """Hardware, cutters and the like do not keep the whole from being put together."""
    plan = text() + "hardware: [{item: unobtainium-bolt, count: 2, for: nothing}]\n"
    assert rules(plan, tmp_path) == ["hardware-sum", "joint-off", "unknown-hardware"]


def test_a_part_in_error_is_not_blamed_again_on_its_joints(tmp_path: Path) -> None:
    plan = text().replace("at: [70, 240]", "at: [190, 240]")
    assert {*rules(plan, tmp_path)} == {"feature-outside"}


def test_where_a_tab_and_its_edge_lie_is_told_in_numbers(tmp_path: Path) -> None:
    """Of several copies the first is told."""
    messages = [each.message for each in errors(text("tab-off-edge"), tmp_path)]
    edge = "is not on the edge: edge 0 mm to 300 mm"
    assert f"tab `lip.feet.1` {edge}, tab -5 mm to 45 mm" in messages
    assert not any("feet.2" in each for each in messages)


def test_a_layout_is_not_judged_by_a_plan_with_a_slip(tmp_path: Path) -> None:
    """A part that cannot be read is missing from the plan, not from the maker's layout."""
    shop = lay_down(tmp_path / "shop", RACK)
    (shop / "plans" / "rack" / "layout.json").write_text(freeze(small_layout()), "utf-8")
    assert "layout-stale" in [each.rule for each in foretold(examine(shop)).findings]
    plan = shop / "plans" / "rack" / "plan.yaml"
    slip = "  lid: {sheet: ply, outlien: {rectangle: [300, 60]}}\njoints:"
    plan.write_text(RACK.replace("joints:", slip, 1), "utf-8")
    found = foretold(examine(shop))
    assert "layout-stale" not in [each.rule for each in found.findings]
    assert found.laid_out == ()


def unjoined(plan: str, folder: Path) -> list[str]:
    workshop, _ = read_workshop(lay_down(folder / "shop", plan))
    assert workshop is not None
    found = prove_plan(workshop.plans[0], workshop.stock).findings
    return [each.message for each in found if each.rule == "feature-unjoined"]


def test_tabs_and_slots_in_no_joint_are_named(tmp_path: Path) -> None:
    assert unjoined(GOOD, tmp_path / "good") == []
    lost = GOOD.replace("  - {tab: shelf.high.right-tabs, into: side.right.high-slots}\n", "")
    assert unjoined(lost, tmp_path / "one") == [
        "tab `shelf.high.right-tabs` takes part in no joint",
    ]
    spare = "      mark:"
    slot = "      spare: {slot: {at: [30, 150], length: 30, angle: 90, takes: ply}}\n"
    assert unjoined(GOOD.replace(spare, slot + spare), tmp_path / "slot") == [
        "slot `side.spare` takes part in no joint"
    ]


def test_of_notches_only_those_are_named_whose_twins_are_joined(tmp_path: Path) -> None:
    """The foot of the rack may be for a skirting board."""
    assert unjoined(RACK, tmp_path / "rack") == []
    foot = "foot: {notch: {edge: bottom, at: 160,"
    twins = RACK.replace(foot, foot.replace("160", "[140, 175]"))
    assert unjoined(twins, tmp_path / "twins") == []
    joint = "  - {tab: rail.foot, into: side.left.foot.1}\nhardware"
    tab = "      foot: {tabs: {edge: bottom, at: 100, width: 15, depth: t}}\n      left-tab:"
    half = twins.replace("hardware", joint, 1).replace("      left-tab:", tab)
    assert unjoined(half, tmp_path / "half") == ["notch `side.foot.2` takes part in no joint"]


def test_a_span_of_a_part_that_is_wrong_is_not_blamed_for_it(tmp_path: Path) -> None:
    span = "spans: {lip: {part: lip, supports: [left, right], load: {kg: 5}, limit: span/200}}\n"
    plan = text("tab-off-edge").replace("joints:\n", f"{span}joints:\n")
    assert "unknown-part" not in rules(plan, tmp_path)
    lost = plan.replace("part: lip,", "part: lid,")
    assert "unknown-part" in rules(lost, tmp_path / "again")


BREAKS = (
    "    outline: {rectangle: [200, 200]}\n    features:\n",
    "    outline: {rectangle: [200, 200]}\n    features:\n"
    "      free: {bore: {edge: right, at: 100, diameter: 4, depth: 40, from-face: 3}}\n",
)
SHORT = ("{bolt: bolt-m6x50, washer", "{bolt: bolt-m6x40, washer")
OUTSIDE = ("at: [[100, 100], [200, 100]], for", "at: [[100, 100], [320, 100]], for")


def test_a_bore_that_is_wrong_hides_nothing_of_the_whole() -> None:
    """No joint goes by it; by the holes that the shelf butts on one does."""
    found = {each.rule for each in proved(spoilt(BREAKS, SHORT)).findings}
    assert {"bore-breaks-out", "bolt-short-of-nut"} <= found
    found = {each.rule for each in proved(spoilt(OUTSIDE, SHORT)).findings}
    assert "feature-outside" in found
    assert "bolt-short-of-nut" not in found
