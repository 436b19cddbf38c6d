"""How wide lettering runs: the metrics of the one typeface of all drawings, Source Sans Pro."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import cache
from itertools import islice
from math import cos, radians, sin
from typing import Any

import font_source_sans_pro
from fontTools.ttLib import TTFont

from kerfolio.basis.figured import Figured, joined, widest, words_of
from kerfolio.drawing.vocabulary import Anchor, Label
from kerfolio.geometry.contour import Point

CAPITAL = 0.66
"""Height of a capital letter for a font size of 1 (the typeface's own OS/2 table)."""
LEGIBLE = 2.7
"""Font size in mm of the smallest lettering that is printed: 7.5 pt are 2.65 mm, and a picture may
be shown a little smaller than it is drawn."""
Box = tuple[float, float, float, float]
"""left, bottom, right, top in mm."""


@cache
def typeface(strong: bool = False) -> Any:
    """Return the opened font: the regular weight, or the semibold for what is ``strong``."""
    files = font_source_sans_pro.font_files_ttf
    return TTFont(files["SourceSansProSemibold" if strong else "SourceSansPro"], lazy=True)


@cache
def _advances(strong: bool) -> dict[int, float]:
    font = typeface(strong)
    widths, per_em = font["hmtx"], font["head"].unitsPerEm
    return {code: widths[name][0] / per_em for code, name in font.getBestCmap().items()}


def text_width(text: str, height: float, *, strong: bool = False) -> float:
    """Return the width in mm of ``text`` at a font size of ``height`` mm, without kerning.

    A character the typeface lacks counts as a full em, which no substitute exceeds by much. Of a
    text with figures it is the room that it keeps for any of them.
    """
    advances = _advances(strong)
    return height * math.fsum(advances.get(ord(letter), 1.0) for letter in widest(text))


@cache
def _reach(letter: str, strong: bool) -> tuple[float, float]:
    """Return the lowest and the highest point of a letter's ink for a font size of 1."""
    font = typeface(strong)
    name = font.getBestCmap().get(ord(letter), ".notdef")
    glyph, per_em = font["glyf"][name], font["head"].unitsPerEm
    if not glyph.numberOfContours:
        return 0.0, 0.0
    return glyph.yMin / per_em, glyph.yMax / per_em


def text_reach(text: str, height: float, *, strong: bool = False) -> tuple[float, float]:
    """Return how far the ink of ``text`` reaches below (negative) and above its baseline, mm."""
    reaches = [_reach(letter, strong) for letter in text] or [(0.0, 0.0)]
    return height * min(low for low, _ in reaches), height * max(high for _, high in reaches)


def corners(label: Label) -> tuple[Point, Point, Point, Point]:
    """Return the four corners of the label's lettering, as high as its ink, in mm."""
    width = text_width(label.text, label.height, strong=label.strong)
    shift = {Anchor.START: 0.0, Anchor.MIDDLE: -width / 2, Anchor.END: -width}[label.anchor]
    low, high = text_reach(label.text, label.height, strong=label.strong)
    along, across = cos(radians(label.angle)), sin(radians(label.angle))
    frame = ((shift, low), (shift + width, low), (shift + width, high), (shift, high))
    x, y = label.at
    points = [(x + u * along - v * across, y + u * across + v * along) for u, v in frame]
    return points[0], points[1], points[2], points[3]


def label_box(label: Label) -> Box:
    """Return the upright box around the label's lettering in mm."""
    points = corners(label)
    across, up = [x for x, _ in points], [y for _, y in points]
    return min(across), min(up), max(across), max(up)


def wrapped(text: str, height: float, width: float, *, strong: bool = False) -> tuple[str, ...]:
    """Break ``text`` at blanks into lines no wider than ``width`` mm where its words allow."""
    return in_rows((text,), (rows_of(text, height, width, strong=strong),))


def rows_of(text: str, height: float, width: float, *, strong: bool = False) -> tuple[int, ...]:
    """Return how many words of a text go on each of its lines, no wider than ``width`` mm."""
    return rows_within(text, lambda line: text_width(line, height, strong=strong) <= width)


def rows_within(text: str, fits: Callable[[str], bool]) -> tuple[int, ...]:
    """Return how many words of a text go on each of its lines, as many as fit on each."""
    counts: list[int] = []
    line: list[str] = []
    for word in words_of(text):
        if counts and fits(_line([*line, word])):
            line.append(word)
            counts[-1] += 1
        else:
            line = [word]
            counts.append(1)
    return tuple(counts)


def in_rows(texts: Sequence[str], rows: Sequence[Sequence[int]]) -> tuple[str, ...]:
    """Return the lines of texts, broken after so many words each."""
    made: list[str] = []
    for text, counts in zip(texts, rows, strict=True):
        words = iter(words_of(text))
        made += [_line(list(islice(words, count))) for count in counts]
    return tuple(made)


def _line(words: Sequence[str]) -> str:
    """Join words with blanks; with figures among them they stay figures."""
    return joined(" ", words) if any(isinstance(w, Figured) for w in words) else " ".join(words)
