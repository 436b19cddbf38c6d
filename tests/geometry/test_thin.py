"""Thin places of shapes worked out by hand: their widths and middles follow from plane geometry."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.boolean import difference
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.near import line_distance
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.geometry.thin import ThinPlace, thin_places
from tests.settling.panels import flat

PLATE = Region(rectangle(0, 0, 200, 100))


def polygon(*corners: tuple[float, float]) -> Region:
    return Region(Contour(tuple((x, y, 0.0) for x, y in corners)))


def only(found: tuple[ThinPlace, ...]) -> ThinPlace:
    assert len(found) == 1, found
    return found[0]


def test_a_plate_without_openings_has_no_thin_place() -> None:
    assert thin_places(PLATE, 90) == ()


def test_sharp_outside_corners_are_no_thin_places() -> None:
    # The disc misses the tips of all three corners; a tip is a corner, not a web.
    assert thin_places(polygon((0, 0), (200, 0), (100, 100)), 20) == ()


def test_a_web_beside_an_opening() -> None:
    plate = difference(PLATE, [rectangle(60, 8, 140, 50)])
    place = only(thin_places(plate, 12))
    assert place.width == pytest.approx(8, abs=0.01)
    assert place.at == pytest.approx((100, 4), abs=0.5)  # half way along, half way across
    assert not place.tongue
    assert thin_places(plate, 7.9) == ()


def test_a_web_between_two_holes_is_the_distance_of_centres_less_the_radii() -> None:
    plate = difference(PLATE, [circle((80, 50), 30), circle((117, 50), 30)])
    place = only(thin_places(plate, 12))
    assert place.width == pytest.approx(37 - 30, abs=0.05)
    assert place.at == pytest.approx((98.5, 50), abs=0.05)


def test_a_hole_in_a_corner_has_a_web_to_either_side() -> None:
    plate = difference(PLATE, [circle((15, 15), 20)])
    found = thin_places(plate, 9)
    assert [round(each.width, 1) for each in found] == [5.0, 5.0]
    assert [tuple(round(c, 1) for c in each.at) for each in found] == [(2.5, 15.0), (15.0, 2.5)]


def test_a_waist_of_the_outline() -> None:
    # Two squares of 60 mm joined by a strip 7 mm high and 20 mm long.
    dumb_bell = polygon(
        *((0, 0), (60, 0), (60, 20), (80, 20), (80, 0), (140, 0)),
        *((140, 60), (80, 60), (80, 27), (60, 27), (60, 60), (0, 60)),
    )
    place = only(thin_places(dumb_bell, 10))
    assert place.width == pytest.approx(7, abs=0.01)
    assert place.at == pytest.approx((70, 23.5), abs=0.5)


def test_a_tongue_hangs_on_one_side() -> None:
    plate = polygon((0, 0), (100, 0), (100, 60), (56, 60), (56, 90), (50, 90), (50, 60), (0, 60))
    place = only(thin_places(plate, 9))
    assert place.tongue
    assert place.width == pytest.approx(6, abs=0.1)
    assert place.at == pytest.approx((53, 60), abs=1.0)


def test_a_short_stub_is_no_tongue() -> None:
    plate = polygon((0, 0), (100, 0), (100, 60), (56, 60), (56, 66), (50, 66), (50, 60), (0, 60))
    assert thin_places(plate, 9) == ()


def test_a_shape_nowhere_wide_enough_is_thin_as_a_whole() -> None:
    strip = polygon((0, 0), (100, 0), (100, 8), (0, 8))
    place = only(thin_places(strip, 10))
    assert (place.tongue, place.at) == (True, pytest.approx((50, 4)))
    assert place.width == pytest.approx(8)


def test_each_pair_of_walls_is_told() -> None:
    plate = difference(PLATE, [rectangle(40, 5, 95, 95), rectangle(100, 5, 160, 95)])
    widths = [round(each.width, 1) for each in thin_places(plate, 8)]
    assert widths == [5.0] * 5  # above and below each opening, and between the two


def test_bumps_between_reliefs_are_no_webs() -> None:
    # A slot end 12.7 mm wide with two reliefs of 3 mm radius leaves a flat of some 4 mm.
    slot = rectangle(60, 40, 140, 52.7)
    centres = [(60 + 2.1213, 42.1213), (60 + 2.1213, 50.5787)]
    plate = difference(PLATE, [slot, *(circle(each, 6) for each in centres)])
    assert thin_places(plate, 16.4) == ()


@settings(max_examples=60, deadline=None)
@given(
    st.floats(1.0, 30.0),
    st.floats(0.0, 359.0),
    st.floats(3.0, 25.0),
)
def test_a_web_is_found_just_where_it_is_narrower(gap: float, turn: float, least: float) -> None:
    # A round hole in a round plate, off its middle: the web is thinnest on the line of centres.
    outer, inner = 60.0, 15.0
    away = outer - inner - gap
    angle = math.radians(turn)
    hole = circle((away * math.cos(angle), away * math.sin(angle)), 2 * inner)
    plate = difference(Region(circle((0, 0), 2 * outer)), [hole])
    found = thin_places(plate, least)
    if gap < least - 0.3:
        place = only(found)
        assert place.width == pytest.approx(gap, abs=0.1)
        reach = outer - gap / 2
        assert place.at == pytest.approx(
            (reach * math.cos(angle), reach * math.sin(angle)), abs=0.1 + gap / 4
        )
        assert flat(plate).buffer(0.1).covers(shapely.LineString(place.ends))
    elif gap > least + 0.3:
        assert found == ()


def test_the_distance_to_a_contours_line() -> None:
    square = rectangle(0, 0, 10, 10)
    assert line_distance((5, 4), square) == pytest.approx(4)
    assert line_distance((13, 14), square) == pytest.approx(5)
    assert line_distance((3, 0), circle((0, 0), 10)) == pytest.approx(2, abs=0.02)


def test_a_neck_between_two_points_is_found_though_discs_reach_it_from_both_sides() -> None:
    # Two points face each other 7 mm apart; a disc of 10 mm covers the spot from either side.
    hour_glass = polygon(
        *((0, 0), (100, 0), (100, 60), (53.5, 60), (50, 33.5), (46.5, 60), (0, 60)),
    )
    waisted = polygon(
        *((0, 0), (46.5, 0), (50, 26.5), (53.5, 0), (100, 0), (100, 60)),
        *((53.5, 60), (50, 33.5), (46.5, 60), (0, 60)),
    )
    assert thin_places(hour_glass, 10) == ()
    place = only(thin_places(waisted, 10))
    assert place.width == pytest.approx(7, abs=0.1)
    assert place.at == pytest.approx((50, 30), abs=0.3)


def test_a_web_between_two_small_holes_is_found() -> None:
    plate = difference(PLATE, [circle((80, 50), 6), circle((94, 50), 6)])
    place = only(thin_places(plate, 12))
    assert place.width == pytest.approx(8, abs=0.01)
    assert place.at == pytest.approx((87, 50), abs=0.1)
