"""A plan in one line, for lists of plans."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.basis.thickness import sold_range_text
from kerfolio.edition.edition import Edition


def short_line(edition: Edition) -> str:
    """Return how many sheets, boards and pieces it takes, and the thicknesses it is for."""
    sheets = sum(row.count for row in edition.sheets)
    boards = sum(row.count for row in edition.boards)
    pieces = sum(row.count for row in edition.parts)
    reader = edition.reader
    counts = {"sheets": sheets, "boards": boards, "pieces": pieces}
    words = [
        say(reader, f"pagefacts-{each}", count=count) for each, count in counts.items() if count
    ]
    spans = [sold_range_text(*each.published, reader) for each in edition.settled.sheets]
    return " · ".join((*words, *spans))
