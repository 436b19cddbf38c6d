"""Small wordings that several pages share."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.thickness import sold_range_in
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition

_MOST_MARKS = 8


def size_heads(first: str) -> tuple[str, str]:
    """Return the heads of the two columns of sizes."""
    heads = ("Size, mm", "Size, in")
    return heads if first == "mm" else (heads[1], heads[0])


def marks_text(marks: Sequence[str]) -> str:
    """Return the marks of pieces, or the first and the last of many."""
    return " ".join(marks) if len(marks) <= _MOST_MARKS else f"{marks[0]} to {marks[-1]}"


def published_for(edition: Edition) -> str:
    """Return the range of thicknesses for every sheet: ``17.2 to 18.6 mm``."""
    words = []
    for sheet in edition.settled.sheets:
        span = sold_range_in(*sheet.published, edition.first)
        words.append(f"{span} {sheet.name}" if len(edition.settled.sheets) > 1 else span)
    return listed(words)
