"""Hulls and least rectangles against manifold3d and turned rectangles."""

from __future__ import annotations

import math

import manifold3d
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.geometry.hull import convex_hull, least_rectangle
from kerfolio.geometry.packing import Flat

whole = st.integers(-50, 50).map(float)


@given(st.lists(st.tuples(whole, whole), min_size=1, max_size=15))
def test_hulls_are_those_of_manifold3d(points: list[tuple[float, float]]) -> None:
    hull = convex_hull(points)
    expected = manifold3d.CrossSection.hull_points(np.array(points))
    if expected.area() < 1e-9:
        assert hull == ()
        return
    assert manifold3d.CrossSection([np.array(hull)]).area() == pytest.approx(expected.area())
    assert set(hull) <= set(points)


def test_a_line_and_a_point_enclose_nothing() -> None:
    assert convex_hull([(0.0, 0.0), (10.0, 10.0), (20.0, 20.0)]) == ()
    assert convex_hull([(3.0, 4.0)]) == ()


def test_points_all_but_in_line_make_no_corner() -> None:
    square = [(0.0, 0.0), (50.0, 1e-13), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0)]
    assert len(convex_hull(square)) == 4


@pytest.mark.parametrize("degrees", [0, 17, 45, 90, 133])
def test_the_least_rectangle_of_a_turned_one_is_itself(degrees: float) -> None:
    shape = Flat(((0, 0), (400, 0), (400, 150), (200, 130), (0, 150))).turned(degrees)
    assert least_rectangle(shape) == pytest.approx((400, 150))


def test_the_least_rectangle_of_a_right_triangle_lies_along_its_hypotenuse_or_legs() -> None:
    """All such rectangles have twice the triangle's area (one side lies on it; geometry)."""
    long, short = least_rectangle(Flat(((0, 0), (30, 0), (0, 40))))
    assert long * short == pytest.approx(2 * 600)
    assert math.isclose(long, 40) or math.isclose(long, 50)
