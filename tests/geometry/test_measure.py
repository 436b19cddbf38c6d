"""Exact measures, against the formulas of elementary geometry and against the plane library."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.geometry import shapes
from kerfolio.geometry.boolean import (
    contains,
    difference,
    distance,
    intersects,
)
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, bounds, centroid, length, point_in, signed_area
from kerfolio.geometry.transform import mirrored_x, mirrored_y, moved, scaled, turned
from tests.geometry.shape_cases import solid, tools

HALF_DISC = Contour(((0, 0, 0.0), (10, 0, 1.0)))


def test_a_circle_has_its_area_and_length() -> None:
    disc = shapes.circle((3, 4), 10)
    assert area(disc) == pytest.approx(math.pi * 25, rel=1e-12)
    assert length(disc) == pytest.approx(math.pi * 10, rel=1e-12)
    assert centroid(disc) == pytest.approx((3, 4))


def test_an_ellipse_has_its_area() -> None:
    assert area(shapes.ellipse((0, 0), 300, 200)) == pytest.approx(math.pi * 150 * 100, rel=1e-4)


def test_a_half_disc_has_its_centroid() -> None:
    """4 r / (3 pi) from the straight side (tables of plane areas; the formula from memory)."""
    assert area(HALF_DISC) == pytest.approx(math.pi * 25 / 2)
    x, y = centroid(HALF_DISC)
    assert x == pytest.approx(5)
    assert abs(y) == pytest.approx(4 * 5 / (3 * math.pi))


def test_a_circular_segment_has_its_area() -> None:
    """r2/2 (a - sin a) for a segment of angle a (tables of plane areas; from memory)."""
    segment = Contour(((0, 0, 0.0), (10, 0, math.tan(math.radians(60) / 4))))
    assert area(segment) == pytest.approx(100 / 2 * (math.pi / 3 - math.sin(math.pi / 3)))


def test_openings_count_against_the_area_and_for_the_length() -> None:
    plate = Region(shapes.rectangle(0, 0, 50, 40), (shapes.circle((25, 20), 10),))
    assert area(plate) == pytest.approx(2000 - math.pi * 25)
    assert length(plate) == pytest.approx(180 + math.pi * 10)
    assert centroid(plate) == pytest.approx((25, 20))


def test_the_box_of_an_arc_reaches_its_crown() -> None:
    box = bounds(HALF_DISC)
    assert (box.x0, box.y0, box.x1, box.y1) == pytest.approx((0, 0, 10, 5))
    quarter = Contour(((10, 0, math.tan(math.pi / 8)), (0, 10, 0.0), (0, 0, 0.0)))
    box = bounds(quarter)
    assert (box.width, box.height) == pytest.approx((10, 10))
    assert box.centre == pytest.approx((5, 5))


@given(tools())
def test_measures_agree_with_the_plane_library(tool: Contour) -> None:
    reference = solid(tool)
    assert area(tool) == pytest.approx(reference.area, abs=0.001 * reference.length)
    assert length(tool) == pytest.approx(reference.length, rel=1e-3)
    box = bounds(tool)
    found = (box.x0, box.y0, box.x1, box.y1)
    assert found == pytest.approx(reference.bounds, abs=0.001)
    middle = reference.centroid
    assert centroid(tool) == pytest.approx((middle.x, middle.y), abs=0.01)


@given(tools(), st.floats(0.1, 10), st.floats(-180, 180))
def test_moving_keeps_and_scaling_squares_the_area(
    tool: Contour, factor: float, angle: float
) -> None:
    whole = area(tool)
    for same in (moved(tool, 7, -3), turned(tool, angle), mirrored_x(tool, 5), mirrored_y(tool)):
        assert area(same) == pytest.approx(whole, rel=1e-9)
        assert signed_area(same) > 0
    assert area(scaled(tool, factor)) == pytest.approx(whole * factor**2, rel=1e-9)


@given(tools(), st.floats(-20, 120), st.floats(-20, 120))
def test_a_point_lies_inside_where_the_plane_library_says_so(
    tool: Contour, x: float, y: float
) -> None:
    reference, spot = solid(tool), shapely.Point(x, y)
    if shapely.distance(reference.boundary, spot) > 0.001:
        assert point_in(tool, (x, y)) == reference.contains(spot)


def test_the_centre_of_a_circle_lies_inside_and_that_of_a_ring_does_not() -> None:
    disc = shapes.circle((0, 0), 10)
    assert point_in(disc, (0, 0))
    assert not point_in(Region(shapes.circle((0, 0), 20), (disc,)), (0, 0))
    assert point_in(Region(shapes.circle((0, 0), 20), (disc,)), (7, 0))


def test_shapes_that_only_touch_do_not_overlap() -> None:
    one = shapes.rectangle(0, 0, 10, 10)
    assert not intersects(one, shapes.rectangle(10, 0, 20, 10))
    assert not intersects(one, shapes.circle((15, 5), 10))
    assert distance(one, shapes.circle((15, 5), 10)) == pytest.approx(0, abs=1e-6)


def test_distances_are_those_between_areas() -> None:
    plate, hole = shapes.rectangle(0, 0, 100, 100), shapes.circle((20, 50), 10)
    assert distance(plate, hole) == 0
    assert distance(plate, shapes.circle((120, 50), 10)) == pytest.approx(15, abs=0.002)


def test_a_part_contains_what_touches_its_edge_but_not_what_sticks_out() -> None:
    part = region(shapes.rectangle(0, 0, 100, 100, round=20))
    assert contains(part, shapes.rectangle(20, 0, 80, 100))
    assert contains(part, shapes.rectangle(0, 0, 100, 100, round=20))
    assert not contains(part, shapes.rectangle(0, 0, 80, 100))
    assert not contains(part, shapes.circle((95, 50), 10.1))
    drilled = difference(part, [shapes.circle((50, 50), 20)])
    assert not contains(drilled, shapes.circle((50, 50), 5))


def test_flattened_arcs_keep_within_the_tolerance() -> None:
    for tolerance in (0.1, 0.01, 0.001):
        ring = shapely.Polygon(points(shapes.circle((0, 0), 60), tolerance)).exterior
        assert 30 - float(shapely.distance(ring, shapely.Point(0, 0))) <= tolerance + 1e-12
