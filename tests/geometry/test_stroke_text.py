"""Lettering in single lines and in outlines."""

from __future__ import annotations

import math

import font_source_sans_pro
import pytest
from fontTools.ttLib import TTFont

from kerfolio.geometry.checks import faults
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import Box, bounds, signed_area
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.stroke_text import outline_text, stroke_text


def box(contours: tuple[Contour, ...]) -> Box:
    found = [bounds(each) for each in contours]
    return Box(
        min(b.x0 for b in found),
        min(b.y0 for b in found),
        max(b.x1 for b in found),
        max(b.y1 for b in found),
    )


@pytest.mark.parametrize("lettering", [stroke_text, outline_text])
def test_the_height_is_that_of_the_capitals_about_the_middle(lettering: object) -> None:
    drawn = box(lettering("HH", 12, (100, 50)))
    assert drawn.height == pytest.approx(12, abs=0.02)
    assert drawn.centre == pytest.approx((100, 50), abs=0.02)


@pytest.mark.parametrize("lettering", [stroke_text, outline_text])
def test_anchors_and_angles_place_the_line(lettering: object) -> None:
    middle = box(lettering("Hook", 10))
    start = box(lettering("Hook", 10, anchor="start"))
    end = box(lettering("Hook", 10, anchor="end"))
    assert start.x0 == pytest.approx(0, abs=2)
    assert start.x0 >= 0
    assert end.x1 <= 0
    assert middle.x0 == pytest.approx(-middle.x1)
    upright = box(lettering("Hook", 10, (5, 5), angle=90))
    assert (upright.width, upright.height) == pytest.approx((middle.height, middle.width))


def test_strokes_are_open_and_outlines_closed() -> None:
    assert all(not each.closed for each in stroke_text("18 mm", 8))
    letters = outline_text("18 mm", 8)
    assert all(each.closed and not faults(each) for each in letters)


def test_counters_run_against_their_letters() -> None:
    turns = [math.copysign(1, signed_area(each)) for each in outline_text("B", 20)]
    assert sorted(turns) in ([-1, -1, 1], [-1, 1, 1])


def test_outlines_are_as_wide_as_the_font_says() -> None:
    font = TTFont(font_source_sans_pro.font_files_ttf["SourceSansPro"])
    advance, bearing = font["hmtx"]["H"]
    scale = 20 / font["glyf"]["H"].yMax
    assert box(outline_text("H", 20)).width == pytest.approx(
        (advance - 2 * bearing) * scale, abs=0.2
    )


@pytest.mark.parametrize("lettering", [stroke_text, outline_text])
def test_a_character_the_letters_lack_is_named(lettering: object) -> None:
    with pytest.raises(ShapeError, match="no `漢`") as caught:
        lettering("18 漢", 8)
    assert caught.value.character == "漢"
    with pytest.raises(ShapeError, match="no letters"):
        lettering("  ", 8)
    with pytest.raises(ShapeError, match="above 0"):
        lettering("A", 0)


def test_typographic_signs_are_cut_as_plain_ones() -> None:
    assert stroke_text("18 × 20", 8) == stroke_text("18 x 20", 8)


def test_every_printable_ascii_character_can_be_cut() -> None:
    for code in range(33, 127):
        assert stroke_text(chr(code), 10)
        assert outline_text(chr(code), 10)
