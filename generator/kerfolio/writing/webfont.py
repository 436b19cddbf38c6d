"""Web fonts: a TrueType file cut down to the letters that Western texts use, as WOFF2."""

from __future__ import annotations

import io
from functools import cache
from importlib import resources

from fontTools import subset
from fontTools.ttLib import TTFont

from kerfolio.basis.keeper import kept

_RANGES = (
    (0x20, 0x7E),  # Basic Latin
    (0xA0, 0x17F),  # Latin-1 Supplement, Latin Extended-A
    (0x2010, 0x2027),  # dashes, quotation marks, bullet, ellipsis
    (0x2030, 0x203A),
    (0x2044, 0x2044),  # fraction slash
    (0x20AC, 0x20AC),  # euro
    (0x2150, 0x215F),  # vulgar fractions
    (0x2190, 0x2193),  # arrows
    (0x2212, 0x2212),  # minus
    (0x2260, 0x2265),
)


_CUTS = {
    "source-serif-regular": ("font_source_serif_pro", "SourceSerifPro-Regular.ttf"),
    "source-serif-italic": ("font_source_serif_pro", "SourceSerifPro-It.ttf"),
    "source-serif-bold": ("font_source_serif_pro", "SourceSerifPro-Semibold.ttf"),
    "source-sans-regular": ("font_source_sans_pro", "SourceSansPro-Regular.ttf"),
    "source-sans-italic": ("font_source_sans_pro", "SourceSansPro-It.ttf"),
    "source-sans-bold": ("font_source_sans_pro", "SourceSansPro-Semibold.ttf"),
}


@cache
def web_fonts() -> dict[str, bytes]:
    """Return the theme's fonts by file name (``source-sans-bold.woff2``)."""
    return {f"{name}.woff2": kept(_subset, whole_font(f"{name}.woff2")) for name in _CUTS}


def whole_font(name: str) -> bytes:
    """Return the file that a web font is cut down from; KeyError for one that is none.

    Cutting and packing takes seconds, which are lost on a page that never leaves the machine.
    """
    package, file = _CUTS[name.removesuffix(".woff2")]
    return resources.files(package).joinpath("files", file).read_bytes()


def _subset(font: bytes) -> bytes:
    """Cut a TrueType font down and pack it, keeping its own time stamps: same bytes any day."""
    options = subset.Options()
    options.flavor = "woff2"
    options.layout_features = ["kern", "liga", "tnum", "lnum", "onum", "frac", "mark", "mkmk"]
    options.name_IDs = [0, 1, 2, 13, 14]  # names and licence stay with the font
    options.notdef_outline = True
    options.recalc_timestamp = False
    loaded = TTFont(io.BytesIO(font), recalcTimestamp=False, lazy=True)
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=[code for a, b in _RANGES for code in range(a, b + 1)])
    cutter.subset(loaded)
    loaded.flavor = "woff2"
    buffer = io.BytesIO()
    loaded.save(buffer)
    return buffer.getvalue()
