"""The page to print alone before templates: is the print true, and which pages hold which part?"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from kerfolio.basis.lengths import inch_text, mm_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import ByUnit
from kerfolio.basis.saying import say
from kerfolio.basis.thickness import precise_in
from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.edition.by_hand import ByHand
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, beside, bookmarked, indented, paragraph, spaced
from kerfolio.paper.before_sawing import before_sawing
from kerfolio.paper.beside_tiles import TEXT, figured_lines, template_grid, template_pages
from kerfolio.paper.frame import frame
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Cell, Column, strong_cell, table
from kerfolio.paper.running_text import plain
from kerfolio.paper.template_title import Paged, Titled
from kerfolio.paper.tiling import full_step
from kerfolio.paper.type import (
    CAPS_LEADING,
    CELL,
    CELL_STRONG,
    HAIR,
    NOTE,
    NOTE_LEADING,
    SECTION,
    caps,
)
from kerfolio.writing.page import Mark, Page, Passage, Role, Rule, Run, Text

SQUARES = {"mm": 100.0, "in": 101.6}
"""Side of the check square by the unit shown first, mm: 100 mm, or 4 in."""
CARD = (85.60, 53.98)
"""A bank card, mm: size ID-1 of ISO/IEC 7810 (from memory)."""

_GAP = 8.0
_ACROSS, _MOST_ACROSS = ((1, 6), (2, 10)), 3
"""How many parts stand in one column or two, as many as are left room for; beyond, in three."""
_PAGES = 26.0
"""What their pages take beside them with the gaps, mm."""
_SIDE, _OTHER = ByUnit("100 mm", "4 in"), ByUnit("4 in", "100 mm")
_WITHIN = ByUnit("0.5 mm", "1/64 in")
_CARD_SIZE = ByUnit("85.60 × 53.98 mm", "3.370 × 2.125 in")


def opening_pages(
    parts: Sequence[tuple[Titled, Paged]],
    paper: PaperStock,
    pages: int,
    hand: ByHand | None = None,
) -> tuple[Page, ...]:
    """Return the page: check square, card gauge, what to do when one direction is off.

    Which of the file's ``pages`` hold which part follows, and on a new page what to know before
    anything is sawn: ``hand`` tells whether the plan can be cut so at all.
    """
    grid, titled = template_grid(paper), parts[0][0]
    reader = titled.reader
    bands = (
        *_titles(titled, grid),
        *_checks(grid, reader),
        *spaced(_remedies(paper, grid, reader), _GAP),
        *spaced(_contents(parts, grid), _GAP),
        *before_sawing(parts, hand, grid),
    )
    return template_pages(bands, titled, say(reader, "firstprint-templates"), grid, pages)


def _titles(titled: Titled, grid: Grid) -> Bands:
    reader = titled.reader
    head = say(reader, "firstprint-title")
    title = paragraph((Run(head, SECTION),), grid.width, 9.0, role=Role.TITLE)
    words = say(reader, "firstprint-what", plan=titled.title)
    sheets = say(reader, "firstprint-for", sheets=titled.sheets)
    line = Rule(x=0, y=0, to_x=grid.width, to_y=0, width=HAIR * 2)
    ruled = Band(height=4.0, passages=(Passage(marks=(line,), role=Role.DECORATION),), space=2.0)
    return (
        *bookmarked(title, head),
        *spaced(plain(words, grid.width, TEXT), 0.5),
        *figured_lines(sheets, grid.width),
        ruled,
    )


def _contents(parts: Sequence[tuple[Titled, Paged]], grid: Grid) -> Bands:
    """Return which pages hold which part, side by side where they are many."""
    across = next((each for each, most in _ACROSS if len(parts) <= most), _MOST_ACROSS)
    least = grid.width / across - _PAGES if across > 1 else 0.0
    reader = parts[0][0].reader
    columns = (
        Column(head=say(reader, "firstprint-part"), grows=True, least=least),
        Column(head=say(reader, "firstprint-pages"), number=True),
    )
    high = -(-len(parts) // across)
    stacks = (map(_row, parts[start : start + high]) for start in range(0, len(parts), high))
    rows = [
        tuple(cell for one in each for cell in one)
        for each in zip_longest(*stacks, fillvalue=("", ""))
    ]
    return table(columns * across, rows, grid.width)


def _row(each: tuple[Titled, Paged]) -> tuple[Cell, Cell]:
    titled, paged = each
    name = (*strong_cell(f"{titled.mark}  "), Run(f"{titled.called}, {titled.cut}", CELL))
    return name, paged.words(titled.reader)


def _checks(grid: Grid, reader: Reader) -> Bands:
    """Return the square with, beside it, the card and what to look for."""
    x = SQUARES[reader.unit] + (
        14.0 if reader.unit == "in" else 9.0
    )  # clear of the other length's name
    room = grid.width - x
    square = _square(reader)
    words = (
        *paragraph((caps(say(reader, "firstprint-measure-head")),), room, CAPS_LEADING),
        *spaced(plain(" ".join(_measuring(reader)), room, TEXT), 0.8),
        *spaced(paragraph((caps(say(reader, "firstprint-no-rule")),), room, CAPS_LEADING), 4.0),
        *spaced(plain(say(reader, "firstprint-card", size=_card_size(reader)), room, TEXT), 0.8),
    )
    return beside(indented(words, x), (square,))


def _measuring(reader: Reader) -> tuple[str, str]:
    within = reader.number(_WITHIN.told(reader))
    side = say(reader, "firstprint-measure", side=_SIDE.told(reader), within=within)
    return side, say(reader, f"firstprint-other-{reader.unit}", other=_OTHER.told(reader))


def _card_size(reader: Reader) -> str:
    return reader.number(_CARD_SIZE.told(reader))


def _square(reader: Reader) -> Band:
    square = SQUARES[reader.unit]
    left = (square - CARD[0]) / 2
    card_y = -square + 10.0
    side = (Run(_SIDE.told(reader), CELL_STRONG),)
    marks: list[Mark] = [
        *frame((0, -square), (square, square), 0.18, Ink.INK),
        *frame((left, card_y), CARD, 0.18, Ink.ACCENT),
        *_ticks(reader),
        Text(x=square / 2, y=-7.0, runs=side, anchor=Anchor.MIDDLE),
        Text(x=left - 1.6, y=-square / 2, runs=side, anchor=Anchor.MIDDLE, angle=90),
        Text(
            x=square / 2,
            y=card_y + CARD[1] / 2,
            runs=(Run(say(reader, "firstprint-a-card", size=_card_size(reader)), NOTE),),
            anchor=Anchor.MIDDLE,
        ),
    ]
    alt = say(reader, "firstprint-alt", side=_SIDE.told(reader))
    passage = Passage(marks=tuple(marks), role=Role.FIGURE, alt=alt)
    return Band(height=max(SQUARES.values()), passages=(passage,))


def _ticks(reader: Reader) -> tuple[Mark, ...]:
    """Return the ends of the other length from the square's upper left corner, on both sides."""
    end = SQUARES["mm" if reader.unit == "in" else "in"]
    name = (Run(_OTHER.told(reader), NOTE),)
    return (
        Rule(x=end, y=-3.0, to_x=end, to_y=0.0, width=0.13, ink=Ink.SOFT),
        Text(x=max(SQUARES.values()) + 0.8, y=-2.6, runs=name),
        Rule(x=0.0, y=-end, to_x=3.0, to_y=-end, width=0.13, ink=Ink.SOFT),
        Text(x=4.0, y=-max(SQUARES.values()) - 2.2, runs=name),
    )


def _remedies(paper: PaperStock, grid: Grid, reader: Reader) -> Bands:
    """Return what to do when both directions, or only one, come out wrong."""
    left = (grid.width - 8.0) * 0.6
    right = grid.width - 8.0 - left
    side = _SIDE.told(reader)
    wrong = f"{say(reader, 'firstprint-off')} {say(reader, 'firstprint-off-tiles', side=side)}"
    text = (
        *paragraph((caps(say(reader, "firstprint-off-head")),), left, CAPS_LEADING),
        *spaced(plain(wrong, left, TEXT), 0.8),
    )
    return beside(indented(_shifts(paper, right, reader), left + 8.0), text)


def _shifts(paper: PaperStock, measure: float, reader: Reader) -> Bands:
    """Return how far to shift tiles; it is the same for every part, however its paper lies."""
    square, step = SQUARES[reader.unit], _WRONG_BY[reader.unit]
    columns = (
        Column(head=say(reader, "firstprint-reads", side=_SIDE.told(reader)), grows=True),
        Column(head=say(reader, "firstprint-short-edge"), number=True),
        Column(head=say(reader, "firstprint-long-edge"), number=True),
    )
    steps = full_step((paper.width, paper.height))
    rows = [
        (
            precise_in(square + times * step, reader),
            *(_shift(abs(times) * step / square * each, reader) for each in steps),
        )
        for times in (-2, -1, 1, 2)
    ]
    words = _small(say(reader, "firstprint-shift"), measure)
    return (*table(columns, rows, measure), *spaced(words, 1.2))


def _shift(mm: float, reader: Reader) -> str:
    return inch_text(mm, 64) if reader.unit == "in" else mm_text(mm, reader=reader)


_WRONG_BY = {"mm": 0.5, "in": 25.4 / 64}
"""Steps of the table, mm."""


def _small(text: str, measure: float) -> Bands:
    return paragraph((Run(text, NOTE),), measure, NOTE_LEADING)
