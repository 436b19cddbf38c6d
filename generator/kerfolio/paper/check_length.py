"""Lengths of known size in the margins of a full-size print, to be measured with a rule."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.drawing.vocabulary import Ink
from kerfolio.paper.tiling import EDGE, MARGIN
from kerfolio.writing.page import Mark, Rule, Run, Text
from kerfolio.writing.typeface import Face, Style, width_of

LENGTHS: dict[str, tuple[str, float]] = {"mm": ("100 mm", 100.0), "in": ("4 in", 101.6)}
"""What is written beside each length, and the length in mm, by its unit."""

LINE = 0.13
_FROM_EDGE = (EDGE + 1.1, EDGE + 3.1)  # of the two lines, mm
_TICK = 0.8
SMALLEST = 7.5
"""Points of the smallest letters on templates: paper lies on a bench, further off than a book."""
_STYLE = Style(face=Face.SANS_STRONG, points=SMALLEST)
_HALF = 0.88
"""Half the height of a figure in it, mm."""


def check_lengths(page: tuple[float, float], reader: Reader = METRIC) -> tuple[Mark, ...]:
    """Return lines of 100 mm and 4 in along the top and the left edge of a page (mm).

    That in the reader's unit lies nearest to the edge.
    """
    marks: list[Mark] = []
    units = sorted(LENGTHS, key=lambda unit: unit != reader.unit)
    for (words, length), away in zip((LENGTHS[unit] for unit in units), _FROM_EDGE, strict=True):
        marks += _across(words, length, page[1] - away)
        marks += _up(words, length, away, page[1])
    return tuple(marks)


def _line(x: float, y: float, to_x: float, to_y: float) -> Rule:
    return Rule(x=x, y=y, to_x=to_x, to_y=to_y, width=LINE, ink=Ink.INK)


def _across(words: str, length: float, y: float) -> Iterator[Mark]:
    yield _line(MARGIN, y, MARGIN + length, y)
    for x in (MARGIN, MARGIN + length):
        yield _line(x, y - _TICK, x, y + _TICK)
    yield Text(x=MARGIN + length + 1.5, y=y - _HALF, runs=(Run(words, _STYLE),))


def _up(words: str, length: float, x: float, height: float) -> Iterator[Mark]:
    top = height - MARGIN
    yield _line(x, top - length, x, top)
    for y in (top - length, top):
        yield _line(x - _TICK, y, x + _TICK, y)
    # read from below, before the line's lower end
    yield Text(
        x=x + _HALF,
        y=top - length - 1.5 - width_of(words, _STYLE),
        runs=(Run(words, _STYLE),),
        angle=90.0,
    )
