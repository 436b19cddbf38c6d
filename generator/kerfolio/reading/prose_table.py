"""Tables in a text: a head, a line of dashes, rows with as many cells."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from markdown_it.token import Token

from kerfolio.model.prose import Alignment, Spans, Table
from kerfolio.reading.prose_remarks import Remarks, Spot
from kerfolio.reading.prose_spans import spans_of

MOST_COLUMNS = 6
"""More do not stand beside each other in the text column of a booklet."""

DASHES = re.compile(r"\s*\|?\s*:?-+:?\s*(\|\s*:?-+:?\s*)+\|?\s*")
"""The line under a head."""

NO_TABLE = (
    "a table without its line of dashes",
    "Write one under the head, with as many cells: `| --- | --- |`.",
)
_ALIGNMENTS = {
    "text-align:center": Alignment.CENTRE,
    "text-align:right": Alignment.END,
}
_BAR = re.compile(r"(?<!\\)\|")


def read_table(tokens: list[Token], remarks: Remarks, spot_of: Callable[[Token], Spot]) -> Table:
    """Return the table of the parser's tokens; ``spot_of`` tells where a row's text begins."""
    opened = [token for token in tokens if token.type == "th_open"]
    alignments = tuple(
        _ALIGNMENTS.get(str(each.attrGet("style")), Alignment.START) for each in opened
    )
    head, *rows = _rows(tokens, remarks, spot_of)
    begin = spot_of(tokens[0])
    if len(head) > MOST_COLUMNS:
        advice = f"Write at most {MOST_COLUMNS} columns, or a list."
        remarks.refuse(begin, f"a table of {len(head)} columns", advice)
    if not rows:
        remarks.refuse(begin, "a table without rows", "Write its rows under the line of dashes.")
    return Table(alignments=alignments, head=head if any(head) else (), rows=tuple(rows))


def _rows(
    tokens: list[Token], remarks: Remarks, spot_of: Callable[[Token], Spot]
) -> Iterator[tuple[Spans, ...]]:
    cells: list[Spans] = []
    starts: list[int] = []
    row = width = 0
    for token in tokens:
        if token.type == "tr_open":
            row, column = spot_of(token)
            cells, starts = [], _starts(remarks.line(row), column)
            width = width or len(starts)
        elif token.type == "inline":
            after = starts[min(len(cells), len(starts) - 1)]
            cells.append(spans_of(token, remarks, after=after))
        elif token.type == "tr_close":
            if len(starts) > width:
                message, advice = "a cell beside the last column", "Give it a column in the head."
                remarks.refuse((row, starts[width]), message, advice)
            yield tuple(cells)


def _starts(line: str, column: int) -> list[int]:
    """Return the columns in which the cells of a row begin; its text begins at ``column``."""
    bars = [found.end() for found in _BAR.finditer(line)]
    starts = bars if line.startswith("|", column) else [column, *bars]
    return starts if line[starts[-1] :].strip() else starts[:-1] or starts
