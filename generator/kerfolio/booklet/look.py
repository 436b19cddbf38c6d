"""How a booklet looks: the colours and families that its template is handed."""

from __future__ import annotations

from dataclasses import dataclass

SANS, SERIF = "Source Sans Pro", "Source Serif Pro"


@dataclass(frozen=True, slots=True, kw_only=True)
class BookletLook:
    """Colours as ``#rrggbb`` on white paper; families for headings, reading and labels.

    ``soft`` is for what is said in passing, ``line`` for hairlines, ``tint`` behind what stands
    apart, ``caution`` for what can hurt.
    """

    accent: str = "#1c5c46"
    ink: str = "#16201d"
    soft: str = "#54605c"
    line: str = "#b9c3c0"
    tint: str = "#eef3f1"
    caution: str = "#a33a12"
    heads: str = SANS
    reads: str = SERIF
    labels: str = SANS
