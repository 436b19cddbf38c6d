"""Engravings against their cutter: widths by hand, spaces against pixels, and what is offered."""

from __future__ import annotations

import math
from dataclasses import replace
from string import digits

import numpy as np
import pytest
from PIL import Image, ImageDraw
from scipy import ndimage

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.engraved import run_together, widest_stroke
from kerfolio.geometry.flatten import points
from kerfolio.geometry.stroke_text import outline_text, stroke_text
from kerfolio.geometry.transform import scaled
from kerfolio.model.stock import CutterStock
from kerfolio.shop.engraving import Engraved, depth_of, stroke_width

HIGH = 10.0
WORDS = ("OUT", "KEEP", "18 mm", "A4", "Boat", "left", "AVE", "2026", "8@B", "Nine %")


def cutter(
    kind: str, diameter: float, angle: float | None = None, flat: float = 0.0
) -> CutterStock:
    return CutterStock(
        name="it",
        title="It",
        diameter=diameter,
        kind=kind,
        flutes=2,
        cutting_length=10,
        angle=angle,
        tip_flat=flat or None,
    )


@pytest.mark.parametrize(
    ("made_by", "depth", "width"),
    [
        # By hand: flat + 2 x depth x tan(angle / 2); tan 30 degrees is 0.57735, tan 45 is 1.
        (cutter("v", 12, 60), 1.0, 1.1547),
        (cutter("v", 12, 60, 0.1), 0.5, 0.6774),
        (cutter("v", 12, 90, 0.2), 0.8, 1.8),
        (cutter("v", 12, 90), 7.0, 12.0),  # past its cone it cuts as wide as it is
        # The chord of a circle: 2 x square root of (d (D - d)).
        (cutter("ball", 6), 1.0, 2 * math.sqrt(5)),
        (cutter("ball", 6), 4.0, 6.0),
        (cutter("down-cut", 3), 0.5, 3.0),
        (cutter("down-cut", 3), 0.0, 0.0),  # where the sheet lies that low nothing is cut
        (cutter("v", 12, 60, 0.1), -0.1, 0.0),
    ],
)
def test_how_wide_a_stroke_is(made_by: CutterStock, depth: float, width: float) -> None:
    assert stroke_width(made_by, made_by.diameter, depth) == pytest.approx(width, abs=1e-4)


@pytest.mark.parametrize(
    "made_by", [cutter("v", 12, 60, 0.1), cutter("v", 12, 90), cutter("ball", 6)]
)
def test_depth_and_width_follow_from_one_another(made_by: CutterStock) -> None:
    for depth in (0.2, 0.5, 1.3, 2.9):
        width = stroke_width(made_by, made_by.diameter, depth)
        assert depth_of(made_by, made_by.diameter, width) == pytest.approx(depth)


def white_spots(lines: tuple[Contour, ...], width: float, fine: float = 0.02) -> int:
    """Return how many spaces lines drawn in pixels, by another library, close in."""
    drawn = [points(each, 0.01) for each in lines]
    drawn = [[*run, run[0]] if each.closed else run for run, each in zip(drawn, lines, strict=True)]
    every = np.concatenate(drawn)
    low, size = every.min(axis=0) - 4, np.ptp(every, axis=0) + 8
    picture = Image.new("1", tuple(int(n / fine) for n in size.tolist()), 1)
    pen = ImageDraw.Draw(picture)
    for run in drawn:
        spots = [((x - low[0]) / fine, (y - low[1]) / fine) for x, y in run]
        pen.line(spots, fill=0, width=round(width / fine))
        for x, y in spots:
            r = width / fine / 2
            pen.ellipse((x - r, y - r, x + r, y + r), fill=0)
    found = int(ndimage.label(np.array(picture))[1])
    return found - 1  # the ground around


@pytest.mark.parametrize(("letter", "spaces"), [("O", 1), ("B", 2), ("8", 2), ("A", 1), ("%", 2)])
def test_closed_spaces_close_where_pixels_say_so(letter: str, spaces: int) -> None:
    lines = stroke_text(letter, HIGH)
    most = widest_stroke(lines)
    assert white_spots(lines, 0.5) == spaces
    assert white_spots(lines, 0.97 * most) >= spaces
    if letter in "OA8":  # what closes first is a space that lines surround
        assert white_spots(lines, 1.03 * most) < spaces


def test_open_spaces_and_neighbours_close_by_hand() -> None:
    # Two lines 3 mm apart meet at 3 mm; arms of an E 2 mm apart, at 2 mm.
    two = (_line((0, 0), (10, 0)), _line((0, 3), (10, 3)))
    assert widest_stroke(two) == pytest.approx(3.0, abs=0.01)
    arms = tuple(_line((0, y), (6, y)) for y in (0, 2, 4))
    assert widest_stroke((_line((0, 0), (0, 4)), *arms)) == pytest.approx(2.0, abs=0.05)
    assert run_together(two, 2.9) == ()
    ((x, y),) = run_together(two, 3.1)
    assert (0 <= x <= 10, y) == (True, 1.5)


def _line(a: tuple[float, float], b: tuple[float, float]) -> Contour:
    return Contour(((*a, 0.0), (*b, 0.0)), closed=False)


@pytest.mark.parametrize("word", ["OUT", "KEEP", "BOAT", "AND", "2026"])
def test_words_in_capitals_take_strokes_as_signs_have_them(word: str) -> None:
    # From memory: 2010 ADA Standards for Accessible Design, 703.5.7: strokes of letters that are to
    # be read are 10 to 30 % of their height.
    lines = stroke_text(word, HIGH)
    made = Engraved(cutter=cutter("up-cut", 1), diameter=1.0, depth=0.5, lines=lines)
    assert 0.10 * HIGH <= made.widest <= 0.30 * HIGH


@pytest.mark.parametrize("word", [*WORDS, *"BEGKMRSX", *"aegkrsx", *digits])
@pytest.mark.parametrize("made_by", [cutter("down-cut", 3), cutter("v", 12, 90, 0.1)])
def test_what_is_offered_works_and_a_tenth_less_does_not(word: str, made_by: CutterStock) -> None:
    lines = stroke_text(word, 3.0)
    made = Engraved(cutter=made_by, diameter=made_by.diameter, depth=0.9, lines=lines)
    if not made.lost:
        assert made.larger == 1.0
        return
    larger = tuple(scaled(each, made.larger * 1.001) for each in lines)
    smaller = tuple(scaled(each, made.larger * 0.9) for each in lines)
    assert replace(made, lines=larger).lost == ()
    assert replace(made, lines=smaller).lost != ()
    if made.widest:  # so small that half a millimetre of wood has no room, no cutter is offered
        narrow = cutter("down-cut", made.widest * 0.999)
        assert replace(made, cutter=narrow, diameter=narrow.diameter).lost == ()
        wide = cutter("down-cut", made.widest * 1.1)
        assert replace(made, cutter=wide, diameter=wide.diameter).lost != ()
    if made.follows_depth and made.deepest > 0:
        assert replace(made, depth=made.deepest * 0.999).lost == ()
        assert replace(made, depth=(made.deepest + 0.3) * 1.1 - 0.3).lost != ()


def test_letters_in_outline_fill_first() -> None:
    assert widest_stroke(outline_text("OUT", HIGH)) < 0.6 * widest_stroke(stroke_text("OUT", HIGH))


def test_a_dot_may_fill_and_an_end_that_nearly_meets_closes_a_space() -> None:
    assert widest_stroke(stroke_text("i", HIGH)) > 2.0
    assert widest_stroke(stroke_text("A", HIGH)) > 3.0, "the bar ends just short of the leg"
