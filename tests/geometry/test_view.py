"""Parallel projections: where the eye stands, and what lies where in the picture."""

from __future__ import annotations

from math import asin, atan, degrees, sqrt

import pytest

from kerfolio.geometry.rigid import cross, dot, length
from kerfolio.geometry.view import View

AXES = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


def test_from_the_front_x_is_to_the_right_and_z_is_up() -> None:
    view = View(0.0, 0.0)
    assert view.spot((3.0, 5.0, 7.0)) == pytest.approx((3.0, 7.0))
    assert view.depth((3.0, 5.0, 7.0)) == pytest.approx(-5.0)


def test_from_the_right_the_back_is_to_the_right() -> None:
    view = View(90.0, 0.0)
    assert view.spot((3.0, 5.0, 7.0)) == pytest.approx((5.0, 7.0))
    assert view.depth((3.0, 5.0, 7.0)) == pytest.approx(3.0)


@pytest.mark.parametrize("azimuth", [-148.0, -32.0, 0.0, 58.0, 170.0])
@pytest.mark.parametrize("elevation", [-60.0, -25.0, 0.0, 28.0, 80.0])
def test_the_frame_is_right_handed_and_unit(azimuth: float, elevation: float) -> None:
    view = View(azimuth, elevation)
    assert cross(view.right, view.up) == pytest.approx(view.to_viewer)
    for axis in (view.right, view.up, view.to_viewer):
        assert length(axis) == pytest.approx(1.0)
    assert view.right[2] == 0.0


def test_below_is_told_from_above() -> None:
    assert View(0.0, -25.0).from_below
    assert not View(0.0, 28.0).from_below


def test_an_isometric_view_shortens_all_axes_alike() -> None:
    """ISO 5456-3, isometric axonometry (from memory): all axes by the root of 2/3, their lines
    60 degrees apart, when the eye stands 45 degrees round and arcsin(1/root 3) up."""
    view = View(45.0, degrees(asin(1 / sqrt(3))))
    flat = [view.spot(axis) for axis in AXES]
    for x, y in flat:
        assert sqrt(x * x + y * y) == pytest.approx(sqrt(2 / 3))
    (ax, ay), (bx, by), (cx, cy) = flat
    assert abs(ax * bx + ay * by) == pytest.approx(1 / 3)
    assert abs(bx * cx + by * cy) == pytest.approx(1 / 3)


def test_what_lies_along_the_line_of_sight_falls_into_one_spot() -> None:
    view = View(atan(0.5), 33.0)
    near = (1.0, 2.0, 3.0)
    far = (
        near[0] - 9 * view.to_viewer[0],
        near[1] - 9 * view.to_viewer[1],
        near[2] - 9 * view.to_viewer[2],
    )
    assert view.spot(far) == pytest.approx(view.spot(near))
    assert view.depth(near) - view.depth(far) == pytest.approx(9.0)
    assert dot(view.right, view.to_viewer) == pytest.approx(0.0)
