"""A page for every sheet on the machine, and one for every engraving on a finished piece."""

from __future__ import annotations

from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import thickness_text
from kerfolio.drawing.setup_view import setup_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import drawn_file, file_words
from kerfolio.edition.setup import (
    COMPARE,
    NO_CLAMP,
    SetupSheet,
    setup_arts,
    setup_sheets,
    time_words,
)
from kerfolio.edition.side_words import FINISHED
from kerfolio.model.stock import PaperStock
from kerfolio.paper.art_sheet import art_page
from kerfolio.paper.band import Bands, spaced
from kerfolio.paper.document import about
from kerfolio.paper.grid import Grid
from kerfolio.paper.one_page import heading, height_of, one_page, set_below, setup_grid
from kerfolio.paper.part_pages import sheet_title
from kerfolio.paper.picture import drawing_band
from kerfolio.paper.section import foot_of
from kerfolio.paper.setup_blocks import SPACE, cautions, facts, hung, lines, runs_blocks
from kerfolio.paper.setup_type import SMALL, STOCK, STOCK_SOFT, WARNED, SetupType
from kerfolio.writing.page import Page, Passage
from kerfolio.writing.pdf import pdf_bytes

_PICTURE_HIGH = 132.0


def setup_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the setup sheets of a plan as a PDF, a page each, at the thickness that is drawn.

    Engravings are shown at full size: the file asks not to be scaled.
    """
    grid = setup_grid(paper)
    sheets, arts = setup_sheets(edition), setup_arts(edition)
    foot = foot_of(edition, grid, f"setup, {edition.settled.variant.label}")
    count = len(sheets) + len(arts)
    pages = [
        *(_page(edition, each, grid, foot(n, count)) for n, each in enumerate(sheets, 1)),
        *(
            art_page(edition, each, grid, foot(n, count))
            for n, each in enumerate(arts, len(sheets) + 1)
        ),
    ]
    return pdf_bytes(about(edition, "Setup sheets", full_size=True), pages)


def _page(edition: Edition, setup: SetupSheet, grid: Grid, foot: tuple[Passage, ...]) -> Page:
    settled, first = edition.settled, edition.first
    head, tail = _head(edition, setup, grid), cautions(grid)
    room = grid.height - height_of(head) - height_of(tail) - 2 * SPACE
    most = (grid.width, _PICTURE_HIGH)
    ideal = setup_view(settled, setup.layout, setup.spots, most, first).height
    words, left = set_below(lambda style: _words(setup, style, grid), room, ideal)
    view = setup_view(settled, setup.layout, setup.spots, (grid.width, left), first)
    picture = spaced((drawing_band(view, grid.width, left),), SPACE)
    return one_page((*head, *picture, *words), tail, grid, foot)


def _head(edition: Edition, setup: SetupSheet, grid: Grid) -> Bands:
    first, sheet = edition.first, setup.sheet
    number = setup.layout.number
    kicker, file = (edition.plan.title, ": setup"), drawn_file(edition, number)
    grain = ", grain along x" if sheet.stock.grain else ""
    stock = f"{sheet.stock.title}, measured {thickness_text(sheet.thickness, first)}"
    size = f"{sheet_text(setup.layout.size, first)}, show face up{grain}"
    return (
        *heading(kicker, file, sheet_title(edition, setup.layout), time_words(setup.minutes), grid),
        *spaced(lines((stock,), STOCK, grid.width), 1.0),
        *lines((size,), STOCK_SOFT, grid.width),
        *spaced(lines((file_words(edition, number),), WARNED, grid.width), 0.6),
    )


def _words(setup: SetupSheet, style: SetupType, grid: Grid) -> Bands | None:
    """Return what stands below the picture, None where a line is too long for the type."""
    runs = runs_blocks(setup.runs, setup.between, style, grid)
    if runs is None:
        return None
    told = (
        ("Zero x, y", setup.zero),
        ("Zero z", setup.zero_z),
        ("Into spoilboard", setup.below),
        ("Drawn lines", FINISHED.capitalize()),
    )
    clamps = lines(setup.clamps or (NO_CLAMP,), style.words, grid.main)
    left = lines(setup.by_hand, style.words, grid.main)
    compare = lines((f"{COMPARE} {'; '.join(setup.compare)}.",), SMALL, grid.main)
    return (
        *facts(told, style, grid),
        *runs,
        *hung("By hand", left, grid, style.words),
        *hung("Clamp at", clamps, grid, style.words),
        *hung("Compare", compare, grid, SMALL),
    )
