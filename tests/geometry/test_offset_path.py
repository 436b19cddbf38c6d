"""Paths of the cutter's centre, against plane geometry."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.contour import Region
from kerfolio.geometry.offset_path import SLACK, Ring, cleared, inside, outside
from kerfolio.geometry.relief import dog_bone_centre, inside_corners
from kerfolio.geometry.shapes import circle, polygon, rectangle
from tests.geometry.shape_cases import relieved


def length(ring: Ring) -> float:
    return sum(math.dist(a, b) for a, b in pairwise((*ring, ring[0])))


def test_round_a_rectangle_the_path_is_longer_by_one_turn_of_the_cutter() -> None:
    (ring,) = outside(rectangle(0, 0, 200, 100), 3)
    # The length of a parallel curve outside a convex shape: L + 2 pi r (Steiner's formula).
    assert length(ring) == pytest.approx(600 + math.tau * 3, abs=0.2)


def test_inside_a_rectangle_it_is_a_smaller_rectangle() -> None:
    (ring,) = inside(rectangle(0, 0, 200, 100), 3)
    assert length(ring) == pytest.approx(600 - 8 * 3, abs=0.2)


def test_inside_a_circle_it_is_a_smaller_circle() -> None:
    (ring,) = inside(circle((10, 20), 30), 3)
    assert length(ring) == pytest.approx(math.pi * 24, abs=0.2)
    assert all(math.dist(each, (10, 20)) == pytest.approx(12, abs=0.05) for each in ring)


def test_a_cutter_too_wide_has_no_path() -> None:
    assert inside(circle((0, 0), 5), 3) == ()
    assert cleared(rectangle(0, 0, 50, 5), 3, 2) == ()


def test_a_cutter_that_just_fits_is_let_in() -> None:
    (ring,) = inside(circle((0, 0), 6), 3)
    assert length(ring) < math.tau * 2 * SLACK


def test_the_path_goes_into_corners_relieved_for_just_this_cutter() -> None:
    window = polygon([(0, 0, 0), (0, 40, 0), (60, 40, 0), (60, 0, 0)])
    plate = Region(rectangle(-50, -50, 150, 150), (window,))
    corners = list(inside_corners(plate))
    opening = relieved(plate, corners, 3.0, "dog-bone").openings[0]
    (ring,) = inside(opening, 3)
    for corner in corners:
        centre = dog_bone_centre(corner.at, corner.first, corner.second, 3.0)
        assert min(math.dist(each, centre) for each in ring) < 2 * SLACK


@settings(deadline=None)
@given(
    st.floats(8, 120), st.floats(8, 120), st.sampled_from([1.5, 3.0, 3.175]), st.floats(0.2, 1.0)
)
def test_clearing_leaves_nothing_but_the_corners(
    width: float, high: float, radius: float, share: float
) -> None:
    """With a step of up to the radius the cutter sweeps all that it can reach (plane geometry)."""
    rings = cleared(rectangle(0, 0, width, high), radius, share * radius)
    swept = shapely.union_all([shapely.buffer(shapely.LinearRing(each), radius) for each in rings])
    pocket = shapely.box(0, 0, width, high)
    corners = (4 - math.pi) * radius**2
    assert shapely.area(shapely.difference(pocket, swept)) <= corners + 0.05
    assert shapely.area(shapely.difference(swept, pocket)) <= (width + high) * 2 * SLACK * 1.1


def test_clearing_begins_in_the_middle() -> None:
    rings = cleared(rectangle(0, 0, 60, 40), 3, 2.4)
    lengths = [length(each) for each in rings]
    assert lengths == sorted(lengths)
    assert len(rings) == math.ceil((20 - 3) / 2.4)


def test_a_step_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="above 0"):
        cleared(rectangle(0, 0, 60, 40), 3, 0)


def test_paths_come_in_the_same_order_every_time() -> None:
    shape = polygon([(0, 0, 0), (50, 0, 0), (50, 9, 0), (100, 9, 0), (100, 40, 0), (0, 40, 0)])
    assert cleared(shape, 3, 2) == cleared(shape, 3, 2)
