"""Where every piece lies on which sheet, a page a sheet, to hang beside the saw or the router."""

from __future__ import annotations

from generator.edition.edition import Edition
from generator.model.stock import PaperStock
from generator.paper.band import Band, fresh
from generator.paper.document import about
from generator.paper.flow import flowed
from generator.paper.grid import Grid
from generator.paper.part_pages import sheet_page
from generator.paper.section import foot_of
from generator.writing.pdf import pdf_bytes


def layout_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the layouts of a plan's sheets as a PDF: picture and table of pieces."""
    grid = Grid(paper=paper)
    bands: list[Band] = []
    for layout in edition.layout.sheets:
        bands += fresh(sheet_page(edition, layout, grid, bookmark=True))
    foot = foot_of(edition, grid, f"layout, {edition.settled.variant.label}")
    return pdf_bytes(about(edition, "Layout"), flowed(bands, grid, foot))
