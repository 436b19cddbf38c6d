"""The whole: put together with its sizes, drawn apart with its marks, and its numbers."""

from __future__ import annotations

from kerfolio.assembly.proof_words import proof_words
from kerfolio.assembly.stability_words import stability_cautions, stability_rows
from kerfolio.drawing.build_views import ASSEMBLED, EXPLODED
from kerfolio.edition.edition import Edition
from kerfolio.paper.band import Band, Bands, beside, blank, indented, kept, paragraph, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.picture import captioned, drawing_band
from kerfolio.paper.section import hung, note, section
from kerfolio.paper.type import CELL, CELL_LEADING, CELL_STRONG
from kerfolio.writing.page import Run

TITLE = "The whole"
_SHARE = 0.36
_BETWEEN = 8.0
_HEAD = 62.0
_ROW = 1.6


def whole_section(edition: Edition, grid: Grid) -> Bands:
    """Return the pictures and numbers of the whole; nothing where nothing tells how it goes."""
    build = edition.build
    if build is None:
        return ()
    bands: list[Band] = list(section(TITLE, grid, new_page=True))
    bands += _pictures(edition, grid)
    stability = edition.stability
    assert stability is not None, "worked out with the build"
    rows: list[Band] = []
    for label, value in stability_rows(stability, edition.identity.units_first):
        head = paragraph((Run(label, CELL),), _HEAD - 4.0, CELL_LEADING)
        told = paragraph((Run(value, CELL_STRONG),), grid.main - _HEAD, CELL_LEADING)
        rows += spaced(kept(beside(head, indented(told, _HEAD))), _ROW if rows else 0.0)
    for text in (*stability_cautions(stability, edition.plan), " ".join(proof_words(build))):
        rows += note(text, grid.main)
    return (*bands, blank(6.0), *hung("In numbers", rows, grid))


def _pictures(edition: Edition, grid: Grid) -> Bands:
    """Return the two pictures of the whole side by side."""
    half = (grid.width - _BETWEEN) / 2
    columns: list[Bands] = []
    for name, words in (
        (ASSEMBLED, "Put together, with its overall sizes."),
        (EXPLODED, "The pieces drawn apart, with their marks."),
    ):
        drawing = edition.drawings.get(name)
        if drawing is not None:
            figure = drawing_band(drawing, half, _SHARE * grid.height)
            columns.append(captioned(figure, words, half))
    if len(columns) < 2:
        return spaced(columns[0], 4.0) if columns else ()
    return spaced(kept(beside(columns[0], indented(columns[1], half + _BETWEEN))), 4.0)
