"""The mark drawn from a workshop's name."""

from __future__ import annotations

import io
from itertools import combinations

import pytest
import shapely
from PIL import Image

from kerfolio.drawing.house_mark import house_mark, initials
from kerfolio.drawing.vocabulary import Stroke
from kerfolio.writing.png import png_bytes
from kerfolio.writing.svg import svg_bytes

SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ123456789"


@pytest.mark.parametrize(
    ("name", "cut"),
    [
        ("The Tidemill Bench", ("T", "B")),
        ("Fernhill", ("F", "E")),
        ("Ada & Kay", ("A", "K")),
        ("Överholz", ("O", "V")),
        ("7 Oaks of the North", ("7", "O")),
        ("X", ("X", "")),
        ("Ящик", ("", "")),
        ("The", ("T", "H")),
    ],
)
def test_initials(name: str, cut: tuple[str, str]) -> None:
    assert initials(name) == cut


def test_the_two_plates_interlock_with_a_gap_all_along() -> None:
    """Grown by just under half the gap they stay apart, by just over it they meet."""
    left, right = (
        shapely.Polygon([at[:2] for at in each.contour.vertices])
        for each in house_mark("Ada Kay").items
        if isinstance(each, Stroke)
    )
    assert left.distance(right) == pytest.approx(0.5)
    assert left.buffer(0.26).intersects(right.buffer(0.26))
    assert left.convex_hull.intersects(right.convex_hull), "fingers reach into each other"


def test_letters_are_cut_out() -> None:
    """An O has an island: the line round it, and the one within."""
    left, right = (each for each in house_mark("Oda Kay").items if isinstance(each, Stroke))
    assert (len(left.holes), len(right.holes)) == (2, 1)


def test_every_sign_is_another_picture() -> None:
    """Even at the sixteen pixels of a browser's tab."""
    shown = {sign: png_bytes(svg_bytes(house_mark(f"{sign} {sign}")), 16) for sign in SIGNS}
    if None in shown.values():
        pytest.skip("the cairo library is missing")
    pixels = {
        sign: Image.open(io.BytesIO(png or b"")).convert("L").tobytes()
        for sign, png in shown.items()
    }
    for one, other in combinations(SIGNS, 2):
        assert pixels[one] != pixels[other], (one, other)


def test_the_same_name_gives_the_same_bytes() -> None:
    assert svg_bytes(house_mark("Ada Kay")) == svg_bytes(house_mark("Ada Kay"))
