"""Settling: the same plan at two thicknesses gives different, correct parts."""

from __future__ import annotations

import math
from textwrap import dedent

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.basis.said import told
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan
from tests.plans import RACK, proved, settled_at


def part_of(settled: SettledPlan, name: str) -> SettledPart:
    return next(part for part in settled.parts if part.name == name)


def opening_at(part: SettledPart, x: float, y: float) -> Contour:
    """Return the opening of the plain shape whose box is centred on a point."""
    return next(
        each for each in part.plain.openings if math.dist(bounds(each).centre, (x, y)) < 0.01
    )


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_a_slot_follows_the_thickness_it_takes(thickness: float) -> None:
    side = part_of(settled_at(thickness), "side")
    box = bounds(opening_at(side, 100, 60))
    # Fit 0.1 mm a side: the width is measured back from the shape, not read from the record.
    assert box.width == pytest.approx(thickness + 0.2, abs=1e-9)
    assert box.height == pytest.approx(60.2, abs=1e-9)


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_a_through_tab_ends_flush_with_the_sheet_it_takes(thickness: float) -> None:
    rail = part_of(settled_at(thickness), "rail")
    assert rail.size[0] == pytest.approx(300 + 2 * thickness)
    assert bounds(rail.plain.outer).x0 == pytest.approx(-thickness)


def test_sizes_keep_their_reasons() -> None:
    side = part_of(settled_at(17.6), "side")
    features = {feature.name: feature for feature in side.features}
    assert told(features["rail-slot"].width.reason, METRIC) == "17.6 mm sheet + 2 x 0.1 mm fit"
    assert told(features["rail-slot"].length.reason, METRIC) == "60 mm tab + 2 x 0.1 mm fit"
    assert told(features["bolt"].width.reason, METRIC) == "clearance hole for Bolt M6 × 40 mm"
    assert told(features["foot"].length.reason, METRIC) == "20 mm deep + 0.1 mm fit"
    assert dict(settled_at(17.6).sizes)["t"].value == pytest.approx(17.6)


def test_a_clearance_hole_is_that_of_the_standard() -> None:
    # ISO 273, medium series: M6 has a clearance hole of 6.6 mm.
    side = part_of(settled_at(17.6), "side")
    hole = next(cut for cut in side.cuts if cut.operation is Operation.HOLE)
    assert area(hole.contours[0]) == pytest.approx(math.pi * 3.3**2)


def test_cuts_come_inside_before_outside() -> None:
    side = part_of(settled_at(17.6), "side")
    assert [cut.operation for cut in side.cuts] == [
        Operation.ENGRAVE,
        Operation.HOLE,
        Operation.OPENING,
        Operation.OUTLINE,
    ]
    assert side.cuts[-1].contours == (side.routed.outer,)


def test_mass_is_area_times_thickness_times_density() -> None:
    # Density 685 kg/m3: birch plywood datasheet, 18 mm row. Worked by hand: the rail is 300 x 120
    # with two tabs of 60 x 17.6; the housing takes 60.2 x 17.8 x 6 mm away, its relief apart.
    rail = part_of(settled_at(17.6), "rail")
    flat = 300 * 120 + 2 * 60 * 17.6
    assert area(rail.plain) == pytest.approx(flat)
    by_hand = (flat * 17.6 - 60.2 * 17.8 * 6) * 685e-9
    assert rail.mass == pytest.approx(by_hand, rel=2e-3)


def test_marks_and_labels() -> None:
    settled = settled_at(17.6)
    assert [[(p.mark, p.label) for p in part.pieces] for part in settled.parts] == [
        [("A1", "side.left"), ("A2", "side.right")],
        [("B", "rail")],
    ]


INCHES = """\
    plan: Inch box
    version: 1.0.0
    summary: A part in inches.
    units: in
    sizes: {seat: 14, less: seat - 2, half: seat/2 + 1/16 in}
    sheets: {ply: {stock: plywood-23-32, size: 96 x 48}}
    parts:
      board:
        sheet: ply
        outline: {rectangle: [less, half]}
        features:
          peg:
            hole: {at: [[1, 1]], diameter: 8 mm}
            repeat: {count: 3, step: [2, 0]}
            mirror: {y: 3}
    releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def test_an_inch_plan_subtracts_inches() -> None:
    drawn = proved(dedent(INCHES)).drawn
    assert drawn is not None
    (board,) = drawn.parts
    # 1 in = 25.4 mm exactly (international inch, 1959).
    assert board.size[0] == pytest.approx(12 * 25.4)
    assert board.size[1] == pytest.approx((7 + 1 / 16) * 25.4)


def test_repeats_come_before_their_mirror_images() -> None:
    drawn = proved(dedent(INCHES)).drawn
    assert drawn is not None
    spots = {f.name: (f.at[0] / 25.4, f.at[1] / 25.4) for f in drawn.parts[0].features}
    assert list(spots) == [f"peg.{number}" for number in range(1, 7)]
    assert spots["peg.2"] == pytest.approx((3, 1))
    assert spots["peg.5"] == pytest.approx((3, 5))


FINGERS = """\
    plan: Corner
    version: 1.0.0
    summary: A finger corner.
    sheets: {ply: {stock: birch-plywood-12, published-for: 11.6 to 12.4 by 0.4, fit: 0.1}}
    relief: none
    parts:
      a:
        sheet: ply
        outline: {rectangle: [200, 100]}
        features: {corner: {fingers: {edge: right, count: 5, takes: ply, first: finger}}}
      b:
        sheet: ply
        outline: {rectangle: [200, 100]}
        features: {corner: {fingers: {edge: left, count: 5, takes: ply, first: gap}}}
    releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


@pytest.mark.parametrize("thickness", [11.6, 12.0, 12.4])
def test_fingers_leave_the_fit_on_every_side(thickness: float) -> None:
    """Along the corner the two rows fill it but for twice the fit at each of the four meetings."""
    settled = settled_at(thickness, dedent(FINGERS))
    gone = [200 * 100 - area(part.plain) for part in settled.parts]
    # a: gaps 2 and 4, each 20 + 0.1 wide; b: gaps 1, 3, 5, of which two end at the edge.
    assert gone[0] == pytest.approx(2 * (20 + 0.1) * thickness)
    assert gone[1] == pytest.approx((3 * 20 + 0.05 + 0.1 + 0.05) * thickness)
    play = (sum(gone) / thickness - 100) / 4
    assert play == pytest.approx(0.1)


def test_a_groove_runs_out_of_its_open_ends_at_the_full_width() -> None:
    text = RACK.replace(
        "      housing: {pocket: {at: [150, 80], length: 60, takes: ply, depth: 6}}",
        "      channel: {groove: {from: [60, 0], to: [60, h], takes: ply, depth: 6}}",
    )
    rail = part_of(settled_at(17.6, text), "rail")
    pocket = next(cut for cut in rail.cuts if cut.operation is Operation.POCKET)
    box = bounds(pocket.contours[0])
    assert (box.width, pocket.depth) == (pytest.approx(17.8), 6.0)
    # The cutter of 6 mm must leave by a radius, or it rounds both corners of the open end.
    assert box.y0 <= -3.0 + 0.1
    assert box.y1 >= 120 + 3.0 - 0.1
