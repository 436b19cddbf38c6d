"""A picture in the middle of a square ground, as phones keep one on their first screen."""

from __future__ import annotations

import io

from PIL import Image

from kerfolio.basis.pixels import Pixels

SIDE = 180
"""Pixels; phones scale it to what they need."""

_SHARE = 0.72
"""Of the side that the picture fills at most: phones round the corners off."""


def square_icon(picture: Pixels | bytes, ground: str) -> bytes | None:
    """Return a PNG of a picture, or of an SVG, on a ground ``#rrggbb``.

    None where the machine lacks the cairo library, or it cannot draw the SVG.
    """
    drawn = _pixels(picture) if isinstance(picture, Pixels) else _drawn(picture)
    if drawn is None:
        return None
    most = round(SIDE * _SHARE)
    scale = most / max(drawn.size)
    size = (max(1, round(drawn.width * scale)), max(1, round(drawn.height * scale)))
    shown = drawn.resize(size, Image.Resampling.LANCZOS)
    square = Image.new("RGB", (SIDE, SIDE), ground)
    square.paste(shown, ((SIDE - size[0]) // 2, (SIDE - size[1]) // 2), shown)
    out = io.BytesIO()
    square.save(out, "PNG", optimize=True)
    return out.getvalue()


def _pixels(picture: Pixels) -> Image.Image:
    mode = "RGBA" if picture.see_through else "RGB"
    size = (picture.width, picture.height)
    return Image.frombytes(mode, size, picture.content).convert("RGBA")


def _drawn(svg: bytes) -> Image.Image | None:
    try:
        import cairosvg

        png = cairosvg.svg2png(bytestring=svg, output_width=4 * SIDE)
        return Image.open(io.BytesIO(png)).convert("RGBA")
    except Exception:  # no system library, or what it says of a drawing from outside: anything
        return None
