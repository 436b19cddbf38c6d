"""Cut time: motion under constant acceleration, and figures worked by hand for a small plan."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.settling.settled import Operation, SettledPlan
from kerfolio.shop.cut_setting import Setting, settings_of
from kerfolio.shop.cut_time import CutTime, Placed, sheet_time
from kerfolio.shop.machine import SMALL_ROUTER, Machine, path_seconds, travel_seconds
from kerfolio.shop.wear import wear_of
from tests.plans import RACK, proved, small_settled
from tests.shop.heard import heard

PROFILE = (
    "{sheet: ply, cutter: compression-6, feed: 3000 mm/min, plunge: 600 mm/min, "
    "passes: PASSES, skim: 0.3}"
)
PLATE = """\
plan: Plate
version: 1.0.0
summary: A plate to time.
units: mm
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 18}}
parts:
  plate:
    sheet: ply
    outline: {rectangle: [300, 200]}
    features:
      window: {window: {at: [150, 100], rectangle: [60, 40]}}
      dish: {pocket: {at: [60, 60], rectangle: [40, 30], depth: 6}}
      hole: {hole: {at: [250, 60], diameter: 20}}
      mark: {engrave: {text: I, at: [250, 150], height: 20, depth: 0.5}}
cuts:
  through: CUT
  dishes: {sheet: ply, cutter: down-cut-6, feed: 2400 mm/min, plunge: 600 mm/min, passes: [3, 6]}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def drawn(text: str) -> SettledPlan:
    found = proved(text).drawn
    assert found is not None
    return found


def plate(passes: str = "[9, rest]", more: str = "") -> SettledPlan:
    text = PLATE.replace("CUT", PROFILE.replace("PASSES", passes))
    return drawn(text.replace("releases:", f"{more}releases:"))


def timed(settled: SettledPlan, machine: Machine = SMALL_ROUTER) -> CutTime:
    part = settled.parts[0]
    return sheet_time(settled, part.sheet, (Placed(part=part.name),), machine)


def row(time: CutTime, operation: Operation) -> tuple[str, int, int, float]:
    (found,) = [each for each in time.operations if each.operation is operation]
    return found.setting, found.cuts, found.most_passes, found.metres


def test_a_long_run_is_a_trapezoid_and_a_short_one_a_triangle() -> None:
    # 3000 mm/min = 50 mm/s; at 500 mm/s2 that takes 0.1 s and 2.5 mm (motion under constant
    # acceleration): 1000 mm take 20 s + 0.1 s; 1 mm never reaches the speed: 2 sqrt(1/500) s.
    assert travel_seconds(1000, 3000, 500) == pytest.approx(20.1)
    assert travel_seconds(1, 3000, 500) == pytest.approx(2 * math.sqrt(1 / 500))


@given(st.floats(0.01, 3000), st.floats(100, 10_000), st.floats(50, 5000))
def test_a_straight_path_is_one_run(length: float, feed: float, push: float) -> None:
    machine = replace(SMALL_ROUTER, acceleration=push)
    path = ((0.0, 0.0), (length, 0.0))
    assert path_seconds(path, feed, machine) == pytest.approx(travel_seconds(length, feed, push))
    halved = ((0.0, 0.0), (length / 2, 0.0), (length, 0.0))
    assert path_seconds(halved, feed, machine) == pytest.approx(travel_seconds(length, feed, push))


def test_a_square_corner_is_a_stop() -> None:
    corner = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0))
    assert path_seconds(corner, 3000, SMALL_ROUTER) == pytest.approx(
        2 * travel_seconds(100, 3000, SMALL_ROUTER.acceleration)
    )


def test_a_tight_circle_is_run_no_faster_than_it_can_be_held() -> None:
    # v2/R at most 500 mm/s2: on a radius of 2 mm that is 31.6 mm/s, not the 75 of the feed.
    ring = tuple(
        (2 * math.cos(math.tau * k / 64), 2 * math.sin(math.tau * k / 64)) for k in range(65)
    )
    seconds = path_seconds(ring, 4500, SMALL_ROUTER)
    held = math.tau * 2 / math.sqrt(500 * 2)
    assert held < seconds < held + 2 * math.sqrt(500 * 2) / 500


@given(st.lists(st.tuples(st.floats(0, 500), st.floats(0, 500)), min_size=2, max_size=12))
def test_no_path_is_faster_than_its_feed_or_slower_than_stopping_everywhere(
    points: list[tuple[float, float]],
) -> None:
    legs = [math.dist(a, b) for a, b in pairwise(points)]
    seconds = path_seconds(tuple(points), 3000, SMALL_ROUTER)
    assert seconds >= sum(legs) / 50 - 1e-9
    stops = sum(travel_seconds(each, 3000, SMALL_ROUTER.acceleration) for each in legs)
    assert seconds <= stops + 1e-6


def test_every_operation_takes_the_setting_that_suits_it() -> None:
    time = timed(plate())
    assert row(time, Operation.OUTLINE)[:3] == ("through", 1, 2)
    assert row(time, Operation.OPENING)[:3] == ("through", 1, 2)
    assert row(time, Operation.HOLE)[:3] == ("through", 1, 2)
    assert row(time, Operation.POCKET)[:3] == ("dishes", 1, 2)
    assert row(time, Operation.ENGRAVE)[:3] == ("dishes", 1, 1)
    assert time.uncut == ()
    assert time.changes == 1
    assert time.change_seconds == SMALL_ROUTER.change


def test_metres_are_those_of_the_cutter_s_middle() -> None:
    time = timed(plate())
    # By hand, cutter 6 mm, two passes: outline 2 (1000 + 6 pi), window 2 (200 - 24), hole 2 pi 14.
    assert row(time, Operation.OUTLINE)[3] == pytest.approx(2 * (1.0 + 0.006 * math.pi), abs=1e-3)
    assert row(time, Operation.OPENING)[3] == pytest.approx(2 * 0.176, abs=1e-3)
    assert row(time, Operation.HOLE)[3] == pytest.approx(2 * math.pi * 0.014, abs=1e-3)
    # The letter I: one stroke of 20 mm, once.
    assert row(time, Operation.ENGRAVE)[3] == pytest.approx(0.020, abs=1e-3)


def test_a_dish_is_cleared_ring_by_ring() -> None:
    # 40 x 30 with a 6 mm cutter and steps of 2.4: rings 2.98, 5.38 ... 14.98 mm in, the last one
    # to and fro on the middle line. Each is 140 - 8d long; two passes; 3.4 mm from one to the next.
    rings = sum(140 - 8 * (2.98 + 2.4 * k) for k in range(6))
    _, _, _, metres = row(timed(plate()), Operation.POCKET)
    assert 2 * rings / 1000 < metres < 2 * (rings + 5 * 3.5) / 1000


@pytest.mark.parametrize(
    ("passes", "depths"),
    [
        ("[9, rest]", (9.0, 18.3)),
        ("[rest]", (18.3,)),
        ("[6, 12, 18, rest]", (6.0, 12.0, 18.0, 18.3)),
        ("[6, 18]", (6.0, 18.0, 18.3)),
    ],
)
def test_the_last_pass_goes_into_the_spoilboard(passes: str, depths: tuple[float, ...]) -> None:
    settled = plate(passes)
    outline = settled.parts[0].cuts[-1]
    setting = settings_of(settled, "ply")[0]
    assert setting.through
    assert setting.passes(outline, 18.0) == pytest.approx(depths)


def test_a_shallow_setting_goes_on_in_its_own_steps() -> None:
    setting = next(each for each in settings_of(plate(), "ply") if not each.through)
    deep = replace(plate().parts[0].cuts[0], depth=10.0)
    assert setting.passes(deep, 18.0) == pytest.approx((3, 6, 9, 10))
    assert setting.passes(replace(deep, depth=2.0), 18.0) == pytest.approx((2,))


def test_without_passes_a_pass_is_one_diameter_deep() -> None:
    text = PLATE.replace("CUT", "{sheet: ply, cutter: compression-6, feed: 3000 mm/min}")
    settled = drawn(text)
    (setting, _) = settings_of(settled, "ply")
    assert setting.passes(settled.parts[0].cuts[-1], 18.0) == pytest.approx((6, 12, 18))
    assert setting.plunge == pytest.approx(1000)
    facts = {each.label: each for each in heard(timed(settled))}
    assert "Depth of a pass" in facts
    assert "third of the feed" in facts["through"].source


@pytest.mark.parametrize(("few", "many"), [("[rest]", "[9, rest]"), ("[9, rest]", "[6, 12, rest]")])
def test_more_passes_take_longer(few: str, many: str) -> None:
    assert timed(plate(few)).minutes < timed(plate(many)).minutes
    assert timed(plate(few)).metres < timed(plate(many)).metres


@settings(deadline=None)
@given(st.floats(1.1, 4))
def test_a_quicker_machine_is_quicker(by: float) -> None:
    quick = replace(SMALL_ROUTER, acceleration=SMALL_ROUTER.acceleration * by)
    assert timed(plate(), quick).minutes < timed(plate()).minutes
    nimble = replace(SMALL_ROUTER, rapid=SMALL_ROUTER.rapid * by)
    assert timed(plate(), nimble).rapid_seconds < timed(plate()).rapid_seconds


def test_no_setting_no_time() -> None:
    time = timed(small_settled())
    assert not time.known
    assert time.minutes == 0
    assert {told(each.why, METRIC) for each in time.uncut} == {"no setting stated for it"}
    assert {each.part for each in time.uncut} == {"side"}


def test_a_hole_narrower_than_the_cutter_is_told() -> None:
    text = PLATE.replace("CUT", PROFILE.replace("PASSES", "[rest]"))
    settled = drawn(text.replace("diameter: 20", "diameter: 4"))
    (uncut,) = timed(settled).uncut
    assert (uncut.part, uncut.operation) == ("plate", Operation.HOLE)
    assert told(uncut.why, METRIC) == "too narrow for the cutters stated"


def test_a_v_cutter_is_for_engraving_alone() -> None:
    more = "  letters: {sheet: ply, cutter: v-60, feed: 1500 mm/min, passes: [1]}\n"
    time = timed(plate(more=more))
    assert row(time, Operation.ENGRAVE)[0] == "letters"
    assert row(time, Operation.POCKET)[0] == "dishes"


def test_a_sheet_takes_what_its_pieces_take_but_for_the_ways_between() -> None:
    text = RACK + (
        "cuts: {all: {sheet: ply, cutter: compression-3, feed: 3000 mm/min, passes: [9, rest]}}\n"
    )
    settled = drawn(text)
    spots = (
        Placed(part="rail", x=40, y=20),
        Placed(part="side", x=520, y=20, turn=90),
        Placed(part="side", x=660, y=20, turn=90),
    )
    whole = sheet_time(settled, "ply", spots)
    parts = {name: sheet_time(settled, "ply", (Placed(part=name),)) for name in ("rail", "side")}
    each = [parts["rail"], parts["side"], parts["side"]]
    assert whole.cutting_seconds == pytest.approx(sum(one.cutting_seconds for one in each))
    assert whole.metres == pytest.approx(sum(one.metres for one in each))
    assert sheet_time(settled, "ply", spots[::-1]).rapid_seconds == pytest.approx(
        whole.rapid_seconds
    )


def test_wear_is_counted_by_cutter() -> None:
    time = timed(plate())
    wear = {each.cutter: each for each in wear_of((time, time))}
    assert set(wear) == {"compression-6", "down-cut-6"}
    assert sum(each.metres for each in wear.values()) == pytest.approx(2 * time.metres)
    assert sum(each.minutes for each in wear.values()) == pytest.approx(
        2 * time.cutting_seconds / 60
    )
    assert wear["compression-6"].cuts == 6


def test_every_assumption_has_a_value_and_a_source() -> None:
    for each in heard(timed(plate())):
        assert each.label
        assert each.value
        assert each.source


def test_a_setting_keeps_the_order_of_the_plan() -> None:
    names: list[str] = [each.name for each in settings_of(plate(), "ply")]
    assert names == ["through", "dishes"]
    assert all(isinstance(each, Setting) for each in settings_of(plate(), "ply"))
    assert settings_of(small_settled(), "ply") == ()
