"""A page for every sheet on the machine: what lies where, which cutter, in which order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.basis.exact_figures import measured_text
from kerfolio.basis.figured import together
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.style import Numbers
from kerfolio.drawing.setup_view import setup_picture
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import goes_with
from kerfolio.edition.setup import SetupSheet, compare_words, no_clamp
from kerfolio.edition.side_words import finished_edge
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Bands, spaced
from kerfolio.paper.document import about
from kerfolio.paper.grid import Grid
from kerfolio.paper.held_picture import HeldPicture
from kerfolio.paper.one_page import heading, height_of, one_page, set_below, setup_grid
from kerfolio.paper.section import foot_of
from kerfolio.paper.setup_blocks import SPACE, cautions, facts, hung, lines, runs_blocks
from kerfolio.paper.setup_type import SMALL, STOCK, STOCK_SOFT, WARNED, SetupType
from kerfolio.paper.sheet_page import sheet_number
from kerfolio.settling.measured import measured_for
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import sheet_title
from kerfolio.writing.page import Page, Passage
from kerfolio.writing.pdf import fitted_pdf

_PICTURE_HIGH = 132.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupPage:
    """What is chosen once for the page of a sheet: the type of its words, and its picture, which
    is so many mm ``high`` at most.
    """

    style: SetupType
    picture: HeldPicture
    high: float


def setup_page(
    edition: Edition,
    setup: SetupSheet,
    ends: Sequence[SettledPlan],
    paper: PaperStock,
) -> SetupPage:
    """Choose for a page; ``ends`` are the plan at the ends of its range, as it is drawn first."""
    grid, reader = setup_grid(paper), edition.reader
    head, tail = _head(edition, ends[0], setup, grid), cautions(grid, reader)
    room = grid.height - height_of(head) - height_of(tail) - 2 * SPACE
    most = (grid.width, _PICTURE_HIGH)
    ideal = setup_picture(ends, setup.layout, setup.spots, most, reader).box
    high = ideal[3] - ideal[1]
    style, _, left = set_below(lambda style: _words(setup, style, grid, reader), room, high)
    view = setup_picture(ends, setup.layout, setup.spots, (grid.width, left), reader)
    return SetupPage(style=style, picture=HeldPicture.of(view, ends), high=left)


def setup_pdf(
    edition: Edition,
    settled: SettledPlan,
    sheets: Sequence[tuple[SetupSheet, SetupPage]],
    paper: PaperStock,
    numbers: Numbers,
) -> bytes:
    """Return the setup sheets of a plan at a point, ``settled``, as a PDF, a page each."""
    grid, reader = setup_grid(paper), edition.reader
    told_for = say(reader, "printed-foot-setup", thick=measured_for(settled, reader))
    foot = foot_of(edition, grid, told_for)
    pages = [
        _page(edition, settled, *each, grid, foot(n, len(sheets)))
        for n, each in enumerate(sheets, 1)
    ]
    return fitted_pdf(about(edition, "setup"), pages, numbers)


def _page(
    edition: Edition,
    settled: SettledPlan,
    setup: SetupSheet,
    page: SetupPage,
    grid: Grid,
    foot: tuple[Passage, ...],
) -> Page:
    reader = edition.reader
    head, words = _head(edition, settled, setup, grid), _words(setup, page.style, grid, reader)
    assert words is not None, "the type was chosen for these words"
    picture = spaced((page.picture.band(settled, grid.width, page.high),), SPACE)
    return one_page((*head, *picture, *words), cautions(grid, reader), grid, foot)


def _head(edition: Edition, settled: SettledPlan, setup: SetupSheet, grid: Grid) -> Bands:
    reader, sheet, number = edition.reader, setup.sheet, setup.layout.number
    kicker = (edition.plan.title, f": {say(reader, 'printed-kicker-setup')}")
    file = together(f"sheet-{number}, ", measured_for(settled, reader))
    stock = say(
        reader,
        "printed-measured",
        sheet=sheet_title(settled, sheet.name),
        thickness=measured_text(sheet.thickness, reader),
    )
    area, grain = sheet_text(setup.layout.size, reader), int(sheet.stock.grain)
    size = say(reader, "printed-lies", size=area, grain=grain)
    cutters = any(run.cutter for run in setup.runs)
    own = f" {say(reader, 'printed-own-cutter')}" if cutters else ""
    told = together(goes_with(settled, number, reader), own)
    return (
        *heading(kicker, file, sheet_number(edition, setup.layout), setup.time, grid),
        *spaced(lines((stock,), STOCK, grid.width), 1.0),
        *lines((size,), STOCK_SOFT, grid.width),
        *spaced(lines((told,), WARNED, grid.width), 0.6),
    )


def _words(setup: SetupSheet, style: SetupType, grid: Grid, reader: Reader) -> Bands | None:
    """Return what stands below the picture, None where a line is too long for the type."""
    runs = runs_blocks(setup.runs, setup.between, style, grid, reader)
    if runs is None:
        return None
    told = (
        (say(reader, "printed-zero"), setup.zero),
        (say(reader, "printed-zero-z"), setup.zero_z),
        (say(reader, "printed-spoilboard"), setup.below),
        (say(reader, "printed-drawn-lines"), finished_edge(reader)),
    )
    clamps = lines(setup.clamps or (no_clamp(reader),), style.words, grid.main)
    left = lines(setup.by_hand, style.words, grid.main)
    depth = lines((together(*setup.depth, between=" "),), SMALL, grid.main)
    found = together(f"{compare_words(reader)} ", together(*setup.compare, between="; "), ".")
    compare = lines((found,), SMALL, grid.main)
    return (
        *facts(told, style, grid),
        *runs,
        *hung(say(reader, "printed-by-hand"), left, grid, style.words),
        *hung(say(reader, "printed-clamp"), clamps, grid, style.words),
        *hung(say(reader, "printed-depth"), depth, grid, SMALL),
        *hung(say(reader, "printed-compare"), compare, grid, SMALL),
    )
