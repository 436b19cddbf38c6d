"""Relief of inside corners, measured on settled parts."""

from __future__ import annotations

import math

import pytest
import shapely

from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, bounds
from tests.plans import RACK, settled_at
from tests.settling.test_settle import opening_at, part_of

RADIUS = 3.0  # compression-6
RELIEF = RADIUS + 0.05  # its arcs are a tenth wider across, unless a plan says otherwise

# Routing formulas, section "corner geometry": a dog-bone adds 0.57079633 r2 at a square corner,
# sideways relief 1.57079633 r2 (derived and checked by sampling; computed values).
DOG_BONE_AREA = 0.57079633 * RELIEF**2
SIDEWAYS_AREA = 1.57079633 * RELIEF**2


@pytest.mark.parametrize(
    ("style", "extra"), [("dog-bone", DOG_BONE_AREA), ("sideways", SIDEWAYS_AREA)]
)
def test_relief_is_exactly_as_large_as_needed(style: str, extra: float) -> None:
    side = part_of(settled_at(17.6, RACK + f"relief: {style}\n"), "side")
    # Four corners of the slot and two at the bottom of the notch.
    assert area(side.plain) - area(side.routed) == pytest.approx(6 * extra, rel=1e-6)


def test_without_relief_the_shapes_are_the_same() -> None:
    side = part_of(settled_at(17.6, RACK + "relief: none\n"), "side")
    assert side.routed == side.plain


@pytest.mark.parametrize("style", ["dog-bone", "sideways"])
def test_a_round_cutter_clears_the_square_corners(style: str) -> None:
    """What a disc of the cutter's radius can reach inside the opening covers the whole slot."""
    side = part_of(settled_at(18.2, RACK + f"relief: {style}\n"), "side")
    square = bounds(opening_at(side, 100, 60))
    routed = min(side.routed.openings, key=lambda each: -area(each))
    void = shapely.Polygon(points(routed, 0.0005))
    swept = void.buffer(-RADIUS + 0.002, quad_segs=256).buffer(RADIUS - 0.002, quad_segs=256)
    slot = shapely.box(square.x0, square.y0, square.x1, square.y1)
    assert slot.difference(swept.buffer(0.004)).area < 1e-3


def test_sideways_relief_leaves_the_end_walls_whole() -> None:
    side = part_of(settled_at(17.6, RACK + "relief: sideways\n"), "side")
    routed = max(side.routed.openings, key=area)
    plain = bounds(opening_at(side, 100, 60))
    box = bounds(routed)
    # They say where the tab is along the slot; the long walls can spare the width of two arcs.
    assert (box.y0, box.y1) == (pytest.approx(plain.y0), pytest.approx(plain.y1))
    assert box.width == pytest.approx(plain.width + 2 * RELIEF)


def test_hand_tools_get_a_drill_centre_at_every_corner() -> None:
    side = part_of(settled_at(17.6), "side")
    box = bounds(opening_at(side, 100, 60))
    inset = RADIUS / math.sqrt(2)
    wanted = {
        (round(x, 6), round(y, 6))
        for x in (box.x0 + inset, box.x1 - inset)
        for y in (box.y0 + inset, box.y1 - inset)
    }
    centres = {(round(x, 6), round(y, 6)) for x, y in side.drill_centres}
    assert wanted <= centres
    assert len(centres) == 6


def test_tab_shoulders_are_relieved_so_that_they_seat() -> None:
    rail = part_of(settled_at(17.6), "rail")
    assert len(rail.drill_centres) == 4
    assert area(rail.plain) - area(rail.routed) == pytest.approx(4 * DOG_BONE_AREA, rel=1e-6)
