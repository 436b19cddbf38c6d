"""Plain sentences as bands."""

from __future__ import annotations

from kerfolio.paper.band import Bands, paragraph
from kerfolio.paper.type import READING, READING_LEADING
from kerfolio.writing.page import Run
from kerfolio.writing.typeface import Style


def plain(text: str, measure: float, style: Style = READING) -> Bands:
    """Return a text without marks as one paragraph."""
    leading = READING_LEADING * style.points / READING.points
    return paragraph((Run(text, style),), measure, leading)
