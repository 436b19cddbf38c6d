"""The shapes a maker asks for, measured by the formulas of elementary geometry."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.geometry import shapes
from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, bounds, length
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.transform import mirrored_x
from tests.geometry.shape_cases import difference_area, solid


def test_a_rounded_rectangle_loses_four_corners() -> None:
    plate = shapes.rectangle(0, 0, 60, 20, round=4)
    assert area(plate) == pytest.approx(1200 - (4 - math.pi) * 16)
    assert length(plate) == pytest.approx(2 * (60 + 20) - 8 * 4 + math.tau * 4)
    assert {round(e.arc.radius, 9) for e in edges(plate) if e.arc} == {4}


def test_a_rectangle_rounded_by_half_its_width_is_a_rounded_slot() -> None:
    assert area(shapes.rectangle(0, 0, 60, 20, round=10)) == pytest.approx(
        area(shapes.rounded_slot((30, 10), 60, 20))
    )


def test_roundings_are_tangent_to_both_sides() -> None:
    blade = shapes.polygon([(0, 0, 5), (100, 0, 8), (30, 70, 12), (40, 25, 6)])
    walls = list(edges(blade))
    for before, after in pairwise([*walls, walls[0]]):
        assert _heading(before, 1.0) == pytest.approx(_heading(after, 0.0), abs=1e-7)


def _heading(edge: Edge, share: float) -> tuple[float, float]:
    arc = edge.arc
    if arc is None:
        size = math.dist(edge.start, edge.end)
        return (edge.end[0] - edge.start[0]) / size, (edge.end[1] - edge.start[1]) / size
    angle = arc.start + share * arc.sweep
    sign = math.copysign(1, arc.sweep)
    return -sign * math.sin(angle), sign * math.cos(angle)


@pytest.mark.parametrize(
    ("corners", "number", "limit"),
    [
        ([(0, 0, 0), (60, 0, 40), (60, 30, 0)], 2, 30.0),
        ([(0, 0, 0), (60, 0, 16), (60, 30, 16), (0, 30, 0)], 2, 15.0),
        ([(0, 0, 0), (60, 0, 25), (60, 30, 10), (0, 30, 0)], 2, 20.0),
        ([(0, 0, 0), (60, 0, 10), (60, 30, 25), (0, 30, 0)], 3, 20.0),
        ([(0, 0, 0), (60, 0, -1), (60, 30, 0)], 2, 0.0),
        ([(0, 0, 0), (60, 0, 1), (20, 0, 0), (20, 30, 0)], 2, 0.0),
        ([(0, 0, 0), (60, 0, 0), (60, 0, 3), (20, 30, 0)], 3, 0.0),
    ],
)
def test_a_rounding_that_does_not_fit_tells_its_corner_and_its_limit(
    corners: list[shapes.CornerPoint], number: int, limit: float
) -> None:
    with pytest.raises(ShapeError, match=f"corner {number}") as caught:
        shapes.polygon(corners)
    assert caught.value.corner == number
    assert caught.value.limit == pytest.approx(limit)


@given(st.floats(20, 160), st.floats(0.001, 100))
def test_the_largest_radius_told_does_fit(angle: float, excess: float) -> None:
    end = (100 * math.cos(math.radians(angle)), 100 * math.sin(math.radians(angle)))
    largest = 100 * math.tan(math.radians(angle) / 2)
    corners = [(0.0, 0.0, largest * (1 + excess)), (100.0, 0.0, 0.0), (*end, 0.0)]
    with pytest.raises(ShapeError) as caught:
        shapes.polygon(corners)
    limit = caught.value.limit
    assert limit is not None
    assert limit == pytest.approx(largest)
    shapes.polygon([(0.0, 0.0, limit), *corners[1:]])


def test_shapes_of_no_size_are_refused() -> None:
    for make in (
        lambda: shapes.rectangle(0, 0, 0, 5),
        lambda: shapes.circle((0, 0), 0),
        lambda: shapes.ellipse((0, 0), 3, -1),
        lambda: shapes.slot((0, 0), (0, 0), 5, 5),
        lambda: shapes.slot((0, 0), (1, 0), 0, 5),
        lambda: shapes.rounded_slot((0, 0), 5, 0),
        lambda: shapes.rounded_slot((0, 0), 5, 6),
        lambda: shapes.polygon([(0, 0, 0), (1, 1, 0)]),
        lambda: shapes.polygon([(0, 0, 0), (1, 1, 0), (2, 2, 0)]),
    ):
        with pytest.raises(ShapeError):
            make()


@given(st.floats(1, 2000), st.floats(1, 2000))
def test_an_ellipse_keeps_within_its_tolerance(width: float, height: float) -> None:
    """Every point of the true curve lies within 0.005 mm of the chords."""
    ring = shapely.Polygon(points(shapes.ellipse((0, 0), width, height), 0.0005)).exterior
    steps = [math.tau * k / 997 for k in range(997)]
    for t in steps[:: 1 if width < 50 else 7]:
        spot = shapely.Point(width / 2 * math.cos(t), height / 2 * math.sin(t))
        assert shapely.distance(ring, spot) <= 0.0056


def test_an_ellipse_of_equal_diameters_is_a_circle() -> None:
    assert shapes.ellipse((1, 2), 30, 30) == shapes.circle((1, 2), 30)
    assert shapes.rounded_slot((1, 2), 30, 30, 45) == shapes.circle((1, 2), 30)


def test_a_slot_lies_along_its_direction() -> None:
    slot = shapes.slot((10, 20), (3, 4), 50, 10)
    assert area(slot) == pytest.approx(500)
    box = bounds(slot)
    assert (box.width, box.height) == pytest.approx((50 * 0.6 + 10 * 0.8, 50 * 0.8 + 10 * 0.6))
    assert shapes.slot((10, 20), (0, 1), 40, 6) == shapes.rectangle(7, 0, 13, 40)


def test_a_rounded_slot_is_as_long_as_stated_over_all() -> None:
    slot = shapes.rounded_slot((0, 0), 100, 30, 90)
    box = bounds(slot)
    assert (box.width, box.height) == pytest.approx((30, 100))
    assert area(slot) == pytest.approx(70 * 30 + math.pi * 225)


def test_a_half_polygon_is_completed_across_the_mirror_line() -> None:
    half = [(50.0, 0.0, 0.0), (90.0, 0.0, 5.0), (80.0, 70.0, 0.0), (50.0, 70.0, 0.0)]
    whole = shapes.mirrored_half(half, x=50)
    assert len(whole) == 6
    assert whole[4:] == ((20.0, 70.0, 0.0), (10.0, 0.0, 5.0))
    contour = shapes.polygon(whole)
    assert difference_area(solid(mirrored_x(contour, 50)), solid(contour)) < 1e-6
    apart = shapes.mirrored_half([(60.0, 0.0, 0.0), (60.0, 9.0, 0.0)], x=50)
    assert shapes.polygon(apart) == shapes.rectangle(40, 0, 60, 9)
    over = shapes.mirrored_half(
        [(0.0, 5.0, 0.0), (0.0, 0.0, 0.0), (9.0, 0.0, 0.0), (9.0, 5.0, 0.0)], y=5
    )
    assert shapes.polygon(over) == shapes.rectangle(0, 0, 9, 10)


def test_a_half_is_mirrored_at_one_line() -> None:
    with pytest.raises(ValueError, match="mirror at x or at y"):
        shapes.mirrored_half([(0, 0, 0)], x=1, y=1)
