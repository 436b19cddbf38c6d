"""Load and sag: what each span carries by estimate, with cautions and assumptions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.edition.loads import Figure, LoadWords, loads_of
from kerfolio.paper.band import Band, Bands, indented, kept, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.grounds import grounds
from kerfolio.paper.ledger import Cell, Column, strong_cell, table
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import BLOCK_SPACE, hung, section, warned
from kerfolio.paper.type import CELL_SOFT
from kerfolio.shop.assumption import Assumption
from kerfolio.writing.page import Run

LOADS_TITLE = "Load and sag"
_SPACE = 8.0


def loads_section(edition: Edition, grid: Grid) -> Bands:
    """Return every span of the plan, cautions first and assumptions last; nothing without spans."""
    loads = loads_of(edition)
    if loads is None:
        return ()
    caution = warned(" ".join(loads.cautions), grid.main, loads.heading)
    bands: list[Band] = [*section(LOADS_TITLE, grid, new_page=not edition.in_use)]
    bands += indented(caution, grid.main_x)
    bands += spaced(indented(plain(loads.racking, grid.main), grid.main_x), BLOCK_SPACE)
    for each in loads.spans:
        bands += spaced(kept(hung(each.title, _span(each, grid.main), grid)), _SPACE)
    rest = grounds(_gathered(loads.spans), grid.main)
    if rest:
        bands += spaced(hung("What this rests on", rest, grid), _SPACE)
    return tuple(bands)


def _span(words: LoadWords, measure: float) -> Bands:
    bands: list[Band] = list(plain(words.asked, measure))
    if words.warning:
        bands += spaced(warned(words.warning, measure, "Mind"), 2.0)
    bands += spaced(figures_table(words.figures, measure), 2.4)
    bands += spaced(_bounds(words, measure), 3.2)
    return tuple(bands)


def figures_table(figures: Sequence[Figure], measure: float, *, long: bool = False) -> Bands:
    """Return figures in words as a table: head, value, and what is to be known with it.

    ``long`` lets values run over several lines.
    """
    columns = (
        Column(head="Estimate", grows=True),
        Column(head="Figure", grows=long),
        Column(head="To be known with it", grows=True),
    )
    rows: list[tuple[Cell, ...]] = [
        (each.head, strong_cell(each.value), (Run("; ".join(each.notes), CELL_SOFT),))
        for each in figures
    ]
    return table(columns, rows, measure)


def _bounds(words: LoadWords, measure: float) -> Bands:
    """Return every way the span may be held, where there is more than one."""
    if len(words.bounds) < 2:
        return ()
    columns = (
        Column(head="Sag, by how it is held", grows=True),
        Column(head="First day"),
        Column(head="After years"),
    )
    texts = [(each.held, each.first_day, each.after_years) for each in words.bounds]
    rows: list[tuple[Cell, ...]] = [tuple(map(strong_cell, texts[0])), *texts[1:]]
    return table(columns, rows, measure)


def _gathered(spans: Sequence[LoadWords]) -> tuple[Assumption, ...]:
    """Return each assumption once: first those of some spans alone, with the spans' names."""
    owners: dict[Assumption, list[str]] = {}
    for each in spans:
        for fact in each.assumptions:
            owners.setdefault(fact, []).append(each.title.lower())
    figured = sum(bool(each.assumptions) for each in spans)
    shared = [fact for fact, titles in owners.items() if len(titles) == figured]
    single = [
        replace(fact, label=f"{fact.label} ({listed(titles)})")
        for fact, titles in owners.items()
        if fact not in shared
    ]
    return (*single, *shared)
