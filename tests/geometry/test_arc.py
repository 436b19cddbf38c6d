"""Bulges and arcs. DXF reference, LWPOLYLINE: the bulge is the tangent of one fourth the included
angle, negative for a clockwise arc; 0 is a straight segment, 1 a semicircle."""

from __future__ import annotations

import math

import ezdxf.math
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.geometry.arc import arc_of, bulge_of, edges, reversed_contour
from kerfolio.geometry.contour import Contour


@pytest.mark.parametrize(
    ("degrees", "bulge"),
    [(180, 1.0), (90, 0.41421356237), (-90, -0.41421356237), (360 / 3, 0.57735026919), (0, 0)],
)
def test_a_bulge_is_the_tangent_of_a_quarter_of_the_angle(degrees: float, bulge: float) -> None:
    assert bulge_of(math.radians(degrees)) == pytest.approx(bulge, abs=1e-11)


def test_a_bulge_of_one_is_a_semicircle_to_the_right_of_its_chord() -> None:
    arc = arc_of((0, 0), (10, 0), 1.0)
    assert arc.centre == pytest.approx((5, 0))
    assert arc.radius == pytest.approx(5)
    assert arc.point(arc.start + arc.sweep / 2) == pytest.approx((5, -5))


@given(
    st.tuples(st.floats(-100, 100), st.floats(-100, 100)),
    st.tuples(st.floats(101, 300), st.floats(-100, 100)),
    st.floats(0.01, 3) | st.floats(-3, -0.01),
)
def test_arcs_agree_with_the_dxf_library(
    start: tuple[float, float], end: tuple[float, float], bulge: float
) -> None:
    arc = arc_of(start, end, bulge)
    centre, _, _, radius = ezdxf.math.bulge_to_arc(start, end, bulge)
    assert arc.radius == pytest.approx(radius, rel=1e-9)
    assert arc.centre == pytest.approx((centre.x, centre.y), rel=1e-7, abs=1e-6)
    assert arc.point(arc.start) == pytest.approx(start, abs=1e-6)
    assert arc.point(arc.start + arc.sweep) == pytest.approx(end, abs=1e-6)


def test_a_reversed_contour_visits_the_same_arcs_backwards() -> None:
    contour = Contour(((0, 0, 0.0), (10, 0, 1.0), (10, 10, 0.0), (0, 10, -0.3)))
    back = list(edges(reversed_contour(contour)))
    forth = [(edge.end, edge.start, -edge.bulge or 0.0) for edge in edges(contour)]
    assert {(e.start, e.end, e.bulge) for e in back} == set(forth)
    assert reversed_contour(reversed_contour(contour)) == contour


def test_an_open_path_reversed_begins_at_its_end() -> None:
    path = Contour(((0, 0, 0.5), (10, 0, 0.0), (20, 5, 0.0)), closed=False)
    assert reversed_contour(path).vertices == ((20, 5, 0.0), (10, 0, -0.5), (0, 0, 0.0))


@pytest.mark.parametrize(("degrees", "parts"), [(10, 1), (90, 1), (110, 2), (180, 2), (270, 3)])
def test_a_hair_makes_no_further_part_of_an_arc(degrees: float, parts: int) -> None:
    for more in (-0.02, -1e-9, 0, 1e-9, 0.02):  # as a true cut of 0.3 mm moves a relief's arc
        bulge = bulge_of(math.radians(degrees)) + more
        assert arc_of((500, 100), (501.2, 100), bulge).quarters == parts
