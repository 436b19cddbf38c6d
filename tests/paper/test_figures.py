"""What the booklet says of cutting time, costs, load and sag, read back from its pages."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from kerfolio.edition.cutting import cutting_of
from kerfolio.edition.in_use import used_of
from kerfolio.edition.loads import loads_of
from kerfolio.model.stock import PaperStock
from kerfolio.paper.booklet import booklet
from kerfolio.shop.span import RACKING, SPAN_CAUTIONS
from tests.edition.carrying import carrying
from tests.edition.used import sat
from tests.paper.editions import A4, LETTER, stool
from tests.paper.reading import outside, texts

PAPERS = pytest.mark.parametrize("paper", [A4, LETTER], ids=["a4", "letter"])


@cache
def printed(paper: PaperStock) -> bytes:
    return booklet(carrying(), paper)


def said(content: bytes) -> str:
    return " ".join(" ".join(texts(content)).split())


@PAPERS
def test_times_and_costs_have_a_section(paper: PaperStock) -> None:
    words, found = cutting_of(carrying()), said(printed(paper))
    assert words is not None
    assert "Cutting time and cost" in found
    assert f"Together, 1 of 2 sheets {words.metres:.1f}" in found
    for each in words.work:
        assert f"{each.title} {each.cuts} {each.metres:.1f}" in found
    for each in carrying().copies:
        assert f"{each.copies} {each.sheets} {each.total:.2f} {each.each:.2f}" in found
    for fact in words.assumptions:
        assert fact.label in found


@PAPERS
def test_loads_have_a_section_with_all_its_cautions(paper: PaperStock) -> None:
    loads, found = loads_of(carrying()), said(printed(paper))
    assert loads is not None
    assert "Load and sag" in found
    for words in (*SPAN_CAUTIONS, RACKING):
        assert words in found
    for each in loads.spans:
        assert each.asked in found
        assert each.warning in found
        for figure in each.figures:
            assert f"{figure.head} {figure.value}" in found
        for fact in each.assumptions:
            assert fact.label in found
            assert fact.source.split(";")[0] in found


@PAPERS
def test_a_thing_in_use_has_a_section_the_plain_sentence_first(paper: PaperStock) -> None:
    words, found = used_of(sat()), said(booklet(sat(), paper))
    assert words is not None
    (thing,) = words.things
    assert thing.sentence in found
    assert found.index(thing.sentence) < found.index(thing.figures[0].value)
    for text in (*words.cautions, *(each.label for each in words.assumptions)):
        assert text in found
    for figure in thing.figures:
        assert figure.value in found


@PAPERS
def test_an_assumption_of_all_spans_comes_once(paper: PaperStock) -> None:
    found = said(printed(paper))
    assert found.count("stated in the plan, else 3") == 2, "of what bends, and of the leg"
    assert "Own weight (top shelf)" in found


@PAPERS
def test_no_letter_leaves_the_margins(paper: PaperStock) -> None:
    assert outside(printed(paper), 12.0) == []
    assert outside(booklet(sat(), paper), 12.0) == []


def test_a_plan_without_them_has_neither_section() -> None:
    bare = said(booklet(replace(stool(), copies=()), A4))
    assert "Cutting time and cost" not in bare
    assert "Costs" not in bare
    assert "Load and sag" not in bare


def test_costs_alone_are_called_costs() -> None:
    found = said(booklet(stool(), A4))
    assert "Cutting time and cost" not in found
    assert "Costs" in found
    assert "1 1 92.50 92.50" in found
