"""The page to print alone before templates: is the print true, and which pages hold which part?"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from kerfolio.basis.figured import joined
from kerfolio.basis.lengths import inch_text, mm_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import ByUnit, said
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
_FEW = 6
"""Parts that are listed in one column."""
_PAGES = 26.0
"""What their pages take beside them with the gaps, mm."""
_TITLE = "Print this page alone first"
_FULL_SIZE = "Print at 100 %: “actual size”, without fitting to the page."


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
    return template_pages(bands, titled, "templates", grid, pages)


def _titles(titled: Titled, grid: Grid) -> Bands:
    title = paragraph((Run(_TITLE, SECTION),), grid.width, 9.0, role=Role.TITLE)
    words = f"{titled.title}: templates. {_FULL_SIZE}"
    sheets = joined("", ("For ", titled.sheets))
    line = Rule(x=0, y=0, to_x=grid.width, to_y=0, width=HAIR * 2)
    ruled = Band(height=4.0, passages=(Passage(marks=(line,), role=Role.DECORATION),), space=2.0)
    return (
        *bookmarked(title, _TITLE),
        *spaced(plain(words, grid.width, TEXT), 0.5),
        *figured_lines(sheets, grid.width),
        ruled,
    )


def _contents(parts: Sequence[tuple[Titled, Paged]], grid: Grid) -> Bands:
    """Return which pages hold which part, in two columns where they are many."""
    many = len(parts) > _FEW
    least = grid.width / 2 - _PAGES if many else 0.0
    columns = (Column(head="Part", grows=True, least=least), Column(head="Pages", number=True))
    if not many:
        return table(columns, [_row(each) for each in parts], grid.width)
    half = (len(parts) + 1) // 2
    pairs = zip_longest(map(_row, parts[:half]), map(_row, parts[half:]), fillvalue=("", ""))
    return table((*columns, *columns), [(*one, *other) for one, other in pairs], grid.width)


def _row(each: tuple[Titled, Paged]) -> tuple[Cell, Cell]:
    titled, paged = each
    name = (*strong_cell(f"{titled.mark}  "), Run(f"{titled.called}, {titled.cut}", CELL))
    return name, paged.words


def _checks(grid: Grid, reader: Reader) -> Bands:
    """Return the square with, beside it, the card and what to look for."""
    x = SQUARES[reader.unit] + (
        14.0 if reader.unit == "in" else 9.0
    )  # clear of the other length's name
    room = grid.width - x
    square = _square(reader)
    words = (
        *paragraph((caps("Measure the square"),), room, CAPS_LEADING),
        *spaced(plain(_MEASURE.told(reader), room, TEXT), 0.8),
        *spaced(paragraph((caps("No rule at hand?"),), room, CAPS_LEADING), 4.0),
        *spaced(plain(_CARD.told(reader), room, TEXT), 0.8),
    )
    return beside(indented(words, x), (square,))


_SIDE, _OTHER = ByUnit("100 mm", "4 in"), ByUnit("4 in", "100 mm")
_MEASURE = said(
    "Lay a steel rule along both sides. Each must be {} to within {} (common practice for "
    "cutting by hand). The marks at {} serve {} rule.",
    _SIDE,
    ByUnit("0.5 mm", "1/64 in"),
    _OTHER,
    ByUnit("an inch", "a metric"),
)
_CARD_SIZE = ByUnit("85.60 × 53.98 mm", "3.370 × 2.125 in")
_CARD = said("A bank card covers the outline in the square exactly: {}.", _CARD_SIZE)


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
            runs=(Run(f"a bank card, {_CARD_SIZE.told(reader)}", NOTE),),
            anchor=Anchor.MIDDLE,
        ),
    ]
    passage = Passage(marks=tuple(marks), role=Role.FIGURE, alt=_ALT.told(reader))
    return Band(height=max(SQUARES.values()), passages=(passage,))


_ALT = said("A square of {} with a card", _SIDE)


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


_WRONG = (
    "Both sides wrong by the same: the program scaled the page; look for “fit”, “shrink” or "
    "“scale” and set 100 %. Only one side wrong: the printer feeds paper too far or not far "
    "enough. Use thicker paper, a slower setting or the straight feed, or have the roll page "
    "printed at a shop. "
)
_WRONG_TILES = said(
    "If it stays, lay the tiles by their true distance instead of by the crosses. Measure the {}"
    " at the upper and the left edge of a tile, and move each next tile in the wrong direction"
    " by the length in the table: apart when the print is short, together when it is long. A part"
    " on one page is corrected by hand: its true size stands at the top. Slots follow your sheet,"
    " not paper.",
    _SIDE,
)


def _remedies(paper: PaperStock, grid: Grid, reader: Reader) -> Bands:
    """Return what to do when both directions, or only one, come out wrong."""
    left = (grid.width - 8.0) * 0.6
    right = grid.width - 8.0 - left
    text = (
        *paragraph((caps("When only one direction is off"),), left, CAPS_LEADING),
        *spaced(plain(f"{_WRONG} {_WRONG_TILES.told(reader)}", left, TEXT), 0.8),
    )
    return beside(indented(_shifts(paper, right, reader), left + 8.0), text)


def _shifts(paper: PaperStock, measure: float, reader: Reader) -> Bands:
    """Return how far to shift tiles; it is the same for every part, however its paper lies."""
    square, step = SQUARES[reader.unit], _WRONG_BY[reader.unit]
    columns = (
        Column(head=f"{_SIDE.told(reader)} reads", grows=True),
        Column(head="Short edge", number=True),
        Column(head="Long edge", number=True),
    )
    steps = full_step((paper.width, paper.height))
    rows = [
        (
            precise_in(square + times * step, reader),
            *(_shift(abs(times) * step / square * each, reader) for each in steps),
        )
        for times in (-2, -1, 1, 2)
    ]
    words = (
        "Shift from one tile to the next, along the short or the long edge of the paper: less in "
        "proportion where the map shows them nearer together."
    )
    return (*table(columns, rows, measure), *spaced(_small(words, measure), 1.2))


def _shift(mm: float, reader: Reader) -> str:
    return inch_text(mm, 64) if reader.unit == "in" else mm_text(mm)


_WRONG_BY = {"mm": 0.5, "in": 25.4 / 64}
"""Steps of the table, mm."""


def _small(text: str, measure: float) -> Bands:
    return paragraph((Run(text, NOTE),), measure, NOTE_LEADING)
