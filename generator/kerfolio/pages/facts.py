"""A plan in one line, for lists of plans."""

from __future__ import annotations

from kerfolio.basis.thickness import sold_range_text
from kerfolio.basis.words import counted
from kerfolio.edition.edition import Edition


def short_line(edition: Edition) -> str:
    """Return how many sheets, boards and pieces it takes, and the thicknesses it is for."""
    sheets = sum(row.count for row in edition.sheets)
    boards = sum(row.count for row in edition.boards)
    pieces = sum(row.count for row in edition.parts)
    counts = ((sheets, "sheet"), (boards, "board"), (pieces, "piece"))
    words = [counted(count, what) for count, what in counts if count]
    spans = [sold_range_text(*each.published, edition.reader) for each in edition.settled.sheets]
    return " · ".join((*words, *spans))
