"""Lettering as outlines, so that it looks the same where the typeface is not installed."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from math import cos, radians, sin

from fontTools.pens.basePen import decomposeQuadraticSegment
from fontTools.pens.recordingPen import DecomposingRecordingPen

from kerfolio.drawing.lettering import text_width, typeface
from kerfolio.drawing.vocabulary import Anchor, Label
from kerfolio.geometry.contour import Point

_Move = tuple[str, tuple[Point, ...]]
Written = Callable[[float, float], str]
"""Writes a point of the drawing as a file has it."""


def glyph_path(label: Label, written: Written) -> str:
    """Return SVG path words for the label's lettering; empty when it is blank."""
    pen_x = _start(label)
    words: list[str] = []
    for letter in label.text:
        for command, points in _moves(letter, label.strong):
            placed = [written(*_placed(label, pen_x, point)) for point in points]
            words.append(command + " ".join(placed))
        pen_x += text_width(letter, label.height, strong=label.strong)
    return "".join(words)


def _start(label: Label) -> float:
    width = text_width(label.text, label.height, strong=label.strong)
    return {Anchor.START: 0.0, Anchor.MIDDLE: -width / 2, Anchor.END: -width}[label.anchor]


def _placed(label: Label, pen_x: float, point: Point) -> Point:
    u, v = pen_x + point[0] * label.height, point[1] * label.height
    along, across = cos(radians(label.angle)), sin(radians(label.angle))
    return label.at[0] + u * along - v * across, label.at[1] + u * across + v * along


@cache
def _moves(letter: str, strong: bool) -> tuple[_Move, ...]:
    """Return the letter's outline for a font size of 1, as SVG commands with their points."""
    font = typeface(strong)
    name = font.getBestCmap().get(ord(letter), ".notdef")
    pen = DecomposingRecordingPen(font.getGlyphSet())
    font.getGlyphSet()[name].draw(pen)
    per_em = font["head"].unitsPerEm
    return tuple(
        (command, tuple((x / per_em, y / per_em) for x, y in points))
        for verb, drawn in pen.value
        for command, points in _commands(verb, drawn)
    )


def _commands(verb: str, points: tuple[Point, ...]) -> list[_Move]:
    if verb == "qCurveTo":
        return [("Q", (bend, end)) for bend, end in decomposeQuadraticSegment(points)]
    command = {"moveTo": "M", "lineTo": "L", "closePath": "Z", "endPath": "Z"}[verb]
    return [(command, points)]
