"""Faults of contours, with the place where they are."""

from __future__ import annotations

import pytest
from hypothesis import given

from kerfolio.geometry import shapes
from kerfolio.geometry.checks import CROSSING, DOUBLED, OPEN, ZERO_AREA, Fault, faults
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.path_text import contours
from tests.geometry.shape_cases import tools


def kinds(d: str) -> list[str]:
    return [fault.kind for fault in faults(contours(d)[0])]


@given(tools())
def test_made_shapes_have_no_faults(tool: Contour) -> None:
    assert faults(tool) == ()


def test_a_bow_crosses_itself_in_the_middle() -> None:
    bow = Contour(((0, 0, 0.0), (10, 10, 0.0), (10, 0, 0.0), (0, 10, 0.0)))
    assert faults(bow) == (Fault(CROSSING, (5.0, 5.0)),)


def test_an_open_path_tells_its_gap() -> None:
    (fault,) = faults(Contour(((0, 0, 0.0), (10, 0, 0.0), (10, 5, 0.0), (0, 5, 0.0)), closed=False))
    assert (fault.kind, fault.at, fault.size) == (OPEN, (0, 5), 5)


@pytest.mark.parametrize(
    ("d", "found"),
    [
        ("M0 0 L10 0 Z", [ZERO_AREA]),
        ("M0 0 L10 0 L5 0 Z", [ZERO_AREA]),
        ("M0 0 L10 0 L10 10 L0 10 Z", []),
        ("M0 0 H10 V10 H5 V-5 H0 Z", [CROSSING]),
        # An arc that bulges across another side; its chord alone would not.
        ("M0 0 L10 0 L10 2 A5 2.5 0 0 1 0 2 Z", []),
        ("M0 0 L10 0 L10 2 A5 5 0 0 0 0 2 Z", [CROSSING]),
        # Two squares that meet in one corner are one contour touching itself.
        ("M0 0 H10 V10 H20 V20 H10 V10 H0 Z", [CROSSING]),
    ],
)
def test_crossings_lie_on_the_true_arcs(d: str, found: list[str]) -> None:
    assert kinds(d) == found


def test_a_smooth_outline_of_arcs_does_not_cross_itself() -> None:
    outline = shapes.polygon([(0, 0, 900), (2000, 0, 700), (2000, 1900, 500), (0, 1900, 400)])
    assert faults(outline) == ()


def test_a_point_drawn_twice_is_told() -> None:
    twice = Contour(((0, 0, 0.0), (10, 0, 0.0), (10, 0, 0.0), (5, 8, 0.0)))
    assert faults(twice) == (Fault(DOUBLED, (10, 0)),)


def test_nothing_at_all_has_no_area() -> None:
    assert faults(Contour(())) == (Fault(ZERO_AREA, (0.0, 0.0)),)
    assert [f.kind for f in faults(Contour(((3, 3, 0.0),)))] == [ZERO_AREA]
