"""Another material: what it changes, beside the plan's own."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.edition.swap import REMARK, SwapTable
from kerfolio.paper.band import Band, Bands, indented, kept, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Column, strong_cell, table
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import hung, note, section, warned

SWAPS_TITLE = "Another material"
_SPACE = 8.0


def swaps_section(edition: Edition, grid: Grid) -> Bands:
    """Return a table for each swap that the plan states; nothing without any."""
    if not edition.swaps:
        return ()
    bands: list[Band] = [*section(SWAPS_TITLE, grid, new_page=True)]
    for each in edition.swaps:
        bands += spaced(kept(hung(each.after, _swap(each, grid.main), grid)), _SPACE)
    return (*bands, *indented(note(REMARK, grid.main), grid.main_x))


def _swap(swap: SwapTable, measure: float) -> Bands:
    told = "; ".join((*swap.refused, *swap.remarks))
    words = f"{swap.verdict} {told[0].upper()}{told[1:]}." if told else swap.verdict
    bands: list[Band] = [*(warned(words, measure, "Mind") if told else plain(words, measure))]
    columns = (
        Column(head="", grows=True),
        Column(head=swap.before, grows=True),
        Column(head=swap.after, grows=True),
    )
    rows = [(strong_cell(row.what), row.before, row.after) for row in swap.rows]
    return (*bands, *spaced(table(columns, rows, measure), 2.4))
