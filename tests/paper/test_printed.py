"""The layouts and the setup sheets, read back from their pages."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kerfolio.edition.edition import Edition
from kerfolio.model.stock import PaperStock
from kerfolio.settling.titles import piece_title
from tests.paper.editions import A4, LETTER, stool
from tests.paper.long_edition import long_edition
from tests.paper.printed import layout_pdf, setup_pdf
from tests.paper.reading import fonts, outside, sizes, texts

PAPERS = pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])
Printer = Callable[[Edition, PaperStock], bytes]
PRINTERS = pytest.mark.parametrize("printer", [layout_pdf, setup_pdf])


@PAPERS
@PRINTERS
def test_pages_have_the_paper_s_size_and_embedded_faces(
    printer: Printer, paper: PaperStock
) -> None:
    content = printer(stool(), paper)
    assert set(sizes(content)) == {(paper.width, paper.height)}
    assert set(fonts(content)) == {("/TrueType", True)}


@PAPERS
@PRINTERS
def test_every_page_carries_plan_release_and_its_number(
    printer: Printer, paper: PaperStock
) -> None:
    pages = texts(printer(stool(), paper))
    for number, page in enumerate(pages, start=1):
        assert "Harbour stool · release 1.2.0" in page
        assert f"Page {number} of {len(pages)}" in page


@PAPERS
@PRINTERS
def test_no_letter_leaves_the_margins(printer: Printer, paper: PaperStock) -> None:
    assert outside(printer(stool(), paper), 12.0) == []


@PAPERS
@PRINTERS
def test_the_longest_words_stay_within_the_page(printer: Printer, paper: PaperStock) -> None:
    assert outside(printer(long_edition(), paper), 8.0) == []


def test_each_sheet_has_a_page_with_its_pieces() -> None:
    (page,) = texts(layout_pdf(stool(), A4))
    assert "Sheet 1 of 1" in page
    assert "Birch plywood 18 mm, drawn for a measured 17.80 mm" in page
    for part in stool().settled.parts:
        for piece in part.pieces:
            assert f"{piece.mark} {piece_title(stool().plan, piece.label)}" in page
