"""What stands for the workshop on a booklet's cover: its logo, or a mark drawn from its name."""

from __future__ import annotations

from functools import cache

from kerfolio.booklet.art import framed
from kerfolio.drawing.house_mark import house_mark
from kerfolio.drawing.palette import palettes_of
from kerfolio.model.look import Look
from kerfolio.writing.photo import sized
from kerfolio.writing.svg import svg_bytes

_PIXELS = 600
"""How wide a logo of pixels is kept at most."""


@cache
def mark_of(name: str, look: Look) -> bytes:
    """Return the mark as SVG, in the colours of paper."""
    logo = look.logo
    if logo is None:
        return svg_bytes(house_mark(name), palette=palettes_of(look).paper)
    return framed(sized(logo.pixels, _PIXELS, "png")) if logo.pixels else logo.svg
