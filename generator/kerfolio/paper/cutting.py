"""Cutting time and cost: each sheet, each cutter, one copy line by line, several copies."""

from __future__ import annotations

from decimal import Decimal

from kerfolio.basis.figures import minutes_text, money_number, way_number
from kerfolio.basis.words import counted
from kerfolio.edition.copies import copies_remark
from kerfolio.edition.cutting import CuttingWords, SheetCutting, cutting_of
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import copies_called
from kerfolio.paper.band import Band, Bands, kept, spaced, total
from kerfolio.paper.grid import Grid
from kerfolio.paper.grounds import grounds
from kerfolio.paper.ledger import Cell, Column, strong_cell, table
from kerfolio.paper.section import BLOCK_SPACE, hung, note, section
from kerfolio.paper.type import CELL, CELL_SOFT
from kerfolio.shop.lists import known_total
from kerfolio.writing.page import Run

CUTTING_TITLE = "Cutting time and cost"
COSTS_TITLE = "Costs"
_KEPT_SHARE = 0.5  # of the page: a list shorter than this is not broken


def cutting_section(edition: Edition, grid: Grid) -> Bands:
    """Return how long cutting takes and, where a price is known, what one and more copies cost."""
    words, measure, named = cutting_of(edition), grid.main, copies_called(edition.plan)
    blocks = (
        ("Time", _times(words, measure) if words else ()),
        ("Cutters", _work(words, measure) if words else ()),
        (f"One {named.one}", _costs(edition, measure)),
        (f"Several {named.many}", _copies(edition, measure)),
    )
    bands: list[Band] = []
    for head, body in blocks:
        if body:
            listed = hung(head, body, grid)
            short = total(listed) < grid.height * _KEPT_SHARE
            bands += spaced(kept(listed) if short else listed, BLOCK_SPACE if bands else 0.0)
    if words:
        rest = hung("What the time rests on", grounds(words.assumptions, measure), grid)
        bands += spaced(rest, BLOCK_SPACE)
    title = CUTTING_TITLE if words else COSTS_TITLE
    return (*section(title, grid), *bands) if bands else ()


def _times(words: CuttingWords, measure: float) -> Bands:
    columns = (
        Column(head="Sheet", grows=True),
        Column(head="Cutters", grows=True),
        Column(head=words.way_head, number=True),
        Column(head="Time", number=True),
    )
    rows: list[tuple[Cell, ...]] = [_time_cells(each, words.first) for each in words.sheets]
    if len(rows) > 1:
        together = "Together" if words.whole else f"Together, {words.known}"
        metres, minutes = way_number(words.metres, words.first), minutes_text(words.minutes)
        rows.append((strong_cell(together), "", strong_cell(metres), strong_cell(minutes)))
    return (*table(columns, rows, measure), *note(words.remark, measure))


def _time_cells(each: SheetCutting, first: str) -> tuple[Cell, ...]:
    sheet = f"{each.number}, {each.title}"
    if each.minutes is None:
        return (sheet, (Run("no cut settings are stated for it", CELL_SOFT),), "–", "–")
    way, minutes = way_number(each.metres, first), minutes_text(each.minutes)
    return (sheet, ", ".join(each.cutters), way, minutes)


def _work(words: CuttingWords, measure: float) -> Bands:
    columns = (
        Column(head="Cutter", grows=True),
        Column(head="Cuts", number=True),
        Column(head=words.way_head, number=True),
        Column(head="In the wood", number=True),
    )
    rows = [
        (
            each.title,
            str(each.cuts),
            way_number(each.metres, words.first),
            minutes_text(each.minutes),
        )
        for each in words.work
    ]
    return (*table(columns, rows, measure), *note(words.wear_remark, measure))


def _costs(edition: Edition, measure: float) -> Bands:
    known = [row for row in edition.costs if row.total is not None]
    if not known:
        return ()
    currency = edition.identity.currency
    columns = (
        Column(head="Count", number=True),
        Column(head="What", grows=True),
        Column(head=f"Each, {currency}", number=True),
        Column(head=f"Total, {currency}", number=True),
    )
    rows: list[tuple[Cell, ...]] = [
        (str(row.count), row.what, _amount(row.price), _amount(row.total)) for row in edition.costs
    ]
    whole = known_total(known)
    unknown = len(edition.costs) - len(known)
    rows.append(("", strong_cell("Together"), "", strong_cell(money_number(whole))))
    words = "Prices are the maker’s own; yours will differ."
    if unknown:
        words += f" No price is known for {counted(unknown, 'line')} of the list."
    return (*table(columns, rows, measure), *note(words, measure))


def _amount(value: Decimal | None) -> Cell:
    return "–" if value is None else (Run(money_number(value), CELL),)


def _copies(edition: Edition, measure: float) -> Bands:
    if len(edition.copies) < 2 or not any(row.total for row in edition.costs):
        return ()
    currency = edition.identity.currency
    columns = (
        Column(head=copies_called(edition.plan).many.capitalize(), number=True),
        Column(head="Sheets", number=True),
        Column(head="", grows=True),
        Column(head=f"Together, {currency}", number=True),
        Column(head=f"Each, {currency}", number=True),
    )
    rows = [
        (
            strong_cell(str(each.copies)),
            str(each.sheets),
            "",
            money_number(each.total),
            money_number(each.each),
        )
        for each in edition.copies
    ]
    return (*table(columns, rows, measure), *note(copies_remark(edition), measure))
