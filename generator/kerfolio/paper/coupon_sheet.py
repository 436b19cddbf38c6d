"""A page for each fit coupon on the machine: its scrap, its zero, what to do, with which cutter."""

from __future__ import annotations

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.thickness import reading_in
from kerfolio.drawing.setup_view import setup_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import coupon_name
from kerfolio.edition.setup_coupon import SetupCoupon, setup_coupons
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Bands, spaced
from kerfolio.paper.document import about
from kerfolio.paper.grid import Grid
from kerfolio.paper.one_page import heading, height_of, one_page, set_below, setup_grid
from kerfolio.paper.picture import drawing_band
from kerfolio.paper.section import foot_of
from kerfolio.paper.setup_blocks import SPACE, cautions, lines, steps_blocks
from kerfolio.paper.setup_type import STOCK, STOCK_SOFT, SetupType
from kerfolio.writing.page import Page, Passage
from kerfolio.writing.pdf import pdf_bytes

_PICTURE_HIGH = 110.0


def coupon_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the pages of a plan's fit coupons as a PDF."""
    grid, coupons = setup_grid(paper), setup_coupons(edition)
    foot = foot_of(edition, grid, say(edition.reader, "printed-foot-coupon"))
    pages = [_page(edition, each, grid, foot(n, len(coupons))) for n, each in enumerate(coupons, 1)]
    return pdf_bytes(about(edition, "coupon"), pages)


def _page(edition: Edition, setup: SetupCoupon, grid: Grid, foot: tuple[Passage, ...]) -> Page:
    reader = edition.reader
    head, tail = _head(edition, setup, grid), cautions(grid, reader)
    room = grid.height - height_of(head) - height_of(tail) - 2 * SPACE
    most = (grid.width, _PICTURE_HIGH)
    ideal = setup_view(setup.settled, setup.layout, (), most, reader, setup.zero).height
    _, words, left = set_below(lambda style: _words(setup, style, grid, reader), room, ideal)
    drawn = (grid.width, left)
    view = setup_view(setup.settled, setup.layout, (), drawn, reader, setup.zero)
    picture = spaced((drawing_band(view, grid.width, left),), SPACE)
    return one_page((*head, *picture, *words), tail, grid, foot)


def _head(edition: Edition, setup: SetupCoupon, grid: Grid) -> Bands:
    reader = edition.reader
    kicker = (edition.plan.title, f": {say(reader, 'printed-kicker-coupon')}")
    file = coupon_name(setup.coupon.sheet, "").rstrip(".")
    thick = reading_in(setup.sheet.thickness, reader)
    measured = say(reader, "printed-coupon-drawn", sheet=setup.made_of, thickness=thick)
    return (
        *heading(kicker, file, say(reader, "printed-fit-coupon"), setup.time, grid),
        *spaced(lines((measured,), STOCK, grid.width), 1.0),
        *lines((say(reader, "printed-scrap", size=setup.size),), STOCK_SOFT, grid.width),
    )


def _words(setup: SetupCoupon, style: SetupType, grid: Grid, reader: Reader) -> Bands | None:
    return steps_blocks(setup.steps, setup.runs, setup.by_hand, style, grid, reader)
