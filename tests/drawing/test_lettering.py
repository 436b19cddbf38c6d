"""Widths of lettering against Pillow (FreeType), which measures the same font on its own."""

from __future__ import annotations

import font_source_sans_pro
import pytest
from PIL import ImageFont

from kerfolio.drawing.lettering import corners, label_box, text_reach, text_width, wrapped
from kerfolio.drawing.vocabulary import Anchor, Label


@pytest.mark.parametrize("strong", [False, True])
@pytest.mark.parametrize(
    "text", ["360 mm (14 3/16 in)", "A1", "Größe ø 6.6 × 40", "WAVE To", "", "17.8 mm sheet + fit"]
)
def test_widths_agree_with_freetype(text: str, strong: bool) -> None:
    name = "SourceSansProSemibold" if strong else "SourceSansPro"
    path = font_source_sans_pro.font_files_ttf[name]
    font = ImageFont.truetype(path, 1000, layout_engine=ImageFont.Layout.BASIC)
    kerned = font.getlength(text) / 1000
    plain = sum(font.getlength(letter) for letter in text) / 1000
    assert text_width(text, 1.0, strong=strong) == pytest.approx(plain, abs=1e-3 * len(text))
    assert text_width(text, 1.0, strong=strong) >= kerned - 0.001 * len(text), "never too narrow"


def test_a_letter_the_font_lacks_counts_a_full_em() -> None:
    assert text_width("日", 5.0) == 5.0


@pytest.mark.parametrize(
    ("anchor", "angle", "box"),
    [
        (Anchor.START, 0, (10, 10, 22, 12)),
        (Anchor.MIDDLE, 0, (4, 10, 16, 12)),
        (Anchor.END, 0, (-2, 10, 10, 12)),
        (Anchor.START, 90, (8, 10, 10, 22)),
        (Anchor.START, 180, (-2, 8, 10, 10)),
    ],
)
def test_the_box_follows_anchor_and_angle(
    anchor: Anchor, angle: float, box: tuple[float, ...]
) -> None:
    # a bar 12 mm wide; `box` is for one of 2 mm above the baseline, corrected for this one's ink
    bar = "—" * 3
    height = 12 / text_width(bar, 1.0)
    low, high = text_reach(bar, height)
    found = label_box(Label(text=bar, at=(10, 10), height=height, anchor=anchor, angle=angle))
    thick = {0: (0, low, 0, high - 2), 90: (2 - high, 0, -low, 0), 180: (0, 2 - high, 0, -low)}
    meant = [edge + shift for edge, shift in zip(box, thick[int(angle)], strict=True)]
    assert found == pytest.approx(meant, abs=1e-9)


@pytest.mark.parametrize("text", ["A1", "up", "grain", "(14 3/16 in)", "ø", "Ägy"])
def test_ink_reaches_as_high_and_low_as_freetype_says(text: str) -> None:
    path = font_source_sans_pro.font_files_ttf["SourceSansPro"]
    font = ImageFont.truetype(path, 1000, layout_engine=ImageFont.Layout.BASIC)
    _, top, _, bottom = font.getbbox(text, anchor="ls")
    low, high = text_reach(text, 1.0)
    assert (-bottom / 1000, -top / 1000) == pytest.approx((low, high), abs=0.002)


def test_corners_turn_with_the_text() -> None:
    flat = corners(Label(text="ab", at=(0, 0), height=10))
    turned = corners(Label(text="ab", at=(0, 0), height=10, angle=90))
    for (x, y), other in zip(flat, turned, strict=True):
        assert other == pytest.approx((-y, x))


def test_lines_break_at_blanks() -> None:
    lines = wrapped("17.8 mm sheet + 2 x 0.1 mm fit", 3.0, 22.0)
    assert len(lines) > 1
    assert " ".join(lines) == "17.8 mm sheet + 2 x 0.1 mm fit"
    assert all(text_width(line, 3.0) <= 22.0 for line in lines)
    assert wrapped("indivisible", 3.0, 1.0) == ("indivisible",)
