"""What is printed for the machine and the saw: layouts, saw diagrams, setup sheets, by name."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.edition.edition import Edition
from kerfolio.edition.names import has_saw, layout_name, saw_name, setup_name
from kerfolio.model.stock import PaperStock
from kerfolio.paper.layout_sheets import layout_pdf
from kerfolio.paper.saw_sheets import saw_pdf
from kerfolio.paper.setup_sheets import setup_pdf
from kerfolio.publishing.cut_files import Named


def sheet_papers(edition: Edition, name: str, paper: PaperStock) -> Iterator[Named]:
    """Yield them on a paper, which is called ``name``."""
    yield layout_name(name), layout_pdf(edition, paper)
    if has_saw(edition):
        yield saw_name(name), saw_pdf(edition, edition.saw, edition.board_plans, paper)
    yield setup_name(name), setup_pdf(edition, paper)
