"""Where every piece lies on which sheet, a page a sheet, to hang beside the saw or the router."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, fresh
from kerfolio.paper.document import about
from kerfolio.paper.flow import flowed
from kerfolio.paper.grid import Grid
from kerfolio.paper.part_pages import sheet_page
from kerfolio.paper.section import foot_of
from kerfolio.writing.pdf import pdf_bytes


def layout_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the layouts of a plan's sheets as a PDF: picture and table of pieces."""
    grid = Grid(paper=paper)
    bands: list[Band] = []
    for layout in edition.layout.sheets:
        bands += fresh(sheet_page(edition, layout, grid, bookmark=True))
    foot = foot_of(edition, grid, f"layout, {edition.settled.variant.label}")
    return pdf_bytes(about(edition, "Layout"), flowed(bands, grid, foot))
