"""The lists of a booklet: parts, hardware, sheets, boards."""

from __future__ import annotations

import math

from kerfolio.basis.lengths import inch_number, mm_number, size_numbers
from kerfolio.basis.masses import mass_number, mass_pair, mass_unit
from kerfolio.basis.sheet_size import sheet_numbers
from kerfolio.basis.thickness import sold_number
from kerfolio.basis.words import counted
from kerfolio.edition.edge_words import EDGES_TITLE, edges_told
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import drawn_for
from kerfolio.paper.band import Band, Bands, kept, spaced, total
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Cell, Column, strong_cell, table
from kerfolio.paper.phrases import marks_text, size_heads
from kerfolio.paper.section import hung, note, section
from kerfolio.paper.type import CELL_SOFT, CELL_STRONG
from kerfolio.shop.rows import PartRow
from kerfolio.writing.page import Run

PARTS_TITLE = "Parts"
BUYING_TITLE = "What to buy"
_LIST_SPACE = 8.0


def parts_section(edition: Edition, grid: Grid) -> Bands:
    """Return the parts list; sizes in both units, the reader's first."""
    if not edition.parts:
        return ()
    first = edition.first
    one, other = size_heads(first)
    columns = (
        Column(head="Marks", grows=True),
        Column(head="Part", grows=True),
        Column(head="Count", number=True),
        Column(head="Sheet"),
        Column(head=one, number=True),
        Column(head=other, number=True),
        Column(head=f"{mass_unit(first)} each", number=True),
    )
    rows = [_part_cells(row, first) for row in edition.parts]
    count = sum(row.count for row in edition.parts)
    mass = math.fsum(row.count * row.mass for row in edition.parts)
    for_sheets = drawn_for(edition.settled, first)
    words = (
        f"{counted(count, 'piece')}, together {mass_pair(mass, first)[0]}, for {for_sheets}. "
        "Sizes are overall, with tabs; inches are rounded to 1/32. Width first, then height, as "
        "the part is drawn. The mark stands on the part in every drawing."
    )
    bands = section(PARTS_TITLE, grid, new_page=True)
    return (*bands, *table(columns, rows, grid.width), *note(words, grid.width))


def _part_cells(row: PartRow, first: str) -> tuple[Cell, ...]:
    one, other = size_numbers((row.width, row.height), first)
    name: tuple[Run, ...] = (Run(row.part, CELL_STRONG),)
    if row.note:
        name = (*name, Run(f"  {row.note}", CELL_SOFT))
    return (
        strong_cell(marks_text(row.marks)),
        name,
        str(row.count),
        f"{row.sheet} {sold_number(row.thickness, first)}",
        one,
        other,
        mass_number(row.mass, first),
    )


def buying_section(edition: Edition, grid: Grid) -> Bands:
    """Return sheets, boards, hardware and what edges take."""
    lists = (
        ("Sheets", _sheets(edition, grid)),
        ("Boards", _boards(edition, grid)),
        ("Hardware", _hardware(edition, grid)),
        (EDGES_TITLE, _edges(edition, grid)),
    )
    bands: list[Band] = []
    for head, body in lists:
        if body:
            listed = hung(head, body, grid)
            short = total(listed) < grid.height / 2
            bands += spaced(kept(listed) if short else listed, _LIST_SPACE if bands else 0.0)
    return (*section(BUYING_TITLE, grid), *bands) if bands else ()


def _sheets(edition: Edition, grid: Grid) -> Bands:
    first = edition.first
    one, other = size_heads(first)
    columns = (
        Column(head="Count", number=True),
        Column(head="Sheet", grows=True),
        Column(head=f"Thick, {first}", number=True),
        Column(head=one, number=True),
        Column(head=other, number=True),
    )
    rows = [
        (
            strong_cell(str(row.count)),
            f"{row.title} ({row.sheet})",
            sold_number(row.thickness, first),
            *sheet_numbers((row.width, row.height), first),
        )
        for row in edition.sheets
    ]
    return table(columns, rows, grid.main)


def _boards(edition: Edition, grid: Grid) -> Bands:
    first = edition.first
    turn = -1 if first == "in" else 1
    heads = ("Length, mm", "Length, in")[::turn]
    columns = (
        Column(head="Count", number=True),
        Column(head="Board", grows=True),
        Column(head=f"Section, {first}", number=True),
        *(Column(head=head, number=True) for head in heads),
    )
    rows: list[tuple[Cell, ...]] = []
    for row in edition.boards:
        lengths = (mm_number(row.length), inch_number(row.length))[::turn]
        section_text, _ = size_numbers((row.thickness, row.width), first)
        title = f"{row.title} ({row.name})"
        rows.append((strong_cell(str(row.count)), title, section_text, *lengths))
    return table(columns, rows, grid.main)


def _hardware(edition: Edition, grid: Grid) -> Bands:
    columns = (
        Column(head="Count", number=True),
        Column(head="Item", grows=True),
        Column(head="For", grows=True),
        Column(head="Or, in inches", grows=True),
    )
    rows = [
        (strong_cell(str(row.count)), row.title, row.purpose, row.inch_twin)
        for row in edition.hardware
    ]
    words = "Counts are summed over the steps: pieces, not packs."
    listed = table(columns, rows, grid.main)
    return (*listed, *note(words, grid.main)) if listed else ()


def _edges(edition: Edition, grid: Grid) -> Bands:
    told = edges_told(edition)
    if told is None:
        return ()
    columns = (
        Column(head="Edges", grows=True),
        Column(head="Sheet"),
        Column(head="Count", number=True),
        Column(head="Together", number=True),
        Column(head="To buy", number=True),
    )
    rows = [(row.what, row.sheet, row.count, row.length, row.to_buy) for row in told.rows]
    listed = table(columns, rows, grid.main)
    return (*listed, *note(told.remark, grid.main)) if told.remark else listed
