"""Layouts and setup sheets of an edition at the thickness it is drawn for."""

from __future__ import annotations

from kerfolio.basis.style import told_as
from kerfolio.edition.edition import Edition
from kerfolio.model.stock import PaperStock
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.publishing.fitted_files import Settling


def _printed(edition: Edition, paper: PaperStock, kind: str) -> bytes:
    settling = Settling(edition.settled, edition.corners)
    files = SheetPapers(edition, settling.at, {"paper": paper}).at(edition.settled)
    return next(each.write(told_as) for each in files if each.name.startswith(f"{kind}/"))


def layout_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the layouts."""
    return _printed(edition, paper, "layout")


def setup_pdf(edition: Edition, paper: PaperStock) -> bytes:
    """Return the setup sheets."""
    return _printed(edition, paper, "setup")
