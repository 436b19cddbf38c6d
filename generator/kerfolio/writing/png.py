"""SVG to PNG, where the machine can."""

from __future__ import annotations

from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Ink


def png_bytes(svg: bytes, width: int, ground: str | None = PALETTE[Ink.PAPER]) -> bytes | None:
    """Return the picture ``width`` pixels wide, or None when the cairo library is missing.

    ``ground`` is the colour behind the drawing, None leaves it see-through. Write the SVG with
    outlined lettering, so that the picture is the same whatever fonts the machine has.
    """
    try:
        import cairosvg
    except OSError:  # the binding is there, the system library it loads is not
        return None
    png = cairosvg.svg2png(bytestring=svg, output_width=width, background_color=ground)
    return bytes(png)
