"""The type of setup sheets, to be read standing at the machine: as large as the page allows."""

from __future__ import annotations

from dataclasses import dataclass, replace

from kerfolio.drawing.vocabulary import Ink
from kerfolio.paper.type import CELL, CELL_SOFT, NOTE_LOUD
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style

SCALES = tuple(step / 100 for step in range(125, 55, -5))
"""From the largest type to the smallest; at 1 words are set in 13 points."""

TITLE = Style(face=Face.SERIF, points=28)
TIME = Style(face=Face.SERIF, points=28, ink=Ink.ACCENT)
STOCK = Style(face=Face.SANS_STRONG, points=13)
STOCK_SOFT = Style(face=Face.SANS, points=13, ink=Ink.SOFT)
WARNED = replace(NOTE_LOUD, points=9.2)
SMALL = replace(CELL, points=8.2)
SMALL_SOFT = replace(CELL_SOFT, points=8.2)


@dataclass(frozen=True, slots=True)
class SetupType:
    """Styles of what is set as large as there is room for."""

    scale: float

    @property
    def strong(self) -> Style:
        """Names and facts."""
        return Style(face=Face.SANS_STRONG, points=13 * self.scale)

    @property
    def words(self) -> Style:
        """What stands beside them."""
        return Style(face=Face.SANS, points=13 * self.scale)

    @property
    def soft(self) -> Style:
        """Details."""
        return Style(face=Face.SANS, points=10.5 * self.scale, ink=Ink.SOFT)


def leading(style: Style) -> float:
    """Return the distance of lines in a style, mm."""
    return style.points * 1.28 * MM_PER_POINT
