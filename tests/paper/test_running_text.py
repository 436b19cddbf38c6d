"""A maker's text on paper: lists, code and tables over lines and pages."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.model.prose import Alignment, Block, Code, Listing, Paragraph, Prose, Span, Table
from kerfolio.paper.band import Band
from kerfolio.paper.flow import leaves
from kerfolio.paper.grid import Grid
from kerfolio.paper.running_text import prose
from kerfolio.paper.type import READING
from kerfolio.writing.page import Panel, Run, Text
from kerfolio.writing.setting import width
from tests.paper.editions import A4

MEASURE = 126.0
GRID = Grid(paper=A4)


def paragraph(text: str) -> Paragraph:
    return Paragraph(spans=(Span(text=text),))


def bands(*blocks: Block) -> tuple[Band, ...]:
    return prose(Prose(blocks=blocks), MEASURE)


def texts(found: Sequence[Band]) -> list[tuple[float, str]]:
    """Return the lines with where they begin, mm."""
    marks = [mark for band in found for passage in band.passages for mark in passage.marks]
    return [
        (round(mark.x, 2), "".join(run.text for run in mark.runs))
        for mark in marks
        if isinstance(mark, Text)
    ]


def test_a_list_inside_a_list_stands_further_in() -> None:
    inner = Listing(entries=((paragraph("two"),),), first=1)
    assert texts(bands(Listing(entries=((paragraph("one"), inner, paragraph("three")),)))) == [
        (0.0, "–"),
        (5.0, "one"),
        (5.0, "1."),
        (10.0, "two"),
        (5.0, "three"),
    ]


def test_a_box_stands_for_the_sign_of_its_entry() -> None:
    found = texts(bands(Listing(entries=((paragraph("☐ sand"),), (paragraph("rest"),)))))
    assert found == [(5.0, "☐ sand"), (0.0, "–"), (5.0, "rest")]


def test_wide_numbers_do_not_touch_their_entries() -> None:
    (sign, number), (begin, _) = texts(bands(Listing(entries=((paragraph("a"),),), first=99_999)))
    assert (sign, number) == (0.0, "99999.")
    assert begin > width((Run(number, READING),)) + 1


def test_a_line_feed_ends_a_line() -> None:
    assert texts(bands(paragraph("one\ntwo"))) == [(0.0, "one"), (0.0, "two")]


def test_code_keeps_its_lines_and_sets_in_what_goes_on() -> None:
    long = "G1 " * 60
    found = bands(Code(lines=("G0  X1", "", "  G1", long.rstrip())))
    lines = [text for _, text in texts(found)]
    assert lines[:3] == ["G0  X1", "", "  G1"]
    assert all(line.startswith("   G1") for line in lines[4:])
    assert " ".join(" ".join(lines[3:]).split()) == long.rstrip()
    marks = [mark for band in found for passage in band.passages for mark in passage.marks]
    assert all(width(mark.runs) < MEASURE - 5 for mark in marks if isinstance(mark, Text))
    grounds = [mark for mark in marks if isinstance(mark, Panel)]
    assert len(grounds) == len(found)
    assert {ground.width for ground in grounds} == {MEASURE}


def table(rows: int, text: str) -> Table:
    cell = (Span(text=text),)
    return Table(
        alignments=(Alignment.START, Alignment.END),
        head=((Span(text="Head"),), (Span(text="Other"),)),
        rows=((cell, cell),) * rows,
    )


def test_a_table_over_pages_repeats_its_head() -> None:
    pages = leaves(bands(table(120, "a")), GRID)
    assert len(pages) > 2
    for page in pages:
        assert [text for _, text in texts([band for _, band in page])][:2] == ["Head", "Other"]


def test_no_row_runs_off_the_page() -> None:
    pages = leaves(bands(table(2, "a word of many " * 400)), GRID)
    assert len(pages) > 2
    for page in pages:
        assert all(down + band.height <= GRID.height + 1e-6 for down, band in page)


def test_a_table_without_a_head_has_one_line_above_it() -> None:
    plain = Table(alignments=(Alignment.START,), head=(), rows=(((Span(text="a"),),),))
    assert [text for _, text in texts(bands(plain))] == ["a"]
    assert bands(plain)[0].height == 0.0
