"""Tables: no boxes, hairlines between rows, the head repeated on every page."""

from __future__ import annotations

import math
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
_LEAST = 12.0
"""What a column that wraps needs, mm."""
_PAD = 1.15
_MOST_LINES = 20  # of a row that is not parted


Cell = str | tuple[Run, ...]
"""Plain text, or runs with styles of their own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column's head; numbers stand at the right (``number``); ``grows`` takes spare width.

    A plain head is set in capitals on one line; one of runs as it is, on as many as it needs.
    """

    head: Cell
    number: bool = False
    centred: bool = False
    grows: bool = False
    least: float = 0.0


def strong_cell(text: str) -> tuple[Run, ...]:
    """Return a cell in the heavier cut."""
    return (Run(text, CELL_STRONG),)


def _cell_runs(cell: Cell) -> tuple[Run, ...]:
    return (Run(cell, CELL),) if isinstance(cell, str) else cell


def table(columns: Sequence[Column], rows: Sequence[Sequence[Cell]], measure: float) -> Bands:
    """Return a table ``measure`` mm wide as bands, a row each; nothing for no rows.

    Columns are as wide as their longest entry; those that grow share what is left, and wrap
    where that is too little; the last of them takes what is over. Where even that is not enough,
    all columns of words wrap. The first row stays with the head, the last two rows together; a row
    of very many lines may be parted between them.
    """
    if not rows:
        return ()
    cells = [[_cell_runs(cell) for cell in row] for row in rows]
    widths = _widths(columns, cells, measure)
    head = _head(columns, widths, measure)
    bands: list[Band] = []
    for index, row in enumerate(cells):
        last = index == len(cells) - 1
        stick = index == len(cells) - 2
        strips = _row(columns, row, widths, measure, last)
        bands += (*strips[:-1], replace(strips[-1], stick=stick))
    return (head, *(replace(band, head=(head,)) for band in bands))


def _widths(
    columns: Sequence[Column], cells: Sequence[Sequence[tuple[Run, ...]]], measure: float
) -> list[float]:
    natural = _natural(columns, cells)
    room = measure - _GAP * (len(columns) - 1)
    growing = [index for index, column in enumerate(columns) if column.grows]
    if _spare(natural, growing, room) < _LEAST * len(growing):  # long words: all columns give way
        growing = [index for index, column in enumerate(columns) if not column.number]
    if not growing:
        return natural
    return _shared(natural, growing, max(_spare(natural, growing, room), _LEAST * len(growing)))


def _spare(natural: Sequence[float], growing: Sequence[int], room: float) -> float:
    """Return the width that the other columns leave to those that grow."""
    return room - math.fsum(each for index, each in enumerate(natural) if index not in growing)


def _natural(columns: Sequence[Column], cells: Sequence[Sequence[tuple[Run, ...]]]) -> list[float]:
    return [
        max(width(_head_runs(column)), column.least, *(width(row[index]) for row in cells))
        for index, column in enumerate(columns)
    ]


def _head_runs(column: Column) -> tuple[Run, ...]:
    return (caps(column.head),) if isinstance(column.head, str) else column.head


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
    return [math.fsum(widths[:index]) + _GAP * index for index in range(len(widths))]


def _placed(column: Column, left: float, wide: float) -> tuple[float, Anchor]:
    if column.number:
        return left + wide, Anchor.END
    return (left + wide / 2, Anchor.MIDDLE) if column.centred else (left, Anchor.START)


def _head(columns: Sequence[Column], widths: Sequence[float], measure: float) -> Band:
    if all(isinstance(column.head, str) for column in columns):
        leading = CAPS_LEADING
        broken: list[tuple[tuple[Run, ...], ...]] = [(_head_runs(column),) for column in columns]
    else:
        leading = CELL_LEADING
        heads = zip(columns, widths, strict=True)
        broken = [lines(_head_runs(column), wide + 0.01) for column, wide in heads]
    count = max(len(each) for each in broken)
    height = count * leading + 1.6 if count else 0.0
    marks: list[Mark] = [
        Rule(x=0, y=0, to_x=measure, to_y=0, width=FIRM),
        Rule(x=0, y=-height, to_x=measure, to_y=-height, width=HAIR, ink=Ink.SOFT),
    ]
    texts: list[Mark] = []
    for column, head, left, wide in zip(columns, broken, _edges(widths), widths, strict=True):
        x, anchor = _placed(column, left, wide)
        # the space after the last letter would push a right-hand head off its column
        plain = isinstance(column.head, str)
        shift = CAPS.tracking / 1000 * CAPS.em if column.number and plain else 0.0
        for index, line in enumerate(head, start=count - len(head)):
            y = -0.8 - index * leading - baseline(line, leading)
            texts.append(Text(x=x + shift, y=y, runs=line, anchor=anchor))
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
) -> Bands:
    """Return a row, whole or, where no page should be asked to hold it so, a band a line."""
    broken = [lines(cell, wide + 0.01) for cell, wide in zip(row, widths, strict=True)]
    count = max(1, *(len(cell) for cell in broken))
    step = count if count <= _MOST_LINES else 1
    bands = []
    for start in range(0, count, step):
        cells = [cell[start : start + step] for cell in broken]
        top = _PAD if start == 0 else 0.0
        foot = _PAD if start + step == count else 0.0
        height = top + step * CELL_LEADING + foot
        rule = _row_rule(measure, height, last) if foot else ()
        passages = (
            Passage(marks=rule, role=Role.DECORATION),
            Passage(marks=_cell_marks(columns, cells, widths, top), continues=start > 0),
        )
        near = start == 0 or start + 2 * step == count
        bands.append(Band(height=height, passages=passages, stick=near and not foot))
    return tuple(bands)


def _row_rule(measure: float, height: float, last: bool) -> tuple[Mark, ...]:
    ink = Ink.INK if last else Ink.FAINT
    width = FIRM if last else HAIR
    return (Rule(x=0, y=-height, to_x=measure, to_y=-height, width=width, ink=ink),)


def _cell_marks(
    columns: Sequence[Column],
    cells: Sequence[Sequence[tuple[Run, ...]]],
    widths: Sequence[float],
    top: float,
) -> tuple[Mark, ...]:
    texts: list[Mark] = []
    for column, cell, left, wide in zip(columns, cells, _edges(widths), widths, strict=True):
        x, anchor = _placed(column, left, wide)
        for index, line in enumerate(cell):
            y = -top - index * CELL_LEADING - baseline(line, CELL_LEADING)
            texts.append(Text(x=x, y=y, runs=line, anchor=anchor))
    return tuple(texts)
