"""Lettering of single lines, for engraving, and the outlines of letters.

Single lines: the Hershey plain roman letters (A. V. Hershey, US National Bureau of Standards,
1967; the data may be used freely when its origin is named, the package that carries it is under
the MIT licence). Outlines: Source Sans (Adobe; SIL Open Font License 1.1).
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import Any

import font_source_sans_pro
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont
from HersheyFonts import HersheyFonts

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.curve import Bezier, Piece
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.path_text import contour_of
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.transform import moved, scaled, turned

LETTERS = "futural"
PLAIN = str.maketrans(
    {
        "×": "x",
        "–": "-",
        "—": "-",
        "−": "-",
        "’": "'",
        "‘": "'",
        "“": '"',
        "”": '"',
        "′": "'",
        "″": '"',
        "\u00a0": " ",
    }
)
"""Typographic signs the single-line letters lack, and the plain ones cut instead."""


def stroke_text(
    text: str, height: float, at: Point = (0.0, 0.0), anchor: str = "middle", angle: float = 0.0
) -> tuple[Contour, ...]:
    """Return a line of text as open contours; ``height`` is that of the capitals in mm.

    ``anchor`` start, middle or end says which point of the line ``at`` is; upright it is the middle
    of the capitals. ``angle`` in degrees turns it about ``at``. Raises ShapeError naming the first
    ``character`` the letters lack, or for text of no letters or no height.
    """
    _check(text, height)
    glyphs = _stroke_glyphs()
    base, cap = _stroke_heights()
    strokes: list[Contour] = []
    pen = 0.0
    for sign, plain in zip(text, text.translate(PLAIN), strict=True):
        glyph = glyphs.get(plain)
        if glyph is None:
            raise _missing(sign)
        for stroke in glyph.strokes:
            points = tuple((pen + x - glyph.left_offset, base - y, 0.0) for x, y in stroke)
            strokes.append(Contour(points, closed=False))
        pen += glyph.char_width
    return _placed(strokes, height / (base - cap), (pen, base - cap), at, anchor, angle)


def outline_text(
    text: str, height: float, at: Point = (0.0, 0.0), anchor: str = "middle", angle: float = 0.0
) -> tuple[Contour, ...]:
    """Return a line of text as closed outlines of letters, counters among them.

    Arguments and errors as in ``stroke_text``; chords within 0.01 mm.
    """
    _check(text, height)
    font = _outline_font()
    cap = float(font["glyf"]["H"].yMax)
    scale = height / cap
    outlines: list[Contour] = []
    pen = 0.0
    for sign in text:
        name = font.getBestCmap().get(ord(sign))
        if name is None:
            raise _missing(sign)
        for outline in _glyph_outlines(font, name, 0.01 / scale):
            outlines.append(moved(outline, pen, 0.0))
        pen += float(font["hmtx"][name][0])
    return _placed(outlines, scale, (pen, cap), at, anchor, angle)


def _check(text: str, height: float) -> None:
    if not text.strip():
        raise ShapeError("the text has no letters")
    if height <= 0:
        raise ShapeError("letters need a height above 0", limit=0.0)


def _missing(sign: str) -> ShapeError:
    return ShapeError(f"the letters have no `{sign}`", character=sign)


def _placed(
    drawn: list[Contour], scale: float, size: Point, at: Point, anchor: str, angle: float
) -> tuple[Contour, ...]:
    """Return contours on a base line at 0,0, font units, scaled, anchored and turned.

    The middle is that of the lines: what stands beside the last letter is no part of them.
    """
    boxes = [bounds(each) for each in drawn]
    middle = (min(box.x0 for box in boxes) + max(box.x1 for box in boxes)) / 2
    shift = {"start": 0.0, "middle": -middle, "end": -size[0]}[anchor]
    result = []
    for contour in drawn:
        based = scaled(moved(contour, shift, -size[1] / 2), scale)
        result.append(turned(moved(based, *at), angle, at))
    return tuple(result)


@lru_cache(maxsize=1)
def _stroke_glyphs() -> dict[str, Any]:
    fonts = HersheyFonts()
    fonts.load_default_font(LETTERS)
    return dict(fonts.all_glyphs)


@lru_cache(maxsize=1)
def _stroke_heights() -> tuple[float, float]:
    """Return the y (downward) of the base line and of the top of a capital."""
    heights = [y for stroke in _stroke_glyphs()["H"].strokes for _, y in stroke]
    return float(max(heights)), float(min(heights))


@lru_cache(maxsize=1)
def _outline_font() -> Any:
    return TTFont(font_source_sans_pro.font_files_ttf["SourceSansPro"], lazy=True)


def _glyph_outlines(font: Any, name: str, tolerance: float) -> list[Contour]:
    """Return a glyph's closed contours in font units."""
    glyphs = font.getGlyphSet()
    pen = DecomposingRecordingPen(glyphs)
    glyphs[name].draw(pen)
    result: list[Contour] = []
    pieces: list[Piece] = []
    here: Point = (0.0, 0.0)
    for action, points in pen.value:
        if action == "moveTo":
            here, pieces = points[0], []
        elif action == "lineTo":
            pieces.append(Bezier((here, points[0])))
            here = points[0]
        elif action == "qCurveTo":
            for control, end in _quadratics(points):
                pieces.append(Bezier((here, control, end)))
                here = end
        elif action == "closePath" and pieces:
            result.append(contour_of([*pieces, Bezier((here, pieces[0].start))], True, tolerance))
    return result


def _quadratics(points: tuple[Point, ...]) -> list[tuple[Point, Point]]:
    """Return control and end of each curve; ends left out lie midway (TrueType outlines)."""
    controls, last = points[:-1], points[-1]
    between = [((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in pairwise(controls)]
    return list(zip(controls, [*between, last], strict=True))
