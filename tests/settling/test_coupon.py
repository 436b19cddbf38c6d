"""The fit coupon: stepped slots made as the plan makes its own."""

from __future__ import annotations

from itertools import pairwise

import pytest

from kerfolio.geometry.measure import area, bounds
from kerfolio.settling.coupon import tried
from kerfolio.settling.settled import Operation
from tests.plans import RACK, settled_at, small_settled

NO_STEP = RACK.replace(" by 0.2", "")


def test_every_slot_is_as_wide_as_the_plan_cuts_it() -> None:
    (coupon,) = small_settled().coupons
    fit = small_settled().sheet("ply").fit
    openings = sorted(coupon.plate.plain.openings, key=lambda each: bounds(each).width)
    assert len(openings) == len(coupon.slots)
    for opening, slot in zip(openings, coupon.slots, strict=True):
        assert bounds(opening).width == pytest.approx(slot.thickness + 2 * fit)
        assert slot.width == pytest.approx(slot.thickness + 2 * fit)


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
        plate = settled_at(thickness).coupons[0].plate
        return plate.routed, plate.cuts

    assert shape(17.6) == shape(18.2)


def test_slots_are_relieved_numbered_and_small() -> None:
    (coupon,) = small_settled().coupons
    assert area(coupon.plate.routed) < area(coupon.plate.plain)
    engraved = [cut for cut in coupon.plate.cuts if cut.operation is Operation.ENGRAVE]
    assert len(engraved) == len(coupon.slots) + 1
    assert max(coupon.plate.size) < 300
