"""A page for each engraving on a finished piece: its middle on the piece is where 0,0 goes."""

from __future__ import annotations

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.art_view import art_full_view, art_place_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edition import Edition
from kerfolio.edition.setup_art import SetupArt, setup_arts
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Bands, spaced
from kerfolio.paper.document import about
from kerfolio.paper.grid import Grid
from kerfolio.paper.one_page import heading, height_of, one_page, set_below, setup_grid
from kerfolio.paper.phrases import marks_text
from kerfolio.paper.picture import drawing_band
from kerfolio.paper.section import foot_of
from kerfolio.paper.setup_blocks import SPACE, cautions, lines, steps_blocks
from kerfolio.paper.setup_type import STOCK, STOCK_SOFT, SetupType
from kerfolio.settling.measured import measured_for
from kerfolio.writing.page import Page, Passage
from kerfolio.writing.pdf import pdf_bytes

_PLACE_HIGH, _LEAST = 100.0, 45.0
_FULL_HIGH = 100.0


def art_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the pages of a plan's engravings as a PDF, as their cut files have them.

    They are shown at full size: the file asks not to be scaled.
    """
    grid, arts, reader = setup_grid(paper), setup_arts(edition), edition.reader
    thick = measured_for(edition.settled, reader)
    foot = foot_of(edition, grid, say(reader, "printed-foot-art", thick=thick))
    pages = [_page(edition, each, grid, foot(n, len(arts))) for n, each in enumerate(arts, 1)]
    return pdf_bytes(about(edition, "art", full_size=True), pages)


def _page(edition: Edition, setup: SetupArt, grid: Grid, foot: tuple[Passage, ...]) -> Page:
    """Return the page: the piece with distances, what to do, the art at full size if it fits."""
    full = art_full_view(edition.settled, setup.art, edition.reader)
    if full.width <= grid.width and full.height <= _FULL_HIGH:
        made = _made(edition, setup, grid, full)
        if made is not None:
            return one_page(*made, grid, foot)
    made = _made(edition, setup, grid, None)
    assert made is not None, "without the art there is room"
    return one_page(*made, grid, foot)


def _made(
    edition: Edition, setup: SetupArt, grid: Grid, full: Drawing | None
) -> tuple[Bands, Bands] | None:
    """Return what stands on the page and at its foot, None where the art leaves too little room."""
    settled, reader, head = (
        edition.settled,
        edition.reader,
        _head(edition, setup, grid),
    )
    figure = (drawing_band(full, grid.width, full.height),) if full else ()
    tail = (*spaced(figure, SPACE), *spaced(cautions(grid, reader), SPACE))
    room = grid.height - height_of(head) - height_of(tail) - SPACE
    ideal = art_place_view(settled, setup.art, (grid.width, _PLACE_HIGH), reader).height
    _, words, left = set_below(
        lambda style: _words(setup, style, grid, full is None, reader), room, ideal
    )
    if full and left < min(_LEAST, ideal):
        return None
    view = art_place_view(settled, setup.art, (grid.width, left), reader)
    picture = spaced((drawing_band(view, grid.width, left),), SPACE)
    return (*head, *picture, *words), tail


def _head(edition: Edition, setup: SetupArt, grid: Grid) -> Bands:
    art, reader = setup.art, edition.reader
    kicker = (edition.plan.title, f": {say(reader, 'printed-kicker-art')}")
    marks = marks_text(setup.pieces, reader)
    deep = say(reader, "printed-art-deep", depth=setup.depth, marks=marks)
    file = f"cut/engravings/{art.file}"
    return (
        *heading(kicker, file, setup.title, setup.time, grid),
        *spaced(lines((deep,), STOCK, grid.width), 1.0),
        *lines((say(reader, "printed-art-size", size=setup.size),), STOCK_SOFT, grid.width),
    )


def _words(
    setup: SetupArt, style: SetupType, grid: Grid, alone: bool, reader: Reader
) -> Bands | None:
    after = say(reader, "printed-art-too-large") if alone else ""
    return steps_blocks(setup.steps, setup.runs, setup.by_hand, style, grid, reader, after)
