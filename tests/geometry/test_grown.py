"""Contours with moved edges, against shapely's own offset with mitred corners."""

from __future__ import annotations

from math import hypot

import pytest
import shapely

from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.grown import grown, grown_region, moved_corner
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.relief import inside_corners
from kerfolio.geometry.shapes import circle, polygon, rectangle

LENS = Contour(((0.0, 0.0, 0.4), (60.0, 0.0, 0.3)))  # two arcs that meet in corners
SHAPES = {
    "sharp": polygon([(0, 0, 0), (80, 0, 0), (50, 40, 0), (10, 60, 0)]),
    "rounded": polygon([(0, 0, 5), (80, 0, 12), (80, 40, 0), (40, 20, 6), (0, 40, 3)]),
    "circle": circle((7, 3), 12),
    "lens": LENS,
}


def solid(contour: Contour) -> shapely.Polygon:
    return shapely.Polygon(points(contour, 1e-5))


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("by", [0.15, -0.15])
@pytest.mark.parametrize("clockwise", [False, True])
def test_edges_lie_where_shapely_puts_them(name: str, by: float, clockwise: bool) -> None:
    contour = SHAPES[name]
    if clockwise:
        spots = contour.vertices[::-1]
        bends = [-b for *_, b in (*contour.vertices[-2::-1], contour.vertices[-1])]
        contour = Contour(tuple((x, y, b) for (x, y, _), b in zip(spots, bends, strict=True)))
    meant = shapely.buffer(solid(contour), by, join_style="mitre", mitre_limit=20, quad_segs=200)
    assert shapely.hausdorff_distance(solid(grown(contour, by)).exterior, meant.exterior) < 2e-3


def test_all_numbers_are_linear_in_the_distance() -> None:
    for contour in SHAPES.values():
        one, two = (grown(contour, by).vertices for by in (0.1, 0.2))
        for here, near, far in zip(contour.vertices, one, two, strict=True):
            ends = zip(here, near, far, strict=True)
            assert all(b - a == pytest.approx(c - b, abs=1e-12) for a, b, c in ends)


def test_openings_shrink_where_the_area_grows_and_corners_move_into_the_void() -> None:
    whole = region(rectangle(0, 0, 60, 40), [rectangle(20, 10, 30, 20)])
    made = grown_region(whole, 0.1)
    outer, inner = bounds(made.outer), bounds(made.openings[0])
    assert (outer.width, outer.height) == pytest.approx((60.2, 40.2))
    assert (inner.width, inner.height) == pytest.approx((9.8, 9.8))
    for corner in inside_corners(whole):
        x, y = moved_corner(corner, 0.1).at
        assert hypot(x - 25, y - 15) == pytest.approx(4.9 * 2**0.5)
