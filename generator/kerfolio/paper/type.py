"""The type of everything printed: a serif to read, a sans for labels and tables; one scale."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.drawing.vocabulary import Ink
from kerfolio.writing.page import Run
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style

READING = Style(face=Face.SERIF, points=10.2)
LEAD = Style(face=Face.SERIF_ITALIC, points=13)
BOOK_TITLE = Style(face=Face.SERIF, points=36)
SECTION = Style(face=Face.SERIF, points=21)
HEADING = Style(face=Face.SERIF_STRONG, points=13)
MINOR = Style(face=Face.SERIF_STRONG, points=10.2)
FIGURES = Style(face=Face.SERIF, points=27, ink=Ink.ACCENT)
CODE = Style(face=Face.SANS, points=9.4)
CELL = Style(face=Face.SANS, points=8.8)
CELL_STRONG = Style(face=Face.SANS_STRONG, points=8.8)
CELL_SOFT = Style(face=Face.SANS, points=8.8, ink=Ink.SOFT)
NOTE = Style(face=Face.SANS, points=8.2, ink=Ink.SOFT)
NOTE_LOUD = Style(face=Face.SANS_STRONG, points=8.2, ink=Ink.ACCENT)
CAPS = Style(face=Face.SANS_STRONG, points=7.5, ink=Ink.SOFT, tracking=85)
CAPS_LOUD = Style(face=Face.SANS_STRONG, points=7.5, ink=Ink.ACCENT, tracking=85)
FOOT = Style(face=Face.SANS, points=7.5, ink=Ink.SOFT)

READING_LEADING = 14.2 * MM_PER_POINT
LEAD_LEADING = 18 * MM_PER_POINT
CELL_LEADING = 11.4 * MM_PER_POINT
NOTE_LEADING = 10.8 * MM_PER_POINT
CAPS_LEADING = 9.6 * MM_PER_POINT

HAIR = 0.1
FINE = 0.2
FIRM = 0.35


def caps(text: str, style: Style = CAPS) -> Run:
    """Return a head in spaced capitals, in place of small capitals."""
    return Run(text.upper(), style)


def italic(style: Style) -> Style:
    """Return the slanted cut of a style."""
    faces = {Face.SERIF: Face.SERIF_ITALIC, Face.SANS: Face.SANS_ITALIC}
    return replace(style, face=faces.get(style.face, style.face))


def emphasised(style: Style) -> Style:
    """Return the cut that stands out beside a style: slanted, or upright where that is slanted."""
    upright = {Face.SERIF_ITALIC: Face.SERIF, Face.SANS_ITALIC: Face.SANS}
    if style.face in upright:
        return replace(style, face=upright[style.face])
    return italic(style)


def strong(style: Style) -> Style:
    """Return the heavier cut of a style."""
    faces = {
        **{Face.SERIF: Face.SERIF_STRONG, Face.SERIF_ITALIC: Face.SERIF_STRONG},
        **{Face.SANS: Face.SANS_STRONG, Face.SANS_ITALIC: Face.SANS_STRONG},
    }
    return replace(style, face=faces.get(style.face, style.face))
