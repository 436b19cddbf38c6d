"""A sheet with its pieces: its title, its picture, its table."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from kerfolio.basis.figured import together
from kerfolio.basis.figures import degrees_text
from kerfolio.basis.saying import say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.edition.edition import Edition
from kerfolio.edition.sheet_count import counted_as
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.stacks import zones
from kerfolio.paper.band import Band, Bands, bookmarked, kept, paragraph, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Column, strong_cell, table
from kerfolio.paper.section import note
from kerfolio.paper.type import (
    NOTE_LOUD,
    SECTION,
)
from kerfolio.settling.titles import piece_title
from kerfolio.writing.page import Role, Run

SHEET_HIGH = 120.0
"""Room for the picture of a sheet, mm."""


def sheet_number(edition: Edition, layout: SheetLayout) -> str:
    """Return ``Sheet 1 of 3``."""
    sheets = len(edition.layout.sheets)
    return say(edition.reader, "printed-sheet-number", number=layout.number, sheets=sheets)


def _count(edition: Edition, layout: SheetLayout) -> str:
    words = counted_as(edition).get(layout.sheet)
    return f" {words[:1].upper()}{words[1:]}." if words else ""


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
) -> Bands:
    """Return a sheet's page, with words that follow its thickness as they are ``told``."""
    words = sheet_number(edition, layout)
    large = paragraph((Run(words, SECTION),), grid.width, 9.0, role=Role.TITLE)
    title = bookmarked(large, words)
    sheet, reader = edition.settled.sheet(layout.sheet), edition.reader
    lies = say(
        reader,
        "printed-sheet-lies",
        size=sheet_text(layout.size, reader),
        grain=int(sheet.stock.grain),
    )
    hatched = f" {say(reader, 'printed-hatched')}" if zones(sheet, layout.size) else ""
    rest = f". {lies}{_count(edition, layout)}{hatched}"
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
    reader = edition.reader
    columns = (
        Column(head=say(reader, "printed-mark")),
        Column(head=say(reader, "printed-piece"), grows=True),
        Column(head=say(reader, "printed-overall"), number=True),
        Column(head=say(reader, "printed-turned"), number=True),
    )
    rows = [
        (
            strong_cell(marks[each.piece]),
            piece_title(edition.plan, each.piece, reader),
            sizes[each.part],
            degrees_text(each.turn) if each.turn else "–",
        )
        for each in sorted(layout.placements, key=lambda each: order[each.piece])
    ]
    return table(columns, rows, grid.width)
