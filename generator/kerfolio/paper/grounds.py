"""What figures rest on: each assumption with its source, in small print."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.drawing.vocabulary import Ink
from kerfolio.paper.band import Band, Bands, paragraph, spaced
from kerfolio.paper.type import NOTE, NOTE_LEADING, strong
from kerfolio.shop.assumption import Assumption
from kerfolio.writing.page import Run

_TEXT = replace(NOTE, ink=Ink.INK)
_SPACE = 0.5


def grounds(assumptions: Sequence[Assumption], measure: float) -> Bands:
    """Return a paragraph for each: what it is, its value, and the source in soft ink."""
    bands: list[Band] = []
    for each in assumptions:
        lines = paragraph(tuple(_runs(each)), measure, NOTE_LEADING)
        bands += spaced(lines, _SPACE if bands else 0.0)
    return tuple(bands)


def _runs(each: Assumption) -> Iterator[Run]:
    yield Run(each.label, strong(_TEXT))
    yield Run(f"  {each.value}", _TEXT)
    if each.source != "-":
        yield Run(f" · {each.source}", NOTE)
