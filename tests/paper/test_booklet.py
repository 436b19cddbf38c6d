"""The booklet, the layouts and the setup sheets, read back from their pages."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pikepdf
import pypdfium2
import pytest

from kerfolio.basis.lengths import inch_text, mm_number
from kerfolio.basis.masses import mass_number
from kerfolio.edition.cautions import cautions_of
from kerfolio.edition.edition import Edition
from kerfolio.layouts.saw import saw_plan
from kerfolio.model.plan import HardwareUse, Photo, Step
from kerfolio.model.prose import (
    Alignment,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    Span,
    Table,
)
from kerfolio.model.statement import Named
from kerfolio.model.stock import PaperStock
from kerfolio.paper.booklet import booklet
from tests.paper.editions import A4, LETTER, stool
from tests.paper.printed import layout_pdf, setup_pdf
from tests.paper.reading import fonts, outside, sizes, texts
from tests.paper.stool_plan import prose

PAPERS = pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])
Printer = Callable[[Edition, PaperStock], bytes]
PRINTERS = pytest.mark.parametrize("printer", [booklet, layout_pdf, setup_pdf])


@cache
def printed(paper: PaperStock, units: str = "mm") -> bytes:
    return booklet(stool(units), paper)


def words(content: bytes) -> str:
    return " ".join(texts(content))


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
def test_every_part_stands_in_the_list_with_both_sizes(paper: PaperStock) -> None:
    edition = stool()
    found = words(printed(paper))
    for row in edition.parts:
        for mark in row.marks:
            assert re.search(rf"\b{mark}\b", found)
        metric = f"{mm_number(row.width)} × {mm_number(row.height)}"
        inch = " × ".join(inch_text(each).removesuffix(" in") for each in (row.width, row.height))
        line = f"{row.part}.*{row.count} {row.sheet} {mm_number(row.thickness)} {metric} {inch} "
        assert re.search(line + mass_number(row.mass, "mm"), found), row.part


def test_the_reader_s_unit_comes_first() -> None:
    assert "14 3/16 × 17 23/32 360 × 450" in words(printed(LETTER, "in"))
    assert "360 × 450 14 3/16 × 17 23/32" in words(printed(LETTER, "mm"))


def test_steps_carry_title_pieces_hardware_tools_and_caution() -> None:
    found = words(printed(A4))
    for step in stool().plan.steps:
        assert step.title in found
        for tool in step.tools:
            assert tool in found
        assert step.text.plain() in found
    assert "ADD A1 side.left B rail A2 side.right" in found
    assert "2 × Bolt M6 × 40, hexagon socket" in found
    assert "8 min" in found, "7.5 minutes, as on the page"
    assert "By hand: File the slots until a tab goes in. CAUTION Keep fingers" in found


def test_every_line_of_the_lists_to_buy_is_there() -> None:
    found = words(printed(A4))
    assert "1 Birch plywood 18 mm (ply) 17.8 2440 × 1220 about 96 × 48" in found
    assert "1 Pine 45 × 45 (foot) 45 × 45 300 11 13/16" in found
    assert "2 Bolt M6 × 40, hexagon socket seat 1/4-20 × 1 1/2 in" in found
    assert "Together 92.50" in found
    assert "No price is known for 1 line of the list." in found


def test_all_cautions_are_there_the_plan_s_own_first() -> None:
    found = words(printed(A4))
    cautions = cautions_of(stool())
    for each in cautions:
        assert each.text in found
    own = stool().plan.cautions
    assert all(each in found for each in own)
    assert found.index(own[0]) < found.index(cautions[0].text)


def test_the_coupon_leads_to_the_folder() -> None:
    found = words(printed(A4))
    assert "3 17.8 17.6 mm (0.693 in) cut/17.6mm 4 18 17.8 mm (0.701 in) cut/17.8mm" in found
    assert "6 18.4 18.2 mm (0.717 in) none: thicker than the plan is published for" in found
    assert "eight points 50 mm (2 in) in from the edges" in found  # EN 324-1


def test_a_reader_finds_the_file_for_the_tools_at_hand() -> None:
    page = texts(printed(A4))[2]
    for tools, files in (
        ("A CNC router", "cut/.*setup/"),
        ("jigsaw", "templates/"),
        ("print shop", "roll"),
    ):
        assert re.search(f"{tools}.*{files}", page)
    assert "saw sheets" not in page
    sawn = replace(stool(), saw=saw_plan(stool().settled))
    assert "A table saw or a track saw layout/, the saw sheets" in words(booklet(sawn, A4))
    assert (
        "engravings on them; pockets, holes and openings inside them; outlines outside them, by "
        "half the cutter’s width, 3 mm (0.118 in)."
    ) in page


def test_the_maker_s_address_stands_where_the_licence_asks_for_it() -> None:
    identity = replace(stool().identity, contact="mailto:ida@example.org")
    pages = texts(booklet(replace(stool(), identity=identity), A4))
    for page in (pages[0], pages[-1]):
        assert "Write to Ida Fernhill: ida@example.org" in page
    assert "Write to" not in words(printed(A4))


def test_releases_come_newest_first_and_corrections_are_named() -> None:
    found = words(printed(A4))
    assert found.index("Slots moved 12 mm inward.") < found.index("Rail 2 mm longer.")
    assert "9 MAY 2026 CORRECTION: AN EARLIER RELEASE WAS WRONG Rail 2 mm longer." in found


def test_the_licence_is_one_plain_sentence_on_the_cover_and_at_the_end() -> None:
    pages = texts(printed(A4))
    sentence = "sell what you make, if you name the maker and share your changes under the same"
    assert sentence in pages[0]
    assert sentence in pages[-1]


def test_drawings_in_place_of_photographs_are_named_as_such() -> None:
    found = words(printed(A4))
    assert "Shown as a drawing, not a photograph." in found
    assert "The cover and step 1 are shown as a drawing, not a photograph." in found


def test_photographs_are_not_called_drawings() -> None:
    edition = stool()
    photo = Photo(file="photos/finished.jpg", alt="Done", cover=True)
    steps = tuple(replace(step, photo=None) for step in edition.plan.steps)
    plain = replace(edition, plan=replace(edition.plan, photos=(photo,), steps=steps))
    found = words(booklet(plain, A4))
    assert "The pictures of the build are photographs" in found
    assert "not a photograph" not in found


@PAPERS
def test_the_contents_name_the_page_where_each_section_begins(paper: PaperStock) -> None:
    content = printed(paper)
    pages = texts(content)
    with (
        pikepdf.open(io.BytesIO(content)) as document,
        document.open_outline() as outline,
    ):
        for item in outline.root:
            number = document.pages.index(pikepdf.Page(item.destination[0])) + 1
            assert str(item.title) in pages[number - 1]
            assert f"{item.title} {number}" in pages[1]
        assert len(outline.root) == 12


@PAPERS
def test_no_step_is_torn_apart_where_a_page_can_hold_it(paper: PaperStock) -> None:
    edition = stool()
    steps = edition.plan.steps * 5
    many = replace(edition, plan=replace(edition.plan, steps=steps))
    pages = texts(booklet(many, paper))
    for step in edition.plan.steps:
        with_title = [page for page in pages if step.title in page]
        assert all(step.text.plain() in page for page in with_title)


def long_edition() -> Edition:
    """Return an edition of everything at its longest: names, words, lists, prose of all kinds."""
    edition = stool()
    name = "a-very-long-name-for-a-part-that-goes-on-and-on-without-a-blank-in-it"
    point = Paragraph(spans=(Span(text="A point of some length. " * 5),))
    word = Paragraph(spans=(Span(text="W" * 300),))
    inner = Listing(entries=((word, Listing(entries=((word, Code(lines=("W" * 300,))),))),))
    cell = (Span(text="a cell with much to say " * 60),)
    text = Prose(
        blocks=(
            *(Heading(spans=(Span(text="A heading " * 12),), level=level) for level in (1, 2, 3)),
            Listing(entries=((point, inner),) * 4),
            Listing(entries=((point,), (point,)), first=99_998),
            Quotation(blocks=(point, inner)),
            Code(lines=("W" * 300, "  a word and another " * 40)),
            Table(
                alignments=(Alignment.END, *(Alignment.CENTRE,) * 5),
                head=((Span(text="W" * 100),),) * 6,
                rows=((cell,) * 6, ((),) * 6) * 3,
            ),
            *(prose("W" * 300, "A sentence that is said again. " * 40).blocks),
        )
    )
    step = Step(
        title="A title so long that it cannot stand on a single line of any page " * 2,
        add=tuple(Named(name) for _ in range(30)),
        tools=("a tool with a remarkably long name, in three sizes",) * 6,
        hardware=(HardwareUse(item=Named("a-bolt-nobody-has-ever-heard-of-before"), count=144),),
        text=text,
        caution="Mind this. " * 60,
    )
    parts = tuple(
        replace(
            row,
            part=name,
            marks=tuple(f"{row.mark}{number}" for number in range(1, 60)),
            note="A note that has much to say about the part. " * 4,
        )
        for row in edition.parts
    )
    plan = replace(
        edition.plan,
        title="The longest name that a bench was ever given in this workshop",
        summary="A summary. " * 30,
        steps=(step, step),
        cautions=("A caution of the plan. " * 20,) * 12,
    )
    identity = replace(edition.identity, title="A workshop " * 6, maker="M. " * 40)
    return replace(edition, plan=plan, parts=parts * 12, identity=identity, pictures={})


@PAPERS
@PRINTERS
def test_the_longest_words_stay_within_the_page(printer: Printer, paper: PaperStock) -> None:
    assert outside(printer(long_edition(), paper), 8.0) == []


def test_a_plan_of_almost_nothing_still_makes_a_booklet() -> None:
    edition = stool()
    plan = replace(
        edition.plan, steps=(), photos=(), questions=(), releases=(), cautions=(), licence=""
    )
    bare = replace(
        edition,
        plan=plan,
        settled=replace(edition.settled, coupons=()),
        hardware=(),
        boards=(),
        copies=(),
        pictures={},
        identity=replace(edition.identity, licence="", base_url=""),
    )
    found = words(booklet(bare, A4))
    assert "Cut this first" not in found
    assert "Putting it together" not in found
    assert "No licence is stated" in found


def test_each_sheet_has_a_page_with_its_pieces() -> None:
    (page,) = texts(layout_pdf(stool(), A4))
    assert "Sheet 1 of 1" in page
    assert "Birch plywood 18 mm, drawn for a measured 17.80 mm" in page
    for part in stool().settled.parts:
        for piece in part.pieces:
            assert f"{piece.mark} {piece.label}" in page


@PAPERS
def test_lines_of_text_never_lie_on_each_other(paper: PaperStock) -> None:
    document = pypdfium2.PdfDocument(printed(paper))
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
