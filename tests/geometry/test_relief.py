"""Inside corners: the handbook figures for square ones, and the cutter itself for all others."""

from __future__ import annotations

import math

import pytest
import shapely

from kerfolio.geometry import shapes
from kerfolio.geometry.arc import edges
from kerfolio.geometry.boolean import difference
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import area
from kerfolio.geometry.relief import (
    DOG_BONE,
    SIDEWAYS,
    InsideCorner,
    dog_bone_centre,
    inside_corners,
    opened,
    plain_centre,
    relief_centre,
    relief_contour,
    sideways_centre,
    smallest_inside_radius,
)
from kerfolio.geometry.shape_error import ShapeError
from tests.geometry.shape_cases import relieved, solid

R = 3.175
PLATE = region(shapes.rectangle(-50, -50, 150, 150))
SQUARE = difference(PLATE, [shapes.rectangle(0, 0, 100, 100)])
CORNER = InsideCorner((0.0, 0.0), (1.0, 0.0), (0.0, 1.0))


def one_corner() -> InsideCorner:
    return next(c for c in inside_corners(SQUARE) if c.at == (0, 0))


def opening_of(part: Region) -> Contour:
    return part.openings[0]


def test_the_corner_found_looks_into_the_void() -> None:
    found = inside_corners(SQUARE)
    assert len(found) == 4
    assert {one_corner().first, one_corner().second} == {(1.0, 0.0), (0.0, 1.0)}


def test_a_plain_cutter_leaves_041_r_on_the_diagonal() -> None:
    """r (sqrt 2 - 1): the cutter's centre stops at r, r."""
    x, y = plain_centre(CORNER, R)
    assert (x, y) == pytest.approx((R, R))
    assert math.hypot(x, y) - R == pytest.approx(0.41421356 * R)


def test_a_dog_bone_has_the_handbook_figures() -> None:
    """Centre 0.70710678 r along each wall, overcut 0.29289322 r, opening 1.41421356 r, extra area
    0.57079633 r2, for a cutter of radius r (derived for the product's cutter tables, and confirmed
    by sampling the swept area)."""
    assert dog_bone_centre((0, 0), (1, 0), (0, 1), R) == pytest.approx((0.70710678 * R,) * 2)
    part = relieved(SQUARE, [one_corner()], R, DOG_BONE)
    reach = solid(opening_of(part)).bounds
    assert -reach[0] == pytest.approx(0.29289322 * R, abs=1e-3)
    assert -reach[1] == pytest.approx(0.29289322 * R, abs=1e-3)
    ends = sorted(v[:2] for v in opening_of(part).vertices if v[0] < 50 and v[1] < 50)
    assert ends == [pytest.approx((0, 1.41421356 * R)), pytest.approx((1.41421356 * R, 0))]
    assert area(SQUARE) - area(part) == pytest.approx(0.57079633 * R**2, rel=1e-7)


def test_a_sideways_relief_has_the_handbook_figures() -> None:
    """Centre on the relieved wall, r from the other; overcut r there and 0 in the other wall,
    opening 2 r, extra area 1.57079633 r2."""
    assert sideways_centre((0, 0), (1, 0), (0, 1), R) == pytest.approx((R, 0))
    corner = one_corner()
    name = "first" if corner.first == (1.0, 0.0) else "second"
    part = relieved(
        SQUARE, [InsideCorner(corner.at, corner.first, corner.second, name)], R, SIDEWAYS
    )
    reach = solid(opening_of(part)).bounds
    assert -reach[1] == pytest.approx(R, abs=1e-3)
    assert reach[0] == pytest.approx(0, abs=1e-3)
    ends = [v[:2] for v in opening_of(part).vertices if v[0] < 50 and v[1] < 50]
    assert (0.0, 0.0) in ends
    assert any(end == pytest.approx((2 * R, 0)) for end in ends)
    assert area(SQUARE) - area(part) == pytest.approx(1.57079633 * R**2, rel=1e-7)


def test_the_other_wall_is_eaten_when_asked() -> None:
    other = InsideCorner(CORNER.at, CORNER.first, CORNER.second, "second")
    assert relief_centre(other, R, SIDEWAYS) == pytest.approx((0, R))


def test_a_dog_bone_is_one_arc_of_the_cutters_radius() -> None:
    part = relieved(SQUARE, inside_corners(SQUARE), R, DOG_BONE)
    arcs = [edge.arc for edge in edges(opening_of(part)) if edge.arc]
    assert [round(arc.radius, 9) for arc in arcs] == [R] * 4
    assert [abs(arc.sweep) for arc in arcs] == pytest.approx([math.pi] * 4)
    assert inside_corners(part) == ()
    assert smallest_inside_radius(part) == pytest.approx(R)


def test_the_smallest_inside_radius_is_that_of_the_tightest_arc() -> None:
    plate = difference(
        PLATE, [shapes.rectangle(0, 0, 50, 50, round=7), shapes.circle((90, 90), 30)]
    )
    assert smallest_inside_radius(plate) == pytest.approx(7)
    assert smallest_inside_radius(SQUARE) == 0
    assert smallest_inside_radius(PLATE) is None
    # A bay in short straight edges turns by 15 degrees at a time, with arms that flare out.
    angles = [math.radians(each) for each in range(15, 166, 15)]
    bay = [(50 + 30 * math.cos(a), -30 * math.sin(a), 0.0) for a in angles]
    ends = [(0.0, -60.0, 0.0), (100.0, -60.0, 0.0), (100.0, 0.0, 0.0)]
    shallow = region(shapes.polygon([*ends, *bay, (0.0, 0.0, 0.0)]))
    assert len(inside_corners(shallow)) > 5
    assert smallest_inside_radius(shallow) is None
    step = [(80.0, 0.0, 0.0), (80.0, -9.0, 0.0), (0.0, -9.0, 0.0)]
    deep = region(shapes.polygon([*ends, *step]))
    assert smallest_inside_radius(deep) == 0


def test_a_notch_in_the_edge_has_two_inside_corners() -> None:
    notched = difference(PLATE, [shapes.rectangle(20, 100, 38, 151)])
    assert {corner.at for corner in inside_corners(notched)} == {(20.0, 100.0), (38.0, 100.0)}
    part = relieved(notched, inside_corners(notched), R, DOG_BONE)
    assert area(notched) - area(part) == pytest.approx(2 * 0.57079633 * R**2)


def wedge(degrees: float) -> tuple[Region, InsideCorner]:
    """Return a plate with an opening whose corner at 0,0 has the given angle."""
    half = math.radians(degrees / 2)
    ends = [(40 * math.cos(half * s), 40 * math.sin(half * s)) for s in (-1, 1)]
    corners = [(0, 0, 0), (*ends[0], 0), (80, -40, 0), (80, 40, 0), (*ends[1], 0)]
    part = difference(PLATE, [shapes.polygon(corners)])
    return part, next(c for c in inside_corners(part) if math.dist(c.at, (0, 0)) < 1e-6)


@pytest.mark.parametrize("style", [DOG_BONE, SIDEWAYS])
@pytest.mark.parametrize("degrees", [40, 55, 60, 75, 89, 90, 91, 110, 135, 160])
def test_the_cutter_clears_the_mating_corner_completely(degrees: float, style: str) -> None:
    """A disc of the cutter's radius swept wherever it fits in the void (its morphological opening)
    covers the sharp corner that must go in, as far as the corner's own reach."""
    part, corner = wedge(degrees)
    for relieve in ("first", "second"):
        one = InsideCorner(corner.at, corner.first, corner.second, relieve)
        void = solid(opening_of(relieved(part, [one], R, style)))
        swept = void.buffer(-R + 2e-3, quad_segs=200).buffer(R - 1e-3, quad_segs=200)
        mating = solid(opening_of(part)).intersection(shapely.Point(0, 0).buffer(2.5 * R))
        assert mating.difference(swept).area < 2e-3 * mating.length
        reach = swept.buffer(-R + 2e-3)
        assert reach.geom_type == "Polygon", "the cutter cannot get to the relief"


@pytest.mark.parametrize("degrees", [40, 60, 90, 120, 160])
def test_relief_passes_through_the_very_corner_and_no_further(degrees: float) -> None:
    _, corner = wedge(degrees)
    centre = relief_centre(corner, R, DOG_BONE)
    assert math.dist(centre, corner.at) == pytest.approx(R)
    assert centre == pytest.approx((R, 0))
    for name in ("first", "second"):
        one = InsideCorner(corner.at, corner.first, corner.second, name)
        kept = corner.second if name == "first" else corner.first
        at = relief_centre(one, R, SIDEWAYS)
        assert math.dist(at, corner.at) == pytest.approx(R)
        assert _off_line(at, kept) == pytest.approx(R)


def _off_line(point: Point, along: Point) -> float:
    return abs(point[0] * along[1] - point[1] * along[0])


def test_a_sideways_relief_never_touches_the_kept_wall() -> None:
    for degrees in (50, 90, 130):
        part, corner = wedge(degrees)
        one = InsideCorner(corner.at, corner.first, corner.second, "first")
        cut = area(part) - area(relieved(part, [one], R, SIDEWAYS))
        assert cut > 0
        void = solid(opening_of(relieved(part, [one], R, SIDEWAYS)))
        ux, uy = corner.second
        beyond = 1.0 if corner.first[0] * uy - corner.first[1] * ux < 0 else -1.0
        for share in (0.2, 1.0, 3.0):
            spot = (
                corner.at[0] + share * R * ux - beyond * -0.01 * uy,
                corner.at[1] + share * R * uy + beyond * -0.01 * ux,
            )
            assert not void.contains(shapely.Point(spot))


def test_a_straight_wall_has_no_corner() -> None:
    with pytest.raises(ShapeError, match="straight wall"):
        dog_bone_centre((0, 0), (1, 0), (-1, 0), R)
    with pytest.raises(ShapeError, match="straight wall"):
        sideways_centre((0, 0), (1, 0), (-1, 0), R)
    with pytest.raises(ValueError, match="unknown relief"):
        relief_centre(CORNER, R, "round")


def test_relief_that_cuts_the_part_apart_is_refused() -> None:
    bridge = difference(region(shapes.rectangle(0, 0, 60, 20)), [shapes.rectangle(20, 0.5, 40, 30)])
    with pytest.raises(ShapeError, match="pieces"):
        relieved(bridge, inside_corners(bridge), R, DOG_BONE)


@pytest.mark.parametrize("style", [DOG_BONE, SIDEWAYS])
@pytest.mark.parametrize("degrees", [25, 40, 60, 89, 90, 110, 160])
def test_what_a_relief_opens_of_each_wall_is_what_it_cuts(degrees: float, style: str) -> None:
    """Against the walls themselves, as a geometry library finds them gone from the cut plate."""
    _, corner = wedge(degrees)
    for relieve in ("first", "second"):
        one = InsideCorner(corner.at, corner.first, corner.second, relieve)
        gone = solid(relief_contour(one, R, style)).buffer(5e-4)
        for (x, y), length in zip((one.first, one.second), opened(one, R, style), strict=True):
            wall = shapely.LineString([one.at, (one.at[0] + 30 * x, one.at[1] + 30 * y)])
            # Where the disc only touches a wall, the library's polygon may cut a hair of it.
            assert wall.intersection(gone).length == pytest.approx(length, abs=0.11)
