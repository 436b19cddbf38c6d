"""Booklets of whole editions, from their chapters, read back from their pages."""

from __future__ import annotations

from dataclasses import replace

import pypdfium2
import pytest

from kerfolio.booklet.pdf import booklet_pdfs
from kerfolio.chapters.document_of import booklet_document
from kerfolio.edition.edition import Edition
from kerfolio.model.stock import PaperStock
from tests.booklet.accessible import faults
from tests.booklet.reading import texts
from tests.paper.editions import A4, LETTER, stool
from tests.paper.long_edition import long_edition
from tests.paper.reading import outside

PAPERS = pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])


def printed(edition: Edition, paper: PaperStock = A4) -> bytes:
    look = edition.identity.look
    return booklet_pdfs(booklet_document(edition), {"one": paper}, edition.pictures, look)["one"]


@PAPERS
def test_no_letter_leaves_the_margins(paper: PaperStock) -> None:
    assert outside(printed(stool(), paper), 12.0) == []


def test_the_longest_words_stay_within_the_page() -> None:
    made = printed(long_edition())
    assert outside(made, 8.0) == []
    assert faults(made) == []


def test_no_step_is_torn_apart_where_a_page_can_hold_it() -> None:
    edition = stool()
    many = replace(edition, plan=replace(edition.plan, steps=edition.plan.steps * 5))
    pages = texts(printed(many))
    for step in edition.plan.steps:
        end = step.text.plain().split()[-1]
        with_title = [page for page in pages if step.title in page]
        assert with_title
        assert all(end in page for page in with_title)


def test_lines_of_text_never_lie_on_each_other() -> None:
    document = pypdfium2.PdfDocument(printed(stool()))
    for number, page in enumerate(document, start=1):
        text = page.get_textpage()
        boxes = [text.get_rect(index) for index in range(text.count_rects())]
        small = [box for box in boxes if box[3] - box[1] < 16]
        for index, one in enumerate(small):
            for other in small[index + 1 :]:
                across = min(one[2], other[2]) - max(one[0], other[0])
                up = min(one[3], other[3]) - max(one[1], other[1])
                assert across < 0.5 or up < 2.2, (number, one, other)
    document.close()


def test_a_plan_of_almost_nothing_still_makes_a_booklet() -> None:
    edition = stool()
    plan = replace(
        edition.plan, steps=(), photos=(), questions=(), releases=(), cautions=(), licence=""
    )
    bare = replace(
        edition,
        plan=plan,
        settled=replace(edition.settled, coupons=()),
        **dict.fromkeys(("hardware", "boards", "copies"), ()),
        pictures={},
        identity=replace(edition.identity, licence="", base_url=""),
    )
    found = " ".join(texts(printed(bare)))
    assert "Cut this first" not in found
    assert "Putting it together" not in found
    assert "No licence is stated" in found
