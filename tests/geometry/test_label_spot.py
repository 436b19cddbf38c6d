"""Room for a label inside a shape, checked with plain geometry."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.shapes import circle, polygon, rectangle


def frame(spot: tuple[float, float], height: float, aspect: float) -> Contour:
    """Return the label's box."""
    x, y, half = *spot, height / 2
    return rectangle(x - half * aspect, y - half, x + half * aspect, y + half)


def test_a_plain_shape_is_labelled_in_its_middle() -> None:
    spot, height = label_spot(region(rectangle(0, 0, 100, 40)), 1.0)
    assert spot == pytest.approx((50, 20), abs=0.5)
    # the square in a circle of radius 20 has a side of 28.3; the label takes 88 % of it
    assert height == pytest.approx(0.88 * 28.28, rel=0.05)


def test_a_hole_in_the_middle_is_avoided() -> None:
    holed = region(circle((0, 0), 100), [circle((0, 0), 30)])
    spot, height = label_spot(holed, 2.0)
    assert contains(holed, frame(spot, height, 2.0))
    assert height > 8


def test_of_two_good_spots_the_nearer_one_is_taken() -> None:
    dumb_bell = region(
        polygon(
            [(x, y, 0) for x, y in ((0, 0), (40, 0), (40, 15), (160, 15), (160, 0), (200, 0))]
            + [(200, 40, 0), (160, 40, 0), (160, 25, 0), (40, 25, 0), (40, 40, 0), (0, 40, 0)]
        )
    )
    left, _ = label_spot(dumb_bell, 1.0, towards=(0.0, 20.0))
    right, _ = label_spot(dumb_bell, 1.0, towards=(200.0, 20.0))
    assert left[0] < 40
    assert right[0] > 160
    middle, height = label_spot(dumb_bell, 1.0, enough=4.0)
    assert middle[0] == pytest.approx(100, abs=1), "small enough for the narrow waist"
    assert height >= 0.95 * 4.0


def test_engraved_lines_keep_their_place() -> None:
    line = Contour(((40.0, 18.0, 0.0), (60.0, 18.0, 0.0), (60.0, 22.0, 0.0)), closed=False)
    shape = region(rectangle(0, 0, 100, 40))
    spot, height = label_spot(shape, 1.5, [line])
    assert not intersects(line, frame(spot, height, 1.5))


def test_straight_strokes_of_letters_are_kept_clear_of() -> None:
    """A line has no area: it is none the less something to keep off."""
    shape = region(rectangle(0, 0, 100, 20))
    strokes = [Contour(((x, 2.0, 0.0), (x, 18.0, 0.0)), closed=False) for x in (30.0, 50.0, 70.0)]
    spot, height = label_spot(shape, 2.0, strokes)
    assert height > 0
    assert not any(intersects(each, frame(spot, height, 2.0)) for each in strokes)


def test_where_everything_is_taken_there_is_no_room() -> None:
    shape = region(rectangle(0, 0, 10, 10))
    assert label_spot(shape, 1.0, [rectangle(-1, -1, 11, 11)])[1] == 0.0


SIDE = st.floats(8, 400)


@settings(max_examples=60, deadline=None)
@given(wide=SIDE, high=SIDE, hole=st.floats(0.1, 0.9), aspect=st.floats(0.3, 12))
def test_the_label_always_fits(wide: float, high: float, hole: float, aspect: float) -> None:
    ring: Region = region(
        rectangle(0, 0, wide, high), [circle((wide / 2, high / 2), hole * min(wide, high))]
    )
    spot, height = label_spot(ring, aspect)
    assert height > 0
    assert contains(ring, frame(spot, height, aspect))
