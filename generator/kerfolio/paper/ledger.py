"""Tables: no boxes, hairlines between rows, the head repeated on every page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.paper.band import Band, Bands, baseline
from kerfolio.paper.type import (
    CAPS,
    CAPS_LEADING,
    CELL,
    CELL_LEADING,
    CELL_STRONG,
    FIRM,
    HAIR,
    caps,
)
from kerfolio.writing.page import Mark, Passage, Role, Rule, Run, Text
from kerfolio.writing.setting import lines, width

_GAP = 4.0
_PAD = 1.15


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column's head; numbers stand at the right (``number``); ``grows`` takes spare width."""

    head: str
    number: bool = False
    grows: bool = False
    least: float = 0.0


Cell = str | tuple[Run, ...]
"""Plain text, or runs with styles of their own."""


def strong_cell(text: str) -> tuple[Run, ...]:
    """Return a cell in the heavier cut."""
    return (Run(text, CELL_STRONG),)


def _cell_runs(cell: Cell) -> tuple[Run, ...]:
    return (Run(cell, CELL),) if isinstance(cell, str) else cell


def table(columns: Sequence[Column], rows: Sequence[Sequence[Cell]], measure: float) -> Bands:
    """Return a table ``measure`` mm wide as bands, a row each; nothing for no rows.

    Columns are as wide as their longest entry; those that grow share what is left, and wrap
    where that is too little; the last of them takes what is over. The first row stays with the
    head, the last two rows together.
    """
    if not rows:
        return ()
    cells = [[_cell_runs(cell) for cell in row] for row in rows]
    widths = _widths(columns, cells, measure)
    head = _head(columns, widths, measure)
    bands = []
    for index, row in enumerate(cells):
        last = index == len(cells) - 1
        stick = index == len(cells) - 2
        bands.append(replace(_row(columns, row, widths, measure, last), stick=stick, head=(head,)))
    return (head, *bands)


def _widths(
    columns: Sequence[Column], cells: Sequence[Sequence[tuple[Run, ...]]], measure: float
) -> list[float]:
    natural = [
        max(width((caps(column.head),)), column.least, *(width(row[index]) for row in cells))
        for index, column in enumerate(columns)
    ]
    room = measure - _GAP * (len(columns) - 1)
    growing = [index for index, column in enumerate(columns) if column.grows]
    if not growing:
        return natural
    fixed = sum(each for index, each in enumerate(natural) if index not in growing)
    return _shared(natural, growing, max(room - fixed, 12.0 * len(growing)))


def _shared(natural: Sequence[float], growing: Sequence[int], room: float) -> list[float]:
    """Give the growing columns their own width where all fit, the narrow ones first where not."""
    widths = list(natural)
    left, waiting = room, sorted(growing, key=lambda index: natural[index])
    while waiting:
        index = waiting.pop(0)
        widths[index] = min(natural[index], left / (len(waiting) + 1))
        left -= widths[index]
    widths[growing[-1]] += max(0.0, left)
    return widths


def _edges(widths: Sequence[float]) -> list[float]:
    return [sum(widths[:index]) + _GAP * index for index in range(len(widths))]


def _placed(column: Column, left: float, wide: float) -> tuple[float, Anchor]:
    return (left + wide, Anchor.END) if column.number else (left, Anchor.START)


def _head(columns: Sequence[Column], widths: Sequence[float], measure: float) -> Band:
    height = CAPS_LEADING + 1.6
    marks: list[Mark] = [
        Rule(x=0, y=0, to_x=measure, to_y=0, width=FIRM),
        Rule(x=0, y=-height, to_x=measure, to_y=-height, width=HAIR, ink=Ink.SOFT),
    ]
    texts: list[Mark] = []
    for column, left, wide in zip(columns, _edges(widths), widths, strict=True):
        x, anchor = _placed(column, left, wide)
        run = caps(column.head)
        # the space after the last letter would push a right-hand head off its column
        shift = CAPS.tracking / 1000 * CAPS.em if column.number else 0.0
        y = -0.8 - baseline((run,), CAPS_LEADING)
        texts.append(Text(x=x + shift, y=y, runs=(run,), anchor=anchor))
    return Band(
        height=height,
        stick=True,
        passages=(
            Passage(marks=tuple(marks), role=Role.DECORATION),
            Passage(marks=tuple(texts)),
        ),
    )


def _row(
    columns: Sequence[Column],
    row: Sequence[tuple[Run, ...]],
    widths: Sequence[float],
    measure: float,
    last: bool,
) -> Band:
    broken = [lines(cell, wide + 0.01) for cell, wide in zip(row, widths, strict=True)]
    height = max(len(cell) for cell in broken) * CELL_LEADING + 2 * _PAD
    texts: list[Mark] = []
    for column, cell, left, wide in zip(columns, broken, _edges(widths), widths, strict=True):
        x, anchor = _placed(column, left, wide)
        for index, line in enumerate(cell):
            y = -_PAD - index * CELL_LEADING - baseline(line, CELL_LEADING)
            texts.append(Text(x=x, y=y, runs=line, anchor=anchor))
    rule = Rule(
        x=0,
        y=-height,
        to_x=measure,
        to_y=-height,
        width=FIRM if last else HAIR,
        ink=Ink.INK if last else Ink.FAINT,
    )
    return Band(
        height=height,
        passages=(
            Passage(marks=(rule,), role=Role.DECORATION),
            Passage(marks=tuple(texts)),
        ),
    )
