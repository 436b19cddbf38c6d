"""The type of everything printed: a serif to read, a sans for labels and tables; one scale."""

from __future__ import annotations

from kerfolio.drawing.vocabulary import Ink
from kerfolio.writing.page import Run
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style

READING = Style(face=Face.SERIF, points=10.2)
SECTION = Style(face=Face.SERIF, points=21)
HEADING = Style(face=Face.SERIF_STRONG, points=13)
CELL = Style(face=Face.SANS, points=8.8)
CELL_STRONG = Style(face=Face.SANS_STRONG, points=8.8)
CELL_SOFT = Style(face=Face.SANS, points=8.8, ink=Ink.SOFT)
NOTE = Style(face=Face.SANS, points=8.2, ink=Ink.SOFT)
NOTE_LOUD = Style(face=Face.SANS_STRONG, points=8.2, ink=Ink.ACCENT)
CAPS = Style(face=Face.SANS_STRONG, points=7.5, ink=Ink.SOFT, tracking=85)
CAPS_LOUD = Style(face=Face.SANS_STRONG, points=7.5, ink=Ink.ACCENT, tracking=85)
FOOT = Style(face=Face.SANS, points=7.5, ink=Ink.SOFT)

READING_LEADING = 14.2 * MM_PER_POINT
CELL_LEADING = 11.4 * MM_PER_POINT
NOTE_LEADING = 10.8 * MM_PER_POINT
CAPS_LEADING = 9.6 * MM_PER_POINT

HAIR = 0.1
FINE = 0.2
FIRM = 0.35


def caps(text: str, style: Style = CAPS) -> Run:
    """Return a head in spaced capitals, in place of small capitals."""
    return Run(text.upper(), style)
