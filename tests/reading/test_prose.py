"""Markdown as prose: what is kept, and what is refused with its line."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.place import Place
from kerfolio.model.prose import Block, BlockKind, Prose, Span
from kerfolio.reading.prose import PROSE, link_fault, read_prose
from tests.reading.desks import read


def blocks(text: str) -> tuple[Block, ...]:
    prose, findings = read_prose(text, "a.md")
    assert findings == ()
    return prose.blocks


def told(text: str) -> list[tuple[str, int]]:
    return [(f.message, f.place.line) for f in read_prose(text, "a.md", first_line=10)[1]]


def paragraph(*spans: Span) -> Block:
    return Block(kind=BlockKind.PARAGRAPH, entries=(spans,))


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


def test_blocks() -> None:
    found = blocks("# Top\n\ntwo\nlines\n\n- one\n- two\n\n1. first\n2. second\n\n> quoted\n> on\n")
    assert [(each.kind, each.level) for each in found] == [
        (BlockKind.HEADING, 1),
        (BlockKind.PARAGRAPH, 0),
        (BlockKind.BULLETS, 0),
        (BlockKind.NUMBERS, 0),
        (BlockKind.QUOTE, 0),
    ]
    assert found[1] == paragraph(Span(text="two lines"))
    assert found[2].entries == ((Span(text="one"),), (Span(text="two"),))
    assert found[4].entries == ((Span(text="quoted on"),),)


def test_paragraphs_inside_a_list_entry_run_together() -> None:
    assert blocks("- one\n\n  more\n- two\n")[0].entries == (
        (Span(text="one more"),),
        (Span(text="two"),),
    )


def test_plain_signs_are_no_marks() -> None:
    assert blocks("5 < 6 mm & 3*4, a_b_c") == (paragraph(Span(text="5 < 6 mm & 3*4, a_b_c")),)


@pytest.mark.parametrize(
    ("text", "message", "line"),
    [
        ("a\n\n<div>x</div>\n", "raw HTML", 12),
        ("a <b>x</b>", "raw HTML `<b>`", 10),
        ("one\ntwo <br> three", "raw HTML `<br>`", 11),
        ("```\ncode\n```", "a block of code", 10),
        ("a\n\n    code", "a block of code", 12),
        ("a\n\n***\n", "a rule", 12),
        ("![x](y.png)", "a picture in the text", 10),
        ("- a\n  - b\n", "a list inside a list", 11),
        ("> - b\n", "a list inside a quotation", 10),
        ("[x](javascript:alert)", "a link to `javascript:`", 10),
        ("[x](data:text/html,y)", "a link to `data:`", 10),
        ("[x](file:///etc)", "a link to `file:`", 10),
        ("[x](//example.org)", "the link `//example.org` leads nowhere", 10),
        ("[x]()", "the link `` leads nowhere", 10),
        ("<ftp://example.org>", "a link to `ftp:`", 10),
    ],
)
def test_refuses_with_the_line(text: str, message: str, line: int) -> None:
    assert told(text)[0] == (message, line)


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


def test_lines_of_a_block_in_yaml_are_lines_of_the_file() -> None:
    _, said = read(PROSE, "|\n  one\n\n  two <i>x\n")
    assert said == ["raw HTML `<i>` / Write Markdown alone; put a sign such as `<` in back quotes."]
    prose, findings = read_prose("one\n\ntwo <i>x", "p.yaml", first_line=4)
    assert prose
    assert findings[0].place == Place("p.yaml", 6, 1)


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


@given(st.text(alphabet=MARKS, max_size=80))
def test_any_text_is_prose_or_told(text: str) -> None:
    prose, findings = read_prose(text, "a.md")
    assert isinstance(prose, Prose)
    assert all(f.message and f.advice and f.place.line >= 1 for f in findings)
    spans = [span for block in prose.blocks for entry in block.entries for span in entry]
    assert all(span.text for span in spans)
    assert all(link_fault(span.link) is None for span in spans if span.link)
