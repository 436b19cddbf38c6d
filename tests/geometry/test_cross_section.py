"""Sections of a panel: what a line across it meets."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.contour import Region
from kerfolio.geometry.cross_section import Strip, cross_sections
from kerfolio.geometry.measure import area
from kerfolio.geometry.shapes import circle, rectangle

PLATE = Region(rectangle(0, 0, 200, 100))


def test_across_a_plate_the_line_is_as_long_as_it_is_wide() -> None:
    assert cross_sections(PLATE, (), 18, "x", (50.0,)) == ((Strip(0, 100, 18),),)
    assert cross_sections(PLATE, (), 18, "y", (50.0,)) == ((Strip(0, 200, 18),),)


def test_openings_are_left_out() -> None:
    plate = Region(rectangle(0, 0, 200, 100), (rectangle(40, 30, 60, 70),))
    (beside, across) = cross_sections(plate, (), 18, "x", (20.0, 50.0))
    assert beside == (Strip(0, 100, 18),)
    assert across == (Strip(0, 30, 18), Strip(70, 100, 18))


def test_recesses_are_thinner_and_the_deeper_one_counts() -> None:
    recesses = ((rectangle(0, 20, 200, 60), 6.0), (rectangle(0, 40, 200, 80), 8.0))
    ((*strips,),) = cross_sections(PLATE, recesses, 18, "x", (100.0,))
    assert [(each.low, each.high, each.thickness) for each in strips] == [
        (0, 20, 18),
        (20, 40, 12),
        (40, 60, 10),
        (60, 80, 10),
        (80, 100, 18),
    ]


def test_a_line_beside_the_panel_meets_nothing() -> None:
    assert cross_sections(PLATE, (), 18, "x", (-5.0, 205.0)) == ((), ())


@settings(deadline=None)
@given(st.floats(10, 90))
def test_sections_add_up_to_the_area(diameter: float) -> None:
    plate = Region(rectangle(0, 0, 200, 100), (circle((100, 50), diameter),))
    step = 0.5
    stations = [step * (index + 0.5) for index in range(400)]
    sections = cross_sections(plate, (), 18, "x", tuple(stations))
    total = sum(each.width for strips in sections for each in strips) * step
    assert total == pytest.approx(area(plate), rel=2e-3)
