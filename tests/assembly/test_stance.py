from __future__ import annotations

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.stance import footing, stands
from tests.assembly.hand_made import Ring, across, bench, box, crate, lengthwise, level, stool

SPOTS = st.tuples(st.integers(-300, 300), st.integers(-300, 300))


def steady(*pieces: PosedPiece) -> bool:
    return stands([footing(each) for each in pieces])


def test_what_lies_or_stands_square_is_steady() -> None:
    assert steady(level("a", 0, box(0, 0, 50, 50)))
    assert steady(across("a", 0, box(0, 0, 300, 400)))
    assert all(steady(*make().pieces) for make in (stool, crate, bench))


def test_what_leans_out_tips() -> None:
    post, arm = across("post", 0, box(0, 0, 100, 300)), level("arm", 300, box(0, 0, 400, 100))
    assert steady(post)
    assert not steady(post, arm)


def test_what_stands_on_a_corner_beside_its_middle_tips() -> None:
    assert not steady(across("a", 0, ((0, 0), (60, 90), (-20, 100))))
    assert not steady(across("a", 0, ((0, 0), (5, 0), (105, 100), (100, 100))))


@pytest.mark.parametrize("openings", [(), (box(10, 10, 60, 40),)])
def test_the_middle_is_the_centroid_of_the_reference_library(openings: tuple[Ring, ...]) -> None:
    outer: Ring = ((0, 0), (200, 0), (200, 50), (70, 50), (70, 160), (0, 160))
    middle = shapely.Polygon(outer, openings).centroid
    found = footing(level("a", 5.0, outer, *openings)).middle
    assert found == pytest.approx((middle.x, middle.y, 14.0))


@given(st.lists(SPOTS, min_size=1, max_size=6, unique=True), SPOTS)
def test_legs_against_the_hull_of_the_reference_library(
    legs: list[tuple[int, int]], plate: tuple[int, int]
) -> None:
    # A plate 2 m square over legs of 20 by 18 mm.
    pieces = [_leg(x, y) for x, y in legs]
    x, y = plate
    top = level("top", 400, box(x - 1000, y - 1000, x + 1000, y + 1000))
    hull = shapely.MultiPoint([c for a, b in legs for c in box(a, b, a + 20, b + 18)]).convex_hull
    masses = [each.mass for each in (*pieces, top)]
    spots = [*((a + 10, b + 9) for a, b in legs), (x, y)]
    at = [sum(m * s[i] for m, s in zip(masses, spots, strict=True)) / sum(masses) for i in (0, 1)]
    if shapely.distance(hull.boundary, shapely.Point(at)) > 1e-3:
        assert steady(*pieces, top) == hull.contains(shapely.Point(at))


def _leg(x: float, y: float) -> PosedPiece:
    return lengthwise("leg", y, box(x, 0, x + 20, 400))
