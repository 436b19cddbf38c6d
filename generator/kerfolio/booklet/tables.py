"""Tables as the template reads them: what each column holds, how wide it grows, decimals level."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any

from kerfolio.booklet.lines import Lines, Piece
from kerfolio.document.blocks import Cell, Column, Kind, Table
from kerfolio.document.words import Words, plain
from kerfolio.model.prose import Alignment, plain_text
from kerfolio.model.prose import Table as ToldTable
from kerfolio.writing.typeface import Face, Style, width_of

_SHORT = 22
"""Letters that a column of text takes without being made to break."""
_LONG = 70
"""Letters from which on longer text earns a column no more room."""

_HEAD, _CELL, _BELOW = (
    Style(face=Face.SANS_STRONG, points=8.0),
    Style(face=Face.SANS, points=8.8),
    Style(face=Face.SANS, points=7.8),
)
"""How the template sets heads, cells, and small lines below these (``look.typ``)."""
_GAP = 4.0
"""mm between columns."""

_ALIGNED = {Alignment.START: "left", Alignment.CENTRE: "center", Alignment.END: "right"}


def table(block: Table, lines: Lines) -> dict[str, Any]:
    """Return a table."""
    rows = [*block.rows, *([block.foot] if block.foot else [])]
    cells = [[_cell(each) for each in row.cells] for row in rows]
    pads = [
        _pads([row[at] for row in cells], column.kind, lines.reader.mark)
        for at, column in enumerate(block.columns)
    ]
    made = [
        {
            "chief": row.chief,
            "cells": [
                _told(cell, block.columns[at].kind, pads[at][index], lines)
                for at, cell in enumerate(cells[index])
            ],
        }
        for index, row in enumerate(rows)
    ]
    columns = [
        _column(column, [plain(row[at].words) for row in cells], lines)
        for at, column in enumerate(block.columns)
    ]
    return {
        "kind": "table",
        "title": lines.text(block.title),
        "titled": block.titled,
        "columns": columns,
        "natural": _natural(columns, made, lines),
        "rows": made[: len(block.rows)],
        "foot": made[-1] if block.foot else None,
    }


def told_table(block: ToldTable, lines: Lines) -> dict[str, Any]:
    """Return a table that a maker wrote."""
    heads = block.head or ((),) * len(block.alignments)
    texts = [
        [plain_text(row[at]) for row in (heads, *block.rows)] for at in range(len(block.alignments))
    ]
    columns = [
        {"head": lines.spans(head), "align": _ALIGNED[alignment], "share": _share(texts[at])}
        for at, (head, alignment) in enumerate(zip(heads, block.alignments, strict=True))
    ]
    rows = [
        {
            "chief": False,
            "cells": [{"line": lines.spans(cell), "below": [], "pad": ""} for cell in row],
        }
        for row in block.rows
    ]
    return {
        "kind": "table",
        "title": "",
        "titled": False,
        "columns": columns,
        "natural": _natural(columns, rows, lines),
        "rows": rows,
        "foot": None,
    }


def _cell(cell: Cell | Words) -> Cell:
    return cell if isinstance(cell, Cell) else Cell(words=cell)


def _told(cell: Cell, kind: Kind, pad: str, lines: Lines) -> dict[str, Any]:
    line: list[Piece] = lines.line(cell.words)
    if kind is Kind.MARK:
        line = [{**piece, "strong": True} for piece in line]
    return {"line": line, "below": [lines.line(each) for each in cell.below], "pad": pad}


def _column(column: Column, texts: Sequence[str], lines: Lines) -> dict[str, Any]:
    right = column.kind in (Kind.NUMBER, Kind.COUNT)
    texts = () if right else (column.head, *texts)
    return {
        "head": lines.line(column.head),
        "align": "right" if right else "left",
        "share": _share(texts),
    }


def _share(texts: Sequence[str]) -> int:
    """Return a column's share of the room that is left; 0 for one as wide as what it holds."""
    longest = max(map(len, texts), default=0)
    return 0 if longest <= _SHORT else min(longest, _LONG)


def _natural(
    columns: Sequence[Mapping[str, Any]], rows: Sequence[Mapping[str, Any]], lines: Lines
) -> float:
    """Return the width in mm of a table none of whose cells breaks.

    Its faces' own advances, not a setting by typst, which would take most of a booklet's time; what
    is a little off does no harm, since columns as wide as what they hold give way.
    """
    led = lines.led
    widths = [
        max(
            _wide(column["head"], _HEAD, led),
            *(
                max(
                    _wide(cell["line"], _CELL, led) + width_of(cell["pad"], _CELL),
                    *(_wide(line, _BELOW, led) for line in cell["below"]),
                    0.0,
                )
                for cell in (row["cells"][at] for row in rows)
            ),
            0.0,
        )
        for at, column in enumerate(columns)
    ]
    return math.fsum(widths) + _GAP * (len(widths) - 1)


def _wide(line: Sequence[Piece], style: Style, led: str) -> float:
    strong = replace(style, face=Face.SANS_STRONG)
    return math.fsum(
        width_of(
            each["text"] + (led if "to" in each else ""),
            strong if "strong" in each or "mark" in each else style,
        )
        for each in line
    )


@cache
def _number(mark: str) -> re.Pattern[str]:
    """Return the pattern of a number with that decimal mark: its decimals, and what follows."""
    grouping = "." if mark == "," else ","
    return re.compile(rf"[-−+]?\d[\d{grouping}  ]*?({re.escape(mark)}\d+)?(\D*)")


def _pads(cells: Sequence[Cell], kind: Kind, mark: str) -> list[str]:
    """Return what stands unseen behind each number so that decimal marks are level.

    Nothing where a cell is no number, or is told with something else behind it than the others.
    """
    nothing = [""] * len(cells)
    if kind is not Kind.NUMBER:
        return nothing
    texts = [plain(cell.words).strip() for cell in cells]
    number = _number(mark)
    found = [number.fullmatch(text) for text in texts]
    told = [each for each in found if each is not None]
    if len({each[2] for each in told}) != 1 or any(
        text[:1].isdigit() and each is None for text, each in zip(texts, found, strict=True)
    ):
        return nothing
    decimals = [each[1] or "" for each in told]
    longest = max(decimals, key=len)
    return [longest[len(each[1] or "") :] if each is not None else "" for each in found]
