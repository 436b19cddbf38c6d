"""How a booklet looks: the colours and families that its template is handed."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.look import Look

SANS, SERIF = "Source Sans Pro", "Source Serif Pro"


@dataclass(frozen=True, slots=True, kw_only=True)
class BookletLook:
    """Colours as ``#rrggbb`` on white paper; families for headings, reading and labels.

    ``soft`` is for what is said in passing, ``line`` for hairlines, ``tint`` behind what stands
    apart, ``caution`` for what can hurt.
    """

    accent: str
    ink: str
    soft: str
    line: str
    tint: str
    caution: str
    heads: str
    reads: str
    labels: str


def booklet_look(look: Look) -> BookletLook:
    """Return a workshop's look on paper."""
    paper, pair = palettes_of(look).paper, look.type
    return BookletLook(
        accent=paper[Ink.ACCENT],
        ink=paper[Ink.INK],
        soft=paper[Ink.SOFT],
        line=paper[Ink.FAINT],
        tint=paper[Ink.WASTE],
        caution=paper[Ink.BRIDGE],
        heads=SERIF if pair.heads_in_serif else SANS,
        reads=SERIF if pair.reads_in_serif else SANS,
        labels=SERIF if pair.labels_in_serif else SANS,
    )
