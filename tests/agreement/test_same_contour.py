"""When two contours are one: arcs in parts, edges too short to see, circles begun elsewhere."""

from __future__ import annotations

from math import pi, tan

import pytest

from kerfolio.agreement.same_contour import same
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import circle

HALF = Contour(((0.0, 0.0, 0.0), (40.0, 0.0, 1.0), (40.0, 20.0, 0.0), (0.0, 20.0, 0.0)))
"""A strip with one round end of radius 10: its arc turns by a half."""

QUARTER = tan(pi / 8)


def with_vertex(at: int, x: float, y: float, bulge: float) -> Contour:
    vertices = list(HALF.vertices)
    vertices[at] = (x, y, bulge)
    return Contour(tuple(vertices))


def test_an_arc_in_two_parts_is_that_arc() -> None:
    found = (*HALF.vertices[:1], (40.0, 0.0, QUARTER), (50.0, 10.0, QUARTER), *HALF.vertices[2:])
    assert same(HALF, Contour(found))
    assert not same(HALF, Contour((*found[:2], (50.003, 10.0, QUARTER), *found[3:])))
    assert not same(HALF, Contour((*found[:2], (50.0, 10.0, 0.0), *found[3:])))


@pytest.mark.parametrize(
    ("found", "agrees"),
    [
        (with_vertex(0, 0.0019, -0.0019, 0.0), True),
        (with_vertex(0, 0.0021, 0.0, 0.0), False),
        (with_vertex(1, 40.0, 0.0, 1.0001), True),  # rises by 0.001 mm more over 20 mm
        (with_vertex(1, 40.0, 0.0, 1.0003), False),
        (with_vertex(1, 40.0, 0.0, -1.0), False),
        (with_vertex(1, 40.0, 0.0, float("inf")), False),
        (Contour(HALF.vertices, closed=False), False),
        (Contour(HALF.vertices[:3]), False),
        (Contour((*HALF.vertices, (0.0, 10.0, 0.0))), False),
        (Contour((*HALF.vertices, (0.0, 19.999, 0.0))), True),
        (Contour(()), False),
    ],
)
def test_two_thousandths_are_the_most(found: Contour, agrees: bool) -> None:
    assert same(HALF, found) is agrees


def test_a_circle_may_begin_anywhere() -> None:
    upright = Contour(((30.0, 25.0, -1.0), (30.0, 15.0, -1.0)))
    assert same(upright, circle((30, 20), 10))
    assert not same(upright, circle((30, 20), 10.01))
    assert not same(upright, circle((30.01, 20), 10))
