"""SVG path data. The examples named are those of the SVG specification, chapter on paths."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
import svgelements
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import off_line
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds, signed_area
from kerfolio.geometry.path_text import contours
from kerfolio.geometry.shape_error import ShapeError


def one(d: str) -> Contour:
    (contour,) = contours(d)
    return contour


def test_the_big_slice_of_the_pie_is_three_quarters_of_its_disc() -> None:
    """SVG 1.1 section 8.3.8, example arcs01: radius 150 about 300,200."""
    slice_ = one("M300,200 h-150 a150,150 0 1,0 150,-150 z")
    assert area(slice_) == pytest.approx(0.75 * math.pi * 150**2)
    arcs = [edge.arc for edge in edges(slice_) if edge.arc]
    assert {round(arc.radius, 6) for arc in arcs} == {150}
    assert all(arc.centre == pytest.approx((300, 200)) for arc in arcs)


def test_the_small_slice_of_the_pie_is_a_quarter() -> None:
    """SVG 1.1 section 8.3.8, example arcs01."""
    assert area(one("M275,175 v-150 a150,150 0 0,0 -150,150 z")) == pytest.approx(
        math.pi * 150**2 / 4
    )


def test_radii_too_small_are_scaled_up_until_the_arc_fits() -> None:
    """SVG 2 section 9.5.1: the arc of the line with blips in example arcs01 has radius 25, but its
    chord of 50, -25 is longer than its diameter: half the chord becomes the radius."""
    path = one("M600,350 l 50,-25 a25,25 -30 0,1 50,-25 l 50,-25")
    assert not path.closed
    (arc,) = [edge.arc for edge in edges(path) if edge.arc]
    assert arc.radius == pytest.approx(math.hypot(50, 25) / 2)
    assert path.vertices[-1][:2] == pytest.approx((750, 275))


@pytest.mark.parametrize(
    ("large", "sweep", "degrees"), [(0, 0, -90), (0, 1, 90), (1, 0, -270), (1, 1, 270)]
)
def test_the_flags_choose_among_four_arcs(large: int, sweep: int, degrees: float) -> None:
    """SVG 2 section 9.3.8, example arcs02: large arc or small, angles rising or falling."""
    path = one(f"M 0 0 a 100,100 0 {large},{sweep} 100,100")
    turned = sum(edge.arc.sweep for edge in edges(path) if edge.arc)
    assert math.degrees(turned) == pytest.approx(degrees)


def test_flags_may_stand_without_blanks() -> None:
    """SVG 2 section 9.3.9: a flag is a single 0 or 1."""
    assert one("M0 0a5 5 0 0110 0z") == one("M0 0 a 5 5 0 0 1 10 0 z")
    assert one("M.5.5-3-3 4 4Z") == one("M 0.5 0.5 L -3 -3 L 4 4 Z")


def test_an_arc_without_radius_is_a_line_and_one_without_length_nothing() -> None:
    """SVG 2 section 9.5.1."""
    assert one("M0 0 A 0 5 0 0 1 10 0 L 10 5 Z").vertices == one("M0 0 L10 0 L10 5Z").vertices
    assert one("M0 0 H10 A 5 5 0 0 1 10 0 L 10 5 Z").vertices == one("M0 0 H10 L10 5Z").vertices


def test_every_command_arrives_where_it_should() -> None:
    d = (
        "M10 10 h10 v10 l-5 5 c0 5 -5 5 -5 0 s-5 -5 -5 0 "
        "q -2 2 -4 0 t -2 -4 H 0 V 5 z m 50 0 h5 v5 z"
    )
    first, second = contours(d)
    assert first.closed
    assert second.vertices[0] == (60, 10, 0.0)
    assert area(second) == pytest.approx(12.5)


def test_a_path_back_at_its_start_is_closed_without_a_z() -> None:
    assert one("M0 0 L10 0 L10 10 L0.005 0").closed
    assert not one("M0 0 L10 0 L10 10 L0.05 0").closed


@pytest.mark.parametrize(
    ("d", "told"),
    [
        ("M 0 0 L 10 0 L 10", r"breaks off at `the end` \(character 18\): L takes 2 numbers"),
        ("M 0 0 L 10 0 X 3", r"breaks off at `X 3` \(character 14\): a command letter"),
        ("L 10 0", r"breaks off at `L 10 0` \(character 1\): a path begins with M"),
        ("M 0 0 A 5 5 0 2 1 10 0", r"breaks off at `2 1 10 0` .*: A takes 7 numbers"),
        ("M 0 0 C 1 1 2 2 3 3 4 4", "C takes 6 numbers"),
        ("M 0 0 L", "L takes 2 numbers"),
        ("M 0 0 L 1 1,, 2 2", r"`, 2 2`|`,, 2 2`"),
        ("M 0 0 L {width} 3", r"breaks off at `\{width\} 3`"),
        ("M 0 0 L 1e9 0 L 3 3 Z", "too large"),
        ("M 0 0 L 1e999 0 L 3 3 Z", "too large|cannot be read"),
    ],
)
def test_a_broken_path_is_told_and_never_cut_short(d: str, told: str) -> None:
    with pytest.raises(ShapeError, match=told):
        contours(d)


def test_an_empty_path_has_no_contours() -> None:
    assert contours("") == ()
    assert contours("  ") == ()
    assert contours("M 5 5") == ()


@given(st.text(alphabet="MmLlHhVvCcSsQqTtAaZz0123456789.,-+eE ", max_size=60))
def test_any_text_gives_contours_or_a_shape_error(d: str) -> None:
    try:
        found = contours(d)
    except ShapeError:
        return
    assert all(math.isfinite(number) for each in found for v in each.vertices for number in v)


@given(st.lists(st.integers(-200, 200), min_size=8, max_size=8))
def test_cubic_curves_stay_within_a_hundredth(numbers: list[int]) -> None:
    x0, y0, *rest = numbers
    if len({*zip(numbers[::2], numbers[1::2], strict=True)}) < 3:
        return
    path = one(f"M {x0} {y0} C {' '.join(map(str, rest))} L 900 900")
    chain = [v[:2] for v in path.vertices]
    curve = svgelements.CubicBezier(*zip(numbers[::2], numbers[1::2], strict=True))
    for step in range(101):
        point = curve.point(step / 100)
        spot = (float(point.x), float(point.y))
        assert min(off_line(spot, p, q) for p, q in pairwise(chain)) <= 0.0101


@given(st.floats(1, 300), st.floats(1, 300), st.floats(-90, 90))
def test_elliptic_arcs_stay_within_a_hundredth(rx: float, ry: float, turn: float) -> None:
    """An ellipse of two arcs has the area pi rx ry, whichever way it is turned."""
    angle = math.radians(turn)
    x, y = rx * math.cos(angle), rx * math.sin(angle)
    half = f"A{rx!r} {ry!r} {turn!r} 0 1"
    d = f"M{-x!r} {-y!r}{half} {x!r} {y!r}{half} {-x!r} {-y!r}Z"
    ring = one(d)
    assert signed_area(ring) == pytest.approx(math.pi * rx * ry, abs=0.01 * math.tau * max(rx, ry))
    for px, py, _ in ring.vertices:
        u, v = (
            px * math.cos(angle) + py * math.sin(angle),
            py * math.cos(angle) - px * math.sin(angle),
        )
        assert math.hypot(u / rx, v / ry) == pytest.approx(1, abs=1e-5)


def test_affine_images_of_circles_are_arcs_only_while_they_are_circles() -> None:
    d = "M 5 0 A 5 5 0 0 1 -5 0 A 5 5 0 0 1 5 0 Z"
    (mirrored,) = contours(d, (0.0, -2.0, -2.0, 0.0, 7.0, 7.0))
    assert len(mirrored.vertices) == 2
    assert {round(e.arc.radius, 9) for e in edges(mirrored) if e.arc} == {10}
    assert signed_area(mirrored) < 0
    (squeezed,) = contours(d, (1.0, 0.0, 0.0, 0.5, 0.0, 0.0))
    assert not [edge for edge in edges(squeezed) if edge.bulge]
    assert area(squeezed) == pytest.approx(math.pi * 5 * 2.5, rel=2e-3)
    assert bounds(squeezed).height == pytest.approx(5, abs=0.01)
