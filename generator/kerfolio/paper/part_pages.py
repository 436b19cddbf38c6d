"""Every part drawn with its sizes, several to a page, and every sheet with its pieces."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.basis.figured import together
from kerfolio.basis.figures import degrees_text
from kerfolio.basis.lengths import size_text
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import reading_in, sold_in
from kerfolio.basis.words import counted
from kerfolio.drawing.layout_view import layout_view
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edge_words import EDGE_MAP
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import file_words
from kerfolio.edition.sheet_count import counted_as
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.stacks import zones
from kerfolio.paper.band import Band, Bands, beside, bookmarked, indented, kept, paragraph, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Column, strong_cell, table
from kerfolio.paper.picture import drawing_band
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import note, section
from kerfolio.paper.type import (
    CELL,
    CELL_LEADING,
    CELL_STRONG,
    HEADING,
    NOTE,
    NOTE_LEADING,
    NOTE_LOUD,
    SECTION,
)
from kerfolio.settling.settled import SettledPart
from kerfolio.writing.page import Role, Run

PARTS_TITLE = "Parts, drawn"
SHEETS_TITLE = "Pieces on sheets"
_CELL_GAP = 8.0
_ROW_GAP = 9.0
_SHARE_HIGH = 0.3  # of the page, for a row of parts
SHEET_HIGH = 120.0
"""Room for the picture of a sheet, mm."""
_LONG = 2.6
"""A part longer than this many times its height takes the whole width of the page."""


def parts_drawn_section(edition: Edition, grid: Grid) -> Bands:
    """Return the parts' pictures, two to a row, long ones alone."""
    words = (
        "Each part from its show face, the face the cutter enters. Dark areas are cut to a depth "
        "only. The arrow is the grain of the face."
    )
    if any(part.edges for part in edition.settled.parts):
        words = f"{words} {EDGE_MAP}"
    bands: list[Band] = [*section(PARTS_TITLE, grid, new_page=True)]
    bands += kept(plain(words, grid.main), with_next=True)
    rows = _rows(edition.settled.parts)
    for index, row in enumerate(rows):
        bands += spaced(_row(edition, row, grid), 6.0 if index == 0 else _ROW_GAP)
    return tuple(bands)


def _rows(parts: Sequence[SettledPart]) -> list[tuple[SettledPart, ...]]:
    """Return the parts in their order, each second shape of a pair moved up beside the first."""
    rows: list[tuple[SettledPart, ...]] = []
    half = -1
    for part in parts:
        if _is_long(part):
            rows.append((part,))
        elif half < 0:
            half = len(rows)
            rows.append((part,))
        else:
            rows[half] = (*rows[half], part)
            half = -1
    return rows


def _is_long(part: SettledPart) -> bool:
    return part.size[0] > _LONG * part.size[1]


def _row(edition: Edition, row: Sequence[SettledPart], grid: Grid) -> Bands:
    wide = grid.width if _is_long(row[0]) else _half(grid)
    most = _SHARE_HIGH * grid.height
    views = [part_view(edition.settled, part, (wide, most), edition.first) for part in row]
    high = max(view.height for view in views)
    columns: Bands = ()
    for index, (part, view) in enumerate(zip(row, views, strict=True)):
        column = indented(
            _part_cell(part, view, wide, high, edition.first), index * (wide + _CELL_GAP)
        )
        columns = beside(columns, column) if columns else column
    return kept(columns)


def _half(grid: Grid) -> float:
    return (grid.width - _CELL_GAP) / 2


def _part_cell(part: SettledPart, view: Drawing, wide: float, high: float, first: str) -> Bands:
    """Return a part's picture standing on the row's common base line, its words under it."""
    figure = drawing_band(view, wide, high)
    lowered = tuple(
        replace(
            passage,
            marks=tuple(replace(mark, x=0.0, y=-high) for mark in passage.marks),
        )
        for passage in figure.passages
    )
    picture = Band(height=high, passages=lowered)
    title = (
        Run(f"{part.mark}  ", CELL_STRONG),
        Run(f"{part.name}, {counted(len(part.pieces), 'piece')}", CELL),
    )
    sheet = f"{part.sheet}, {sold_in(part.thickness, first)}"
    marks = " ".join(piece.mark for piece in part.pieces)
    detail = f"{sheet} · {marks}" if len(part.pieces) > 1 else sheet
    words = (
        *paragraph(title, wide, CELL_LEADING, role=Role.CAPTION),
        *paragraph((Run(detail, NOTE),), wide, NOTE_LEADING, role=Role.CAPTION),
    )
    return kept((picture, *spaced(words, 2.0)))


def sheets_section(edition: Edition, grid: Grid) -> Bands:
    """Return a page for every sheet: its picture, then its pieces."""
    bands: list[Band] = []
    for index, layout in enumerate(edition.layout.sheets):
        head = section(SHEETS_TITLE, grid, new_page=True) if index == 0 else ()
        page = sheet_page(edition, layout, grid)
        bands += (*head, *page) if head else (replace(page[0], fresh=True), *page[1:])
    return tuple(bands)


def sheet_title(edition: Edition, layout: SheetLayout) -> str:
    """Return ``Sheet 1 of 3``."""
    return f"Sheet {layout.number} of {len(edition.layout.sheets)}"


def sheet_words(edition: Edition, layout: SheetLayout) -> str:
    """Return what to lay on the machine: ``Birch plywood 18 mm (ply), measured 17.8 mm``."""
    sheet = edition.settled.sheet(layout.sheet)
    measured = reading_in(sheet.thickness, edition.first)
    return f"{sheet.stock.title} ({sheet.name}), drawn for a measured {measured}"


def _count(edition: Edition, layout: SheetLayout) -> str:
    words = counted_as(edition).get(layout.sheet)
    return f" {words[:1].upper()}{words[1:]}." if words else ""


def sheet_page(edition: Edition, layout: SheetLayout, grid: Grid) -> Bands:
    """Return a sheet's title, picture and table of pieces, for one page where they fit."""
    settled, first = edition.settled, edition.first
    picture = drawing_band(
        layout_view(settled, layout, (grid.width, SHEET_HIGH), first), grid.width, SHEET_HIGH
    )
    told = SheetTold(
        stock=sheet_words(edition, layout),
        file=file_words(edition, layout.number),
        sizes={part.name: size_text(part.size, first) for part in settled.parts},
    )
    return sheet_bands(edition, layout, grid, told, picture)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetTold:
    """What a sheet's page tells that follows its thickness: stock, its file, sizes by part."""

    stock: str
    file: str
    sizes: Mapping[str, str]


def sheet_bands(
    edition: Edition,
    layout: SheetLayout,
    grid: Grid,
    told: SheetTold,
    picture: Band,
    *,
    alone: bool = False,
) -> Bands:
    """Return a sheet's page, with words that follow its thickness as they are ``told``.

    Where sheets stand ``alone`` each is a bookmark.
    """
    words = sheet_title(edition, layout)
    title = paragraph((Run(words, HEADING),), grid.width, 6.0, role=Role.HEADING)
    if alone:
        large = paragraph((Run(words, SECTION),), grid.width, 9.0, role=Role.TITLE)
        title = bookmarked(large, words)
    sheet = edition.settled.sheet(layout.sheet)
    rest = (
        f". {sheet_text(layout.size, edition.first)}, show face up"
        f"{', grain from left to right' if sheet.stock.grain else ''}.{_count(edition, layout)}"
        f"{' Hatched: kept clear for clamps.' if zones(sheet, layout.size) else ''}"
    )
    return (
        *kept(title, with_next=True),
        *kept(note(together(told.stock, rest), grid.width), with_next=True),
        *kept(note(told.file, grid.width, NOTE_LOUD), with_next=True),
        *spaced(kept((picture,), with_next=True), 5.0),
        *spaced(_pieces(edition, layout, grid, told.sizes), 6.0),
    )


def _pieces(edition: Edition, layout: SheetLayout, grid: Grid, sizes: Mapping[str, str]) -> Bands:
    pieces = [piece for part in edition.settled.parts for piece in part.pieces]
    marks = {piece.label: piece.mark for piece in pieces}
    pieces.sort(key=lambda piece: piece.copy)
    order = {piece.label: number for number, piece in enumerate(pieces)}
    columns = (
        Column(head="Mark"),
        Column(head="Piece", grows=True),
        Column(head="Overall size", number=True),
        Column(head="Turned", number=True),
    )
    rows = [
        (
            strong_cell(marks[each.piece]),
            each.piece,
            sizes[each.part],
            degrees_text(each.turn) if each.turn else "–",
        )
        for each in sorted(layout.placements, key=lambda each: order[each.piece])
    ]
    return table(columns, rows, grid.width)
