"""Which cuts speak for each other.

What decides an edge, and by how much two cuts may differ in it, is common practice, no single
source; that chip load is feed over speed and edges is its definition.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.model.stock import CutterStock
from kerfolio.shop.alike import ALIKE, Axis, Dial, Places, told_in, unlike, way_to
from kerfolio.shop.settings import Settings

CUTTER = CutterStock(
    name="c",
    title="C",
    diameter=6.0,
    kind="compression",
    flutes=2,
    cutting_length=22.0,
    up_cut_length=5.0,
)
GOOD = Settings(speed=18000, feed=4500, plunge=1200, passes=(8.0, 10.1), flutes=2)


def test_a_chip_load_wants_speed_feed_and_edges() -> None:
    assert GOOD.chip == 4500 / 18000 / 2
    assert GOOD.with_chip(0.1).feed == pytest.approx(3600)
    for bare in (replace(GOOD, speed=None), replace(GOOD, flutes=None)):
        with pytest.raises(ValueError, match="chip load"):
            _ = bare.chip
        with pytest.raises(ValueError, match="feed"):
            bare.with_chip(0.1)


def apart(one: Settings, other: Settings, cutter: CutterStock) -> float:
    return float(Places([other], cutter).steps_from(one)[0])


@pytest.mark.parametrize(
    ("other", "dials"),
    [
        (GOOD, ()),
        (replace(GOOD, plunge=500.0), ()),  # another plunge is hardly another setting
        (replace(GOOD, feed=4650.0), ()),  # dials are no finer
        (replace(GOOD, feed=5000.0), (Dial.FEED,)),
        (replace(GOOD, speed=16000.0), (Dial.SPEED,)),
        (replace(GOOD, passes=(7.8, 10.3)), ()),
        (replace(GOOD, passes=(8.0, 11.0)), ()),  # a thicker sheet of those sold alike
        (replace(GOOD, passes=(8.0, 5.0, 5.1)), (Dial.PASSES,)),
        (replace(GOOD, passes=(6.0, 12.1)), (Dial.PASSES,)),
        (Settings(feed=4500), ()),  # what is not told does not differ
        (replace(GOOD, speed=12000.0, feed=3000.0), (Dial.FEED, Dial.SPEED)),
    ],
)
def test_a_setting_is_the_same_as_far_as_it_can_be_set_again(
    other: Settings, dials: tuple[Dial, ...]
) -> None:
    assert unlike(GOOD, other, CUTTER) == dials
    assert unlike(other, GOOD, CUTTER) == dials


def test_what_is_told_is_what_decides_and_the_direction() -> None:
    assert told_in(GOOD) == told_in(replace(GOOD, plunge=None))
    assert told_in(GOOD) != told_in(replace(GOOD, speed=None))
    assert told_in(replace(GOOD, climb=True)) != told_in(replace(GOOD, climb=False))


@pytest.mark.parametrize(
    ("other", "axis", "alike"),
    [
        (replace(GOOD, plunge=300.0), None, True),
        (GOOD.with_chip(0.15), Axis.THICKER, True),
        (GOOD.with_chip(0.09), Axis.THINNER, False),
        (replace(GOOD, speed=15000.0).with_chip(0.125), Axis.SLOWER, True),
        (replace(GOOD, speed=10000.0).with_chip(0.125), Axis.SLOWER, False),
        (replace(GOOD, speed=28000.0).with_chip(0.125), Axis.FASTER, False),
        (replace(GOOD, passes=(9.2, 8.9)), Axis.DEEPER, True),
        (replace(GOOD, passes=(4.9, 10.1)), Axis.SHALLOWER, False),
        (replace(GOOD, passes=(8.0, 5.0, 5.1)), Axis.SHALLOWER_THEN, False),
        (replace(GOOD, passes=(8.0, 14.0)), Axis.DEEPER_THEN, False),
    ],
)
def test_cuts_speak_for_each_other_within_a_step(
    other: Settings, axis: Axis | None, alike: bool
) -> None:
    assert (apart(GOOD, other, CUTTER) <= ALIKE) is alike
    assert apart(GOOD, other, CUTTER) == pytest.approx(apart(other, GOOD, CUTTER))
    if axis:
        assert way_to(GOOD, other, CUTTER) is axis


def test_the_other_direction_is_another_cut_where_both_tell_it() -> None:
    climbs, turned = replace(GOOD, climb=True), replace(GOOD, climb=False)
    assert apart(climbs, turned, CUTTER) == 1.0
    assert way_to(climbs, turned, CUTTER) is Axis.TURNED
    assert apart(climbs, GOOD, CUTTER) == 0.0


def test_just_past_the_tip_is_another_cut_than_just_within_it() -> None:
    within, past = (replace(GOOD, passes=(first, 10.1)) for first in (5.0, 5.1))
    assert apart(within, past, CUTTER) > ALIKE
    assert apart(past, replace(GOOD, passes=(5.2, 10.1)), CUTTER) < 0.1
