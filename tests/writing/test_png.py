"""PNG out of SVG, read back by Pillow."""

from __future__ import annotations

import builtins
import io

import pytest
from PIL import Image

from kerfolio.basis.colour import rgb
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.writing.png import png_bytes
from kerfolio.writing.svg import svg_bytes
from tests import outside

PICTURE = Drawing(
    box=(0, 0, 40, 20),
    items=(Stroke(contour=rectangle(0, 10, 20, 20), width=None, fill=Ink.ACCENT),),
)


def test_the_picture_has_the_width_asked_for_and_the_right_way_up() -> None:
    png = png_bytes(svg_bytes(PICTURE), 400)
    if png is None:
        outside.missing("The cairo library is not installed")
    with Image.open(io.BytesIO(png)) as picture:
        assert picture.size == (400, 200)
        assert picture.convert("RGBA").getpixel((100, 50)) == (*rgb(PALETTE[Ink.ACCENT]), 255)
        assert picture.convert("RGBA").getpixel((100, 150)) == (*rgb(PALETTE[Ink.PAPER]), 255)
    bare = png_bytes(svg_bytes(PICTURE), 400, ground=None)
    assert bare is not None
    with Image.open(io.BytesIO(bare)) as picture:
        assert picture.convert("RGBA").getpixel((100, 150)) == (0, 0, 0, 0)


def test_without_the_cairo_library_there_is_no_picture(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def missing(name: str, *rest: object, **more: object) -> object:
        if name == "cairosvg":
            raise OSError('no library called "cairo-2" was found')
        return real(name, *rest, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(builtins, "__import__", missing)
    assert png_bytes(svg_bytes(PICTURE), 400) is None
