"""The whole: put together with its sizes, drawn apart with its marks, and its numbers."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.edition.edition import Edition
from kerfolio.edition.making import TheSet, Whole, set_of, wholes_of
from kerfolio.paper.band import Band, Bands, beside, blank, indented, kept, paragraph, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.picture import captioned, drawing_band, giving_way
from kerfolio.paper.section import hung, note, section
from kerfolio.paper.type import (
    CELL,
    CELL_LEADING,
    CELL_STRONG,
    LEAD,
    LEAD_LEADING,
    READING,
    READING_LEADING,
)
from kerfolio.writing.page import Run

TITLE = "The whole"
_SHARE, _LEAST = 0.36, 0.27
"""Of the page that pictures take."""
_BETWEEN = 8.0
_HEAD = 62.0
_ROW = 1.6


def whole_section(edition: Edition, grid: Grid) -> Bands:
    """Return the pictures and numbers of what is made; nothing where nothing tells how it goes."""
    wholes, the_set = wholes_of(edition), set_of(edition)
    if not wholes:
        return ()

    def made(high: float) -> Bands:
        bands: list[Band] = list(section(TITLE, grid, new_page=True))
        if the_set is not None:
            bands += _set(the_set, edition, grid, high)
        for whole in wholes:
            bands += _whole(whole, edition, grid, high)
        return tuple(bands)

    return giving_way(made, _SHARE * grid.height, _LEAST * grid.height, grid)


def _set(the_set: TheSet, edition: Edition, grid: Grid, high: float) -> Bands:
    bands = list(paragraph((Run(the_set.holds, READING),), grid.width, READING_LEADING))
    drawing = edition.drawings.get(the_set.picture)
    if drawing is not None:
        figure = drawing_band(drawing, grid.width, high)
        shown = captioned(figure, "The whole set, with its overall sizes.", grid.width)
        bands += spaced(kept(shown), 4.0)
    return (*bands, blank(6.0), *hung("In numbers", _rows(the_set.rows, grid), grid), blank(6.0))


def _whole(whole: Whole, edition: Edition, grid: Grid, high: float) -> Bands:
    title = paragraph((Run(whole.title, LEAD),), grid.width, LEAD_LEADING) if whole.title else ()
    rows = list(_rows((*whole.rows, *whole.steady), grid))
    remark = whole.remark if whole.steady else ""
    for text in filter(None, (remark, whole.on_wall, " ".join(whole.proved))):
        rows += note(text, grid.main)
    pictures = _pictures(whole, edition, grid, high)
    return (
        *kept(title, with_next=True),
        *pictures,
        blank(6.0),
        *hung("In numbers", rows, grid),
    )


def _rows(rows: Sequence[tuple[str, str]], grid: Grid) -> Bands:
    bands: list[Band] = []
    for label, value in rows:
        head = paragraph((Run(label, CELL),), _HEAD - 4.0, CELL_LEADING)
        told = paragraph((Run(value, CELL_STRONG),), grid.main - _HEAD, CELL_LEADING)
        bands += spaced(kept(beside(head, indented(told, _HEAD))), _ROW if bands else 0.0)
    return tuple(bands)


def _pictures(whole: Whole, edition: Edition, grid: Grid, high: float) -> Bands:
    """Return the two pictures of a thing side by side, at most so high, mm."""
    half = (grid.width - _BETWEEN) / 2
    columns: list[Bands] = []
    for name, words in (
        (whole.assembled, "Put together, with its overall sizes."),
        (whole.exploded, "The pieces drawn apart, with their marks."),
    ):
        drawing = edition.drawings.get(name)
        if drawing is not None:
            figure = drawing_band(drawing, half, high)
            columns.append(captioned(figure, words, half))
    if len(columns) < 2:
        return spaced(columns[0], 4.0) if columns else ()
    return spaced(kept(beside(columns[0], indented(columns[1], half + _BETWEEN))), 4.0)
