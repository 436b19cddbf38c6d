"""The booklet: from the cover to the colophon, in the order a builder needs it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kerfolio.drawing.palette import palettes_of
from kerfolio.drawing.vocabulary import Anchor
from kerfolio.edition.edition import Edition
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, beside, blank, indented, kept, marked
from kerfolio.paper.choosing import choosing_section, coupon_section
from kerfolio.paper.cover import cover
from kerfolio.paper.cutting import cutting_section
from kerfolio.paper.document import about
from kerfolio.paper.endmatter import colophon_section, questions_section, releases_section
from kerfolio.paper.flow import leaves, page_of
from kerfolio.paper.grid import Grid
from kerfolio.paper.in_use import in_use_section
from kerfolio.paper.lists import buying_section, parts_section
from kerfolio.paper.loads import loads_section
from kerfolio.paper.part_pages import parts_drawn_section, sheets_section
from kerfolio.paper.safety import safety_section
from kerfolio.paper.section import foot_of, label
from kerfolio.paper.steps import steps_section
from kerfolio.paper.swaps import swaps_section
from kerfolio.paper.type import READING, READING_LEADING
from kerfolio.paper.whole import whole_section
from kerfolio.writing.page import Mark, Page, Role, Run, Text
from kerfolio.writing.pdf import pdf_bytes

Section = Callable[[Edition, Grid], Bands]

SECTIONS: tuple[Section, ...] = (
    safety_section,
    choosing_section,
    coupon_section,
    parts_section,
    buying_section,
    parts_drawn_section,
    sheets_section,
    cutting_section,
    whole_section,
    steps_section,
    in_use_section,
    loads_section,
    swaps_section,
    questions_section,
    releases_section,
    colophon_section,
)
"""In the order of the booklet; a section of nothing leaves no trace."""

_CONTENTS_GAP = 10.0

Leaf = list[tuple[float, Band]]


def booklet(edition: Edition, paper: PaperStock) -> bytes:
    """Return the booklet of a plan's release as a PDF on a paper."""
    palette = palettes_of(edition.identity.look).paper
    return pdf_bytes(about(edition, "Booklet"), booklet_pages(edition, paper), palette)


def booklet_pages(edition: Edition, paper: PaperStock) -> tuple[Page, ...]:
    """Return the pages; set twice, since the contents must know where each section begins."""
    grid = Grid(paper=paper)
    body = [band for section in SECTIONS for band in section(edition, grid)]
    spread = leaves((*_contents(_places([]), body, grid), *body), grid)
    contents = _contents(_places(spread), body, grid)
    spread = leaves((*contents, *body), grid)
    foot, count = foot_of(edition, grid), len(spread) + 1
    inside = (
        page_of(placed, grid, foot(number, count)) for number, placed in enumerate(spread, start=2)
    )
    return (cover(edition, grid, foot(1, count)), *inside)


def _places(spread: Sequence[Leaf]) -> dict[str, int]:
    return {
        passage.bookmark: number
        for number, placed in enumerate(spread, start=2)
        for _, band in placed
        for passage in band.passages
        if passage.bookmark
    }


def _contents(places: dict[str, int], body: Sequence[Band], grid: Grid) -> Bands:
    titles = [p.bookmark for band in body for p in band.passages if p.bookmark]
    half = (grid.main - _CONTENTS_GAP) / 2
    rows = [_entry(title, places.get(title, 0), half) for title in titles]
    turn = (len(rows) + 1) // 2
    columns = beside(rows[:turn], indented(rows[turn:], half + _CONTENTS_GAP))
    whole = beside(label("In this booklet", grid), indented(columns, grid.main_x))
    return (*kept(whole), blank(2.0))


def _entry(title: str, page: int, measure: float) -> Band:
    y = -0.72 * READING_LEADING
    marks: tuple[Mark, ...] = (
        Text(x=0, y=y, runs=(Run(title, READING),)),
        Text(x=measure, y=y, runs=(Run(str(page), READING),), anchor=Anchor.END),
    )
    return marked(READING_LEADING, marks, Role.PARAGRAPH)
