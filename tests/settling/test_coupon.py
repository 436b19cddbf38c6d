"""The fit coupon: stepped slots made as the plan makes its own, and a tab to try in them."""

from __future__ import annotations

from itertools import pairwise

import pytest
import shapely

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds
from kerfolio.settling.coupon import coupon, size_of, tried
from kerfolio.settling.settled import Coupon, Operation
from tests.plans import RACK, settled_at, small_settled

NO_STEP = RACK.replace(" by 0.2", "")


def solid(contour: Contour) -> shapely.Polygon:
    return shapely.Polygon(points(contour, 0.001))


def across(shape: shapely.Geometry, spot: tuple[float, float], axis: int) -> float:
    """Return how far a shape reaches at a spot in x (axis 0) or y, mm; by shapely."""
    (x, y), far = spot, 1000.0
    ends = [(x - far, y), (x + far, y)] if axis == 0 else [(x, y - far), (x, y + far)]
    found = shapely.intersection(shapely.LineString(ends), shape)
    here = [each for each in shapely.get_parts(found) if each.distance(shapely.Point(spot)) < 1e-6]
    return float(sum(each.length for each in here))


def small() -> Coupon:
    (only,) = small_settled().coupons
    return only


def test_every_step_is_as_wide_as_the_plan_cuts_it_in_x_and_in_y() -> None:
    fit, made = small_settled().sheet("ply").fit, small()
    openings = shapely.union_all([solid(each) for each in made.plate.routed.openings])
    for each in made.slots:
        assert each.width == pytest.approx(each.thickness + 2 * fit)
        for axis in (0, 1):
            wide = across(openings, each.spots[axis], axis)
            assert wide == pytest.approx(each.width, abs=1e-9)


def test_the_arms_grow_in_x_and_in_y_round_the_usual_tab() -> None:
    """The rack has two tabs, both 60 mm wide."""
    made = small()
    assert [each.width for each in made.steps] == pytest.approx([59.6, 60.0, 60.4, 60.8, 61.2])
    tab = solid(made.tab.routed.outer)
    for each in made.steps:
        for axis in (0, 1):
            assert across(tab, each.spots[axis], axis) == pytest.approx(each.width, abs=1e-9)
    assert made.opening == pytest.approx(60.2)
    long_slot = max(made.plate.plain.openings, key=lambda each: bounds(each).x0)
    assert bounds(long_slot).width == pytest.approx(60.2)


def test_the_notch_is_as_deep_as_the_deepest_halving_and_a_long_one_is_cut_short() -> None:
    """The foot's notch is 20 mm deep, and the fit."""
    assert small().halving == pytest.approx(20.1)
    sheet = small_settled().sheet("ply")
    assert (coupon(sheet).halving, coupon(sheet, "mm", 30.0, 200.0).halving) == (0.0, 60.0)


def test_marks_can_be_counted_and_let_the_cutter_in() -> None:
    """Each step of both slots has one notch in the edge beside it, 6.5 mm wide for 6 mm."""
    made = small()
    plate = solid(made.plate.plain.outer)
    _, _, wide, tall = plate.bounds
    for axis, edge in enumerate(([(0.5, 9), (0.5, tall - 9)], [(9, 0.5), (wide - 9, 0.5)])):
        gaps = shapely.get_parts(shapely.difference(shapely.LineString(edge), plate))
        assert [each.length for each in gaps] == pytest.approx([6.5] * len(made.slots))
        middles = sorted(each.centroid.coords[0][1 - axis] for each in gaps)
        assert middles == pytest.approx([slot.spots[axis][1 - axis] for slot in made.slots])
    fourth, fifth = (made.slots[number].spots[0][1] for number in (3, 4))
    assert plate.contains(shapely.Point(8.0, fourth))
    assert not plate.contains(shapely.Point(8.0, fifth))


def test_nothing_is_thinner_than_wood_bears() -> None:
    """Little is lost, at corners, when 2.4 mm are taken from every side and put back."""
    made = small()
    for part in (made.plate, made.tab):
        holes = [points(each, 0.01) for each in part.routed.openings]
        shape = shapely.Polygon(points(part.routed.outer, 0.01), holes)
        core = shapely.buffer(shapely.buffer(shape, -2.4), 2.4)
        lost = shapely.difference(shape, shapely.buffer(core, 0.05))
        assert max((each.area for each in shapely.get_parts(lost)), default=0.0) < 3.0


def test_steps_are_read_where_the_tongue_goes_in_clear_of_round_ends() -> None:
    """A tongue of 8.5 mm stands clear of the ends, which the cutter leaves 3 mm round."""
    made = small()
    (first, _), *_ = (slot.spots[1] for slot in made.slots)
    lower = min(made.plate.plain.openings, key=lambda each: bounds(each).x0 + bounds(each).y0)
    assert first - bounds(lower).x0 >= 8.5 / 2 + 3.0


def test_the_plan_slot_and_the_coupon_slot_agree_at_every_rung() -> None:
    for thickness in (17.6, 17.8, 18.0, 18.2):
        settled = settled_at(thickness)
        feature = next(f for p in settled.parts for f in p.features if f.name == "rail-slot")
        slot = next(s for s in settled.coupons[0].slots if abs(s.thickness - thickness) < 1e-9)
        assert slot.width == pytest.approx(feature.width.value)


def test_steps_are_a_tenth_and_reach_beyond_the_drawn_width() -> None:
    steps = [each.thickness for each in settled_at(17.6, NO_STEP).coupons[0].slots]
    assert steps == pytest.approx([17.3 + 0.1 * n for n in range(10)])
    assert all(b - a == pytest.approx(0.1) for a, b in pairwise(steps))


def test_a_step_of_the_range_is_the_coupons() -> None:
    steps = [slot.thickness for slot in small_settled().coupons[0].slots]
    assert steps == pytest.approx([17.0 + 0.2 * n for n in range(7)])


def test_a_long_ladder_is_tried_around_the_drawn_thickness() -> None:
    steps = tried((16.0, 19.0), 17.8, 0.1)
    assert len(steps) == 16
    assert min(steps) < 17.8 < max(steps)


def test_the_coupon_is_the_same_whatever_the_variant() -> None:
    def shape(thickness: float) -> object:
        return settled_at(thickness).coupons

    assert shape(17.6) == shape(18.2)


def test_it_is_small_and_nothing_is_engraved_on_it() -> None:
    made = small()
    cuts = (*made.plate.cuts, *made.tab.cuts)
    assert {each.operation for each in cuts} == {Operation.OPENING, Operation.OUTLINE}
    assert max(size_of(made)) < 260
