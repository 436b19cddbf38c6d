"""Envelopes and footprints are never too small, and the check of distances is exact."""

from __future__ import annotations

import math

import pytest
import shapely

from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Region
from kerfolio.geometry.packing import Flat, envelope, flat_region, footprint, grown_area, too_close
from kerfolio.geometry.shapes import circle, rectangle, rounded_slot
from kerfolio.geometry.transform import moved, turned

NOTCHED = Flat(
    ((0, 0), (190, 0), (190, 60), (210, 60), (210, 0), (400, 0), (400, 300), (0, 300)),
    (((100, 100), (100, 118), (200, 118), (200, 100)),),
)


def solid(flat: Flat) -> shapely.Polygon:
    return shapely.Polygon(flat.outer, flat.openings)


def plate(x0: float, y0: float, x1: float, y1: float) -> Region:
    return region(rectangle(x0, y0, x1, y1))


def test_the_envelope_holds_every_shape() -> None:
    shapes = (plate(0, 0, 100, 50), plate(0, 0, 101, 49))
    assert solid(envelope(shapes)).area == pytest.approx(100 * 50 + 1 * 49)
    with pytest.raises(ValueError, match="overlap"):
        envelope((plate(0, 0, 10, 10), plate(20, 0, 30, 10)))


def test_a_flattened_disc_has_a_discs_area() -> None:
    flat = flat_region(region(circle((0, 0), 200)))
    assert solid(flat).area == pytest.approx(math.pi * 100**2, rel=1e-4)


@pytest.mark.parametrize(
    "flat",
    [
        NOTCHED,
        flat_region(region(circle((0, 0), 460))),
        flat_region(region(rounded_slot((0, 0), 300, 60, 0))),
        Flat(((0, 0), (100, 0), (50, 400))),
    ],
    ids=["notched", "disc", "slot", "spike"],
)
@pytest.mark.parametrize("crevice", [0.0, 48.0])
def test_a_footprint_leaves_the_gap(flat: Flat, crevice: float) -> None:
    grown = solid(footprint(flat, 4.0, crevice))
    assert grown.is_valid
    assert grown.covers(solid(flat).buffer(3.99, quad_segs=64))
    x0, y0, x1, y1 = flat.box
    assert grown.bounds == pytest.approx((x0 - 4, y0 - 4, x1 + 4, y1 + 4))


def test_a_footprint_has_few_edges_and_no_crevices() -> None:
    assert len(footprint(NOTCHED, 4.0, 48.0).outer) == 4
    assert footprint(NOTCHED, 4.0, 48.0).openings == ()
    assert len(footprint(NOTCHED, 4.0, 0.0).outer) == 8
    assert len(footprint(flat_region(region(circle((0, 0), 460))), 4.0, 48.0).outer) < 80


def test_a_hollow_corner_stays_open() -> None:
    angle = Flat(((0, 0), (400, 0), (400, 100), (100, 100), (100, 300), (0, 300)))
    assert solid(footprint(angle, 4.0, 80.0)).area == pytest.approx(408 * 108 + 108 * 200)


def test_a_right_angle_is_turned_exactly() -> None:
    quarter = Flat(((0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (0.0, 1.0))).turned(90.0)
    assert quarter.outer == ((0.0, 0.0), (0.0, 3.0), (-1.0, 3.0), (-1.0, 0.0))
    assert quarter.box == (-1.0, 0.0, 0.0, 3.0)
    assert quarter.area == 3.0


def test_what_is_too_close_is_found_with_its_distance() -> None:
    row = [plate(0, 0, 10, 10), plate(17, 0, 30, 10), plate(29, 0, 40, 10), plate(60, 0, 70, 10)]
    assert list(too_close(row, 8.0)) == [(0, 1, 7.0), (1, 2, -1.0)]
    assert list(too_close(row, 7.0)) == [(1, 2, -1.0)]
    assert list(too_close(row[:1], 8.0)) == []


def test_a_touch_is_no_overlap() -> None:
    assert list(too_close([plate(0, 0, 10, 10), plate(10, 0, 20, 10)], 8.0)) == [(0, 1, 0.0)]


def test_discs_are_measured_across_their_arcs() -> None:
    one = region(circle((0, 0), 100))
    other = moved(turned(one, 30), 75, 75)
    [(_, _, distance)] = too_close([one, other], 8.0)
    assert distance == pytest.approx(75 * math.sqrt(2) - 100, abs=0.005)


def test_a_piece_in_a_window_is_not_too_close() -> None:
    frame = region(rectangle(0, 0, 100, 100), (rectangle(10, 10, 90, 90),))
    assert list(too_close([frame, plate(20, 20, 80, 80)], 8.0)) == []
    assert list(too_close([frame, plate(15, 20, 80, 80)], 8.0)) == [(0, 1, 5.0)]


def saw_toothed(teeth: int) -> Flat:
    """Return a board whose upper edge has so many teeth of 20 mm."""
    top = [(900 - 450 * step / teeth, 600.0 + 20 * (step % 2)) for step in range(2 * teeth)]
    return Flat(((0.0, 0.0), (900.0, 0.0), *top, (0.0, 600.0)))


def test_a_jagged_shape_has_a_plain_footprint() -> None:
    """A line of many teeth is grown in steps: it ends as one line above their tips."""
    shape = saw_toothed(1_500)
    found = footprint(shape, 4.0, 480.0)
    grown = shapely.Polygon(shape.outer).buffer(3.99)
    assert shapely.Polygon(found.outer, found.openings).covers(grown)
    assert len(found.outer) < 60
    assert found.box == pytest.approx((-4, -4, 904, 624), abs=1e-6)
    assert found.area < 1.02 * 908 * 628


def test_the_area_of_a_jagged_shape_grown() -> None:
    shape = saw_toothed(1_500)
    once = shapely.Polygon(shape.outer).buffer(4.0, quad_segs=64).area
    assert 0.998 * once < grown_area(shape, 4.0) <= once
