"""Joining and cutting against the plane library, and arcs that are still arcs afterwards."""

from __future__ import annotations

import math
import random
from contextlib import suppress

import pytest
import shapely
from hypothesis import example, given, settings
from hypothesis import strategies as st

from kerfolio.geometry import shapes
from kerfolio.geometry.arc import edges
from kerfolio.geometry.boolean import difference, intersection, union
from kerfolio.geometry.canonical import region, tidy
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, length
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.shapes import circle, rectangle, rounded_slot
from tests.geometry.shape_cases import OUTERS, difference_area, solid, tools

PLATE = region(shapes.rectangle(0, 0, 360, 450, round=20))


def radii(shape: Region | Contour) -> set[float]:
    rings = (shape.outer, *shape.openings) if isinstance(shape, Region) else (shape,)
    arcs = [edge.arc for ring in rings for edge in edges(ring)]
    return {round(arc.radius, 4) for arc in arcs if arc}


def test_a_hole_stays_a_circle_and_a_rounding_a_quarter() -> None:
    drilled = difference(PLATE, [shapes.circle((30, 30), 8)])
    assert drilled.openings == (Contour(((26.0, 30.0, -1.0), (34.0, 30.0, -1.0))),)
    assert drilled.outer == PLATE.outer
    assert area(drilled) == pytest.approx(area(PLATE) - math.pi * 16)


def test_a_bite_out_of_the_edge_is_one_arc() -> None:
    bitten = difference(PLATE, [shapes.circle((180, 450), 60)])
    assert bitten.openings == ()
    assert (210.0, 450.0, -1.0) in bitten.outer.vertices
    assert area(bitten) == pytest.approx(area(PLATE) - math.pi * 900 / 2)


def test_a_cut_through_a_rounding_ends_on_its_circle() -> None:
    """A notch of 10 mm beside the corner leaves two pieces of the quarter of radius 20."""
    notched = difference(PLATE, [shapes.rectangle(5, -1, 15, 30)])
    ends = [v for v in notched.outer.vertices if 0 < v[0] < 19 and v[1] < 20 and v[1] != 30]
    assert len(ends) == 2
    for x, y, _ in ends:
        assert math.dist((x, y), (20, 20)) == pytest.approx(20, abs=1e-8)
    assert radii(notched) == {20.0}


def test_a_tab_joined_flush_leaves_no_seam() -> None:
    plate = region(shapes.rectangle(0, 0, 100, 50))
    tabbed = union(plate, [shapes.rectangle(20, 50, 40, 60), shapes.rectangle(60, 50, 80, 60)])
    assert len(tabbed.outer.vertices) == 12
    assert area(tabbed) == pytest.approx(5400)


def test_overlapping_halves_of_one_circle_become_that_circle() -> None:
    left = Contour(((0, 5, 1.0), (0, -5, 0.0)))
    right = Contour(((0, -5, 1.0), (0, 5, 0.0)))
    whole = union(region(left), [right])
    assert whole.outer == shapes.circle((0, 0), 10)


def test_the_same_circle_from_two_places_is_one_edge() -> None:
    ring = difference(region(shapes.circle((50, 50), 40)), [shapes.rectangle(50, 0, 100, 50)])
    both = union(ring, [shapes.circle((50, 50), 40)])
    assert both.outer == shapes.circle((50, 50), 40)


def test_what_two_discs_share_is_a_lens_of_two_arcs() -> None:
    (lens,) = intersection(region(shapes.circle((0, 0), 10)), [shapes.circle((6, 0), 10)])
    assert len(lens.outer.vertices) == 2
    assert area(lens) == pytest.approx(2 * 25 * math.acos(0.6) - 6 / 2 * math.sqrt(100 - 36))


def test_cutting_everything_away_is_refused() -> None:
    with pytest.raises(ShapeError, match="nothing is left") as caught:
        difference(PLATE, [shapes.rectangle(-1, -1, 400, 500)])
    assert caught.value.pieces == 0


def test_cutting_a_shape_apart_is_refused_with_the_number_of_pieces() -> None:
    with pytest.raises(ShapeError, match="falls into 3 pieces") as caught:
        difference(PLATE, [shapes.rectangle(-1, y, 400, y + 5) for y in (100, 200)])
    assert caught.value.pieces == 3


def test_adding_a_shape_that_does_not_touch_is_refused() -> None:
    with pytest.raises(ShapeError, match="falls into 2 pieces"):
        union(PLATE, [shapes.circle((500, 0), 10)])


def test_a_shape_that_crosses_itself_is_refused() -> None:
    bow = Contour(((0, 0, 0.0), (10, 10, 0.0), (10, 0, 0.0), (0, 12, 0.0)))
    with pytest.raises(ShapeError, match="crosses itself"):
        difference(PLATE, [bow])
    with pytest.raises(ShapeError, match="open contour"):
        difference(PLATE, [Contour(((0, 0, 0.0), (10, 10, 0.0)), closed=False)])


def test_neither_the_order_of_cuts_nor_where_a_contour_begins_matters() -> None:
    cuts = [shapes.circle((100, 100), 40), shapes.rectangle(90, 90, 200, 110)]
    shifted = Contour(PLATE.outer.vertices[3:] + PLATE.outer.vertices[:3])
    assert difference(PLATE, cuts) == difference(region(shifted), cuts[::-1])


def test_a_canonical_contour_has_no_idle_vertices() -> None:
    messy = Contour(
        (
            *((10, 10, 0.0), (10, 10, 0.0), (5, 10, 0.0), (0, 10, 0.0), (0, 0, 0.0)),
            *((3, 0, 0.0), (10, 0, 0.0), (10, 4, 0.0)),
        )
    )
    assert tidy(messy) == shapes.rectangle(0, 0, 10, 10)
    assert tidy(messy, clockwise=True).vertices == (
        *((0.0, 0.0, 0.0), (0.0, 10.0, 0.0), (10.0, 10.0, 0.0), (10.0, 0.0, 0.0)),
    )


def test_pieces_of_one_circle_are_joined() -> None:
    quarter = math.tan(math.pi / 8)
    around = [(10, 0, quarter), (0, 10, quarter), (-10, 0, quarter), (0, -10, quarter)]
    assert tidy(Contour(tuple(around))) == shapes.circle((0, 0), 20)
    assert tidy(Contour((*around[:2], (-10, 0, 0.0)))).vertices == (
        *((-10.0, 0.0, 0.0), (10.0, 0.0, 1.0)),
    )
    three = tidy(Contour((*around[:3], (0, -10, 0.0))))
    assert len(three.vertices) == 2
    assert area(three) == pytest.approx(math.pi * 75 + 50)


def test_a_curve_of_very_many_points_is_not_worn_away() -> None:
    count = 60_000
    ring = Contour(
        tuple(
            (50 * math.cos(math.tau * k / count), 50 * math.sin(math.tau * k / count), 0.0)
            for k in range(count)
        )
    )
    thin = tidy(ring)
    assert len(thin.vertices) < count
    assert area(thin) == pytest.approx(area(ring), abs=2e-6 * math.tau * 50)


@settings(max_examples=150, deadline=None)
@example(shapes.rectangle(0, 0, 100, 100), [shapes.rectangle(0, 100, 5, 105)], "intersection")
@given(
    OUTERS,
    st.lists(tools(), min_size=1, max_size=4),
    st.sampled_from(("union", "difference", "intersection")),
)
def test_operations_agree_with_the_plane_library(
    outer: Contour, cuts: list[Contour], name: str
) -> None:
    reference = _reference(name, outer, cuts)
    pieces = _pieces(name, outer, cuts)
    if pieces is None:
        sound = [each for each in shapely.get_parts(reference) if each.area > 0.01 * each.length]
        assert len(sound) != 1
        return
    # Shapes that only touch share a line or a point, which is no area of ours.
    reference = shapely.union_all(
        [each for each in shapely.get_parts(reference) if shapely.get_dimensions(each) == 2]
    )
    slack = 0.002 * (1 + float(reference.length))
    found = shapely.union_all([solid(each) for each in pieces])
    assert difference_area(reference, found) <= slack
    assert sum(area(each) for each in pieces) == pytest.approx(float(reference.area), abs=slack)
    assert sum(length(each) for each in pieces) == pytest.approx(reference.length, rel=2e-3, abs=1)
    known = set().union(*(radii(each) for each in (outer, *cuts)))
    for piece in pieces:
        assert all(any(abs(r - each) < 2e-4 for each in known) for r in radii(piece))
        assert region(piece.outer, piece.openings) == piece


def _pieces(name: str, outer: Contour, cuts: list[Contour]) -> tuple[Region, ...] | None:
    """Return the result of an operation; None for one that should be one piece and is not."""
    base = region(outer)
    if name == "intersection":
        return intersection(base, cuts)
    if name == "union":
        with suppress(ShapeError):
            return (union(base, cuts),)
        return None
    with suppress(ShapeError):
        return (difference(base, cuts),)
    return None


def _reference(name: str, outer: Contour, cuts: list[Contour]) -> shapely.Geometry:
    one, other = solid(outer), [solid(each) for each in cuts]
    try:
        return getattr(shapely, name)(one, shapely.union_all(other))
    except shapely.GEOSException:
        joined = shapely.union_all(other, grid_size=1e-7)
        return getattr(shapely, name)(one, joined, grid_size=1e-7)


def scattered(seed: int) -> list[Contour]:
    """Return 30 openings of four kinds about a board of 200 x 120 mm, some over one another."""
    chance = random.Random(seed)
    made = []
    for index in range(30):
        x, y, size = chance.uniform(8, 182), chance.uniform(8, 112), chance.uniform(2, 10)
        kinds = (
            circle((x, y), size),
            rectangle(x, y, x + size, y + size / 2),
            rounded_slot((x, y), size + 8, size),
            Contour(((x, y, 0.0), (x + size, y, 0.0), (x, y + size, 0.0))),
        )
        made.append(kinds[index % 4])
    return made


@pytest.mark.parametrize("seed", range(12))
def test_many_openings_at_once_are_what_one_by_one_gives(seed: int) -> None:
    """Those that stand apart take a short way; areas by the plane library's polygons."""
    board, holes = Region(rectangle(0, 0, 200, 120, 10)), scattered(seed)
    flat = shapely.union_all([shapely.Polygon(points(each, 1e-3)) for each in holes])
    left = shapely.difference(shapely.Polygon(points(board.outer, 1e-3)), flat)
    made = difference(board, holes)
    assert area(made) == pytest.approx(left.area, abs=0.2)
    assert len(made.openings) == len(left.interiors)
    again = board
    for each in holes:
        again = difference(again, [each])
    assert area(again) == pytest.approx(area(made), abs=1e-3)
    assert made.openings == tuple(sorted(made.openings, key=lambda c: c.vertices))


def test_an_opening_that_is_not_concerned_stays_as_it_is() -> None:
    board = difference(Region(rectangle(0, 0, 100, 60)), [circle((20, 30), 9)])
    more = difference(board, [rounded_slot((70, 30), 30, 8)])
    assert set(board.openings) < set(more.openings)
    assert union(more, [rectangle(99, 10, 120, 30)]).openings == more.openings


def test_a_hole_beside_or_over_the_edge_takes_the_long_way() -> None:
    board = Region(rectangle(0, 0, 100, 60))
    assert difference(board, [circle((150, 30), 9)]) == board
    bitten = difference(board, [circle((100, 30), 20)])
    assert bitten.openings == ()
    assert area(bitten) == pytest.approx(6000 - math.pi * 50, abs=1e-6)
    inside = difference(difference(board, [circle((50, 30), 30)]), [circle((50, 30), 9)])
    assert len(inside.openings) == 1
