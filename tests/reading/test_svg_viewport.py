"""Units, view boxes and transforms against the specifications of CSS and SVG."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from svgelements import Matrix

from kerfolio.geometry.affine import mapped
from kerfolio.reading.svg_viewport import (
    SvgError,
    ViewBox,
    fitted,
    length,
    numbers,
    transform,
    view_box,
)


@pytest.mark.parametrize(
    ("text", "px"),
    [
        ("1in", 96),
        ("2.54cm", 96),
        ("25.4mm", 96),
        ("101.6Q", 96),
        ("6pc", 96),
        ("72pt", 96),
        ("96px", 96),
        ("96", 96),
        ("1cm", 96 / 2.54),
        ("1e1", 10),
        (" .5in ", 48),
        ("-3", -3),
    ],
)
def test_absolute_units_are_those_of_css(text: str, px: float) -> None:
    """CSS Values and Units Level 3, section 5.2 (absolute lengths): 1 in = 2.54 cm = 96 px,
    1 mm = 1/10 cm, 1 Q = 1/40 cm, 1 pc = 1/6 in, 1 pt = 1/72 in."""
    assert length(text, None) == pytest.approx(px, rel=1e-12)


def test_a_percentage_needs_a_whole() -> None:
    assert length("25%", 80) == 20
    with pytest.raises(SvgError, match="`25%`"):
        length("25%", None)


@pytest.mark.parametrize("text", ["3em", "2 rem", "wide", "", "1,5mm", "mm", "3mm4", "1e400"])
def test_other_lengths_are_refused_by_name(text: str) -> None:
    with pytest.raises(SvgError, match="`"):
        length(text, 100)


@pytest.mark.parametrize(
    ("ratio", "scale", "shift"),
    [
        (None, (2, 2), (0, 50)),
        ("none", (2, 4), (0, 0)),
        ("xMidYMid meet", (2, 2), (0, 50)),
        ("xMinYMin", (2, 2), (0, 0)),
        ("xMaxYMax meet", (2, 2), (0, 100)),
        ("xMidYMid slice", (4, 4), (-50, 0)),
        ("xMaxYMin slice", (4, 4), (-100, 0)),
        ("defer xMinYMid slice", (4, 4), (0, 0)),
        ("nonsense", (2, 2), (0, 50)),
    ],
)
def test_a_view_box_fits_its_viewport(
    ratio: str | None, scale: tuple[float, float], shift: tuple[float, float]
) -> None:
    """SVG 2 section 8.2: a 50 x 50 view box at 10,20 in a viewport of 100 x 200."""
    affine = fitted(ViewBox(10, 20, 50, 50), 100, 200, ratio)
    assert (affine[0], affine[3]) == scale
    assert mapped(affine, (10, 20)) == pytest.approx(shift)


def test_the_specifications_nested_transforms_give_its_matrix() -> None:
    """SVG 1.1 section 7.4, nested transformations: translate(50,90), rotate(-45) and
    translate(130,160) make [.707 -.707 .707 .707 255.03 111.21] (worked out there with .707)."""
    affine = transform("translate(50,90) rotate(-45) translate(130,160)")
    assert affine == pytest.approx((0.707, -0.707, 0.707, 0.707, 255.03, 111.21), abs=0.05)


def test_a_turn_about_a_point_leaves_the_point() -> None:
    assert mapped(transform("rotate(33 7 -2)"), (7, -2)) == pytest.approx((7, -2))
    assert mapped(transform("rotate(90)"), (1, 0)) == (0, 1)
    assert mapped(transform("scale(2)"), (3, 4)) == (6, 8)
    assert mapped(transform("skewX(45)"), (3, 4)) == pytest.approx((7, 4))
    assert mapped(transform("skewY(45) "), (3, 4)) == pytest.approx((3, 7))
    assert mapped(transform("translate(5)"), (3, 4)) == (8, 4)
    assert transform("") == transform("none") == (1, 0, 0, 1, 0, 0)


FUNCTIONS = st.one_of(
    st.builds("translate({:.3f},{:.3f})".format, st.floats(-99, 99), st.floats(-99, 99)),
    st.builds("rotate({:.3f} {:.3f} {:.3f})".format, *[st.floats(-99, 99)] * 3),
    st.builds("scale({:.3f} , {:.3f})".format, st.floats(0.1, 9), st.floats(-9, -0.1)),
    st.builds("skewX({:.3f})".format, st.floats(-60, 60)),
    st.builds("matrix({:.3f} {:.3f} {:.3f} {:.3f} {:.3f} {:.3f})".format, *[st.floats(-9, 9)] * 6),
)


@given(st.lists(FUNCTIONS, min_size=1, max_size=4).map(" ".join))
def test_transforms_agree_with_the_svg_library(text: str) -> None:
    matrix = Matrix(text)
    expected = (matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f)
    assert transform(text) == pytest.approx([float(v) for v in expected], rel=1e-9, abs=1e-6)


@pytest.mark.parametrize(
    "text",
    ["rotate(1 2)", "turn(3)", "translate(3", "scale()", "matrix(1 2 3)", "x", "rotate(a)"],
)
def test_broken_transforms_are_refused_by_name(text: str) -> None:
    with pytest.raises(SvgError, match="transform"):
        transform(text)


def test_lists_of_numbers_are_read_as_svg_writes_them() -> None:
    assert numbers("1,2 3-4.5.5 1e1") == [1, 2, 3, -4.5, 0.5, 10]
    with pytest.raises(SvgError, match="not a list of numbers"):
        numbers("1 2 x")
    assert view_box("0 0 210 297") == ViewBox(0, 0, 210, 297)
    assert view_box(None) is None
    for text in ("0 0 210", "0 0 0 5", "0 0 5 -5", "a b c d"):
        with pytest.raises(SvgError):
            view_box(text)


@given(st.text(alphabet="matrixroscleknw0123456789.,-+e() ", max_size=40))
def test_any_text_is_a_transform_or_refused(text: str) -> None:
    try:
        found = transform(text)
    except SvgError:
        return
    assert len(found) == 6
    assert all(isinstance(number, float) and not math.isnan(number) for number in found)
