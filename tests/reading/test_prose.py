"""Markdown as prose: what is kept, and what is refused with its line."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.place import Place
from kerfolio.model.prose import (
    Alignment,
    Block,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    Span,
    Table,
)
from kerfolio.reading.desk import Desk
from kerfolio.reading.prose import PROSE, read_prose
from kerfolio.reading.prose_spans import link_fault
from tests.reading.desks import read


def blocks(text: str) -> tuple[Block, ...]:
    prose, findings = read_prose(text, "a.md")
    assert findings == ()
    return prose.blocks


def told(text: str) -> list[tuple[str, int, int]]:
    found = read_prose(text, "a.md", first_line=10)[1]
    return [(each.message, each.place.line, each.place.column) for each in found]


def paragraph(*spans: Span | str) -> Paragraph:
    return Paragraph(spans=tuple(Span(text=x) if isinstance(x, str) else x for x in spans))


def cell(text: str) -> tuple[Span, ...]:
    return (Span(text=text),) if text else ()


def test_styles() -> None:
    assert blocks("Cut *slowly*, **never** by `hand` at [the shop](https://example.org).") == (
        paragraph(
            Span(text="Cut "),
            Span(text="slowly", emphasis=True),
            Span(text=", "),
            Span(text="never", strong=True),
            Span(text=" by "),
            Span(text="hand", code=True),
            Span(text=" at "),
            Span(text="the shop", link="https://example.org"),
            Span(text="."),
        ),
    )


def test_styles_inside_each_other() -> None:
    assert blocks("[**a *b***](steps/)") == (
        paragraph(
            Span(text="a ", strong=True, link="steps/"),
            Span(text="b", strong=True, emphasis=True, link="steps/"),
        ),
    )


def test_a_style_inside_the_same_style_does_not_end_it() -> None:
    """An example of CommonMark 0.31.2, section 6.2."""
    assert blocks("*foo **bar *baz* bim** bop*") == (
        paragraph(
            Span(text="foo ", emphasis=True),
            Span(text="bar baz bim", strong=True, emphasis=True),
            Span(text=" bop", emphasis=True),
        ),
    )


def test_blocks() -> None:
    found = blocks("# Top\n\ntwo\nlines\n\n- one\n- two\n\n7. first\n8. second\n\n> quoted\n> on\n")
    assert found == (
        Heading(spans=cell("Top"), level=1),
        paragraph("two lines"),
        Listing(entries=((paragraph("one"),), (paragraph("two"),))),
        Listing(entries=((paragraph("first"),), (paragraph("second"),)), first=7),
        Quotation(blocks=(paragraph("quoted on"),)),
    )


def test_lists_inside_lists() -> None:
    deep = Listing(entries=((paragraph("c"),),), first=1)
    middle = Listing(entries=((paragraph("b"), deep),))
    assert blocks("- a\n  - b\n    1. c\n\n  more\n- d\n") == (
        Listing(entries=((paragraph("a"), middle, paragraph("more")), (paragraph("d"),))),
    )
    assert blocks("> - a\n>   - b\n") == (
        Quotation(
            blocks=(Listing(entries=((paragraph("a"), Listing(entries=((paragraph("b"),),))),)),)
        ),
    )


def test_boxes_to_tick() -> None:
    found = blocks("- [ ] sand *it*\n- [x] cut\n- \\[x] no box\n")
    assert found == (
        Listing(
            entries=(
                (paragraph("☐ sand ", Span(text="it", emphasis=True)),),
                (paragraph("☑ cut"),),
                (paragraph("[x] no box"),),
            )
        ),
    )


def test_a_table() -> None:
    """GitHub Flavored Markdown 0.29, section 4.10: alignment, escaped bars, short rows."""
    text = "| Sheet | Fit | `n` |\n|---|:-:|--:|\n| birch | 0.1 | 2 |\n| a \\| b |\n"
    assert blocks(text) == (
        Table(
            alignments=(Alignment.START, Alignment.CENTRE, Alignment.END),
            head=(cell("Sheet"), cell("Fit"), (Span(text="n", code=True),)),
            rows=((cell("birch"), cell("0.1"), cell("2")), (cell("a | b"), (), ())),
        ),
    )
    assert blocks("| | |\n|-|-|\n| a | b |") == (
        Table(alignments=(Alignment.START,) * 2, head=(), rows=((cell("a"), cell("b")),)),
    )


def test_code_keeps_its_lines() -> None:
    assert blocks("```\nG0 X1\n\n  G1 *Y2* <b>\n```\n") == (
        Code(lines=("G0 X1", "", "  G1 *Y2* <b>")),
    )
    assert blocks("a\n\n    b\n\n      c\n") == (paragraph("a"), Code(lines=("b", "", "  c")))
    assert blocks("- a\n\n  ~~~\n  b\n  ~~~\n") == (
        Listing(entries=((paragraph("a"), Code(lines=("b",))),)),
    )


def test_a_line_ends_where_the_maker_ends_it() -> None:
    assert blocks("one  \ntwo\\\nthree\nfour") == (paragraph("one\ntwo\nthree four"),)
    assert read_prose("one  \ntwo", "a.md")[0].plain() == "one two"


def test_headings_skip_no_level() -> None:
    found = blocks("## a\n#### b\n#### c\n### d\n## e\n")
    assert [each.level for each in found if isinstance(each, Heading)] == [1, 2, 2, 2, 1]


def test_plain_text_holds_every_word() -> None:
    text = "# a\n\n- b\n  - c\n\n> d\n\n    e\n\n| f | g |\n|-|-|\n| h | i |\n"
    assert read_prose(text, "a.md")[0].plain() == "a b c d e f g h i"


def test_plain_signs_are_no_marks() -> None:
    assert blocks("5 < 6 mm & 3*4, a_b_c") == (paragraph(Span(text="5 < 6 mm & 3*4, a_b_c")),)


@pytest.mark.parametrize(
    ("text", "message", "line", "column"),
    [
        ("a\n\n<div>x</div>\n", "raw HTML", 12, 1),
        ("a <b>x</b>", "raw HTML `<b>`", 10, 3),
        ("one\n  two <br> three", "raw HTML `<br>`", 11, 7),
        ("`one\ntwo` <i>", "raw HTML `<i>`", 11, 6),
        ("> - a *b\n>   c* <i>", "raw HTML `<i>`", 11, 8),
        ("# a <i> #", "raw HTML `<i>`", 10, 5),
        ("| a | a |\n|---|---|\n| b | b <i> |", "raw HTML `<i>`", 12, 9),
        ("a\n\n***\n", "a rule", 12, 1),
        ("- a\n\n  ***\n", "a rule", 12, 3),
        ("so ![x](y.png)", "a picture in the text", 10, 4),
        ("- a\n  - b\n    - c\n      - d\n", "a list on a fourth level", 13, 7),
        ("- - - - d\n", "a list on a fourth level", 10, 7),
        ("> 1. - > d\n", "a quotation on a fourth level", 10, 8),
        ("> " * 60 + "d", "a quotation on a fourth level", 10, 7),
        ("# a\n## b\n### c\n#### d\n", "a heading of a fourth level", 13, 1),
        ("- # a\n", "a heading in a list or quotation", 10, 3),
        ("1. a\n2. b\n4. c\n", "`4.` where `3.` would follow", 12, 1),
        ("-\n- a\n", "an entry without words", 10, 1),
        ("a\n\n#\n", "a heading without words", 12, 1),
        ("a\n\n>\n", "a quotation without words", 12, 1),
        ("```\n\n```\n", "a block of code without words", 10, 1),
        ("```\na\n", "a block of code without an end", 10, 1),
        ("```gcode\na\n```\n", "`gcode` after the signs that open a block of code", 10, 1),
        ("a\n| b | c |\n| d | e |\n", "a table without its line of dashes", 10, 1),
        ("| a | b |\n|---|\n| c | d |\n", "a table without its line of dashes", 10, 1),
        ("a | b\n--|--|--\n", "a table without its line of dashes", 10, 1),
        ("| a |\n|---|\n| b | c |\n", "a cell beside the last column", 12, 6),
        ("| a |\n|---|\n", "a table without rows", 10, 1),
        ("|a|b|c|d|e|f|g|\n|-|-|-|-|-|-|-|\n|h|\n", "a table of 7 columns", 10, 1),
        ("a[^1]\n", "a footnote", 10, 2),
        ("a\n\n[^1]: b\n", "a footnote", 12, 1),
        ("a ~~b~~\n", "words crossed out", 10, 3),
        ("[a **[b](c)** d](e)", "`](` without a link", 10, 16),
        ("[a](b c)", "`](` without a link", 10, 3),
        ("[a](b 'c')", "a title of a link, `c`", 10, 1),
        ("[a]\n\n[a]: b\n[c]: d\n", "no link uses the address of `[c]`", 13, 1),
        ("[a]\n\n[a]: b\n[a]: d\n", "no link uses the address of `[a]`", 13, 1),
        ("a [](b)", "the link `b` has no words", 10, 3),
        ("[x](javascript:alert)", "a link to `javascript:`", 10, 1),
        ("[x](data:text/html,y)", "a link to `data:`", 10, 1),
        ("[x](file:///etc)", "a link to `file:`", 10, 1),
        ("[x](//example.org)", "the link `//example.org` leads nowhere", 10, 1),
        ("[x]()", "the link `` leads nowhere", 10, 1),
        ("at <ftp://example.org>", "a link to `ftp:`", 10, 4),
    ],
)
def test_refuses_with_line_and_column(text: str, message: str, line: int, column: int) -> None:
    assert told(text)[0] == (message, line, column)


@pytest.mark.parametrize(
    "address",
    [
        "https://example.org/a?b=c#d",
        "http://example.org",
        "mailto:ada@example.org",
        "../log/",
        "#a",
    ],
)
def test_links_that_are_kept(address: str) -> None:
    assert link_fault(address) is None


def test_a_spot_in_yaml_is_one_of_the_file() -> None:
    _, said = read(PROSE, "|\n  one\n\n  two <i>x\n")
    assert said == ["raw HTML `<i>` / Write Markdown alone; put a sign such as `<` in back quotes."]
    prose, findings = read_prose("one\n\ntwo <i>x", "p.yaml", first_line=4, indent=2)
    assert prose
    assert findings[0].place == Place("p.yaml", 6, 7)


@pytest.mark.parametrize(
    ("text", "finding"),
    [
        (">\n  Take\n  - a saw\n  - glue\n", ("a list", 3, 3, ">")),
        (">-\n  1. saw\n  2. glue\n", ("a list", 3, 3, ">")),
        (">-\n  1. saw\n\n  Then\n  1. rest\n", ("a list", 5, 3, ">")),
        (">\n  | a | b |\n  |---|---|\n", ("a table", 3, 3, ">")),
        (">\n  Type\n  ```\n  kerfolio\n  ```\n", ("code", 3, 3, ">")),
        (">\n  Said\n  ## So\n", ("a heading", 3, 3, ">")),
        ("Take\n  - a saw\n  - glue\n", ("a list", 2, 3, "")),
        ('"Take\n  > a saw"\n', ("a quotation", 2, 3, '"')),
    ],
)
def test_a_list_that_yaml_folds_is_told(text: str, finding: tuple[str, int, int, str]) -> None:
    what, line, column, style = finding
    desk = Desk()
    prose, said = read(PROSE, text, desk)
    how = "Write `|` in place of `>`" if style == ">" else "Write the text below its key, under `|`"
    assert prose
    assert said == [f"{what} that YAML joins to the line above / {how}: then lines stay lines."]
    assert (desk.findings[0].place.line, desk.findings[0].place.column) == (line, column)


@pytest.mark.parametrize(
    "text",
    [
        ">\n  One line - or two -\n  runs on, in the year\n  2020. So\n",
        ">\n  Take\n\n  - a saw\n",
        ">\n  Take\n    - a saw\n    - glue\n",
        "|\n  Take\n  - a saw\n",
        "Take - a saw\n",
        ">\n  *Take*\n  #10 screws\n  *care*\n",
    ],
)
def test_what_yaml_keeps_or_never_was_a_list_is_not(text: str) -> None:
    assert read(PROSE, text)[1] == []


def test_a_text_in_quotes_points_at_its_beginning() -> None:
    place = Place("p.yaml", 4, 9)
    _, findings = read_prose("one\n\ntwo <i>x", "p.yaml", place=place)
    assert findings[0].place == place


def test_an_empty_text_is_empty_prose() -> None:
    prose, findings = read_prose(" \n\n", "a.md")
    assert not prose
    assert findings == ()
    assert prose.plain() == ""


MARKS = st.sampled_from("*_`[]()<>!#-+>123.\\&\"'|~ \n\tab") | st.characters(codec="utf-8")


def spans_in(found: tuple[Block, ...]) -> Iterator[Span]:
    for block in found:
        match block:
            case Paragraph() | Heading():
                yield from block.spans
            case Listing():
                yield from (span for entry in block.entries for span in spans_in(entry))
            case Quotation():
                yield from spans_in(block.blocks)
            case Table():
                yield from (x for row in (block.head, *block.rows) for c in row for x in c)


@given(st.text(alphabet=MARKS, max_size=80))
def test_any_text_is_prose_or_told(text: str) -> None:
    prose, findings = read_prose(text, "a.md")
    assert isinstance(prose, Prose)
    assert all(f.message and f.advice and f.place.line >= 1 for f in findings)
    spans = list(spans_in(prose.blocks))
    assert all(span.text for span in spans)
    assert all(link_fault(span.link) is None for span in spans if span.link)
    assert prose or findings or not text.strip()
