"""Every chapter is set once in each document that has it: page, start page and booklet."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import Any

import pytest

import kerfolio.chapters.document_of
import kerfolio.pages.plan
import kerfolio.pages.start
from kerfolio.booklet.pdf import booklet_pdfs
from kerfolio.chapters.document_of import booklet_document
from kerfolio.chapters.order import BOOKLET, PAGE, START, Making, chapters_of
from kerfolio.document.blocks import Paragraph
from kerfolio.document.chapter import Chapter
from kerfolio.edition.edition import Edition
from kerfolio.pages.plan import plan_page
from kerfolio.pages.start import start_here
from tests.pages.invented import CONTENTS, edition, site
from tests.paper.editions import A4
from tests.paper.reading import texts


def mark_of(chapter: Chapter) -> str:
    """Return a word that stands nowhere else; a line is never broken in it."""
    return f"Q{sum(map(ord, chapter.id)):04d}{chapter.id[0].upper()}Z"


def marked(found: Edition, order: tuple[Making, ...]) -> tuple[Chapter, ...]:
    """Return the chapters of an order, one word changed in each."""
    return tuple(
        replace(each, blocks=(*each.blocks, Paragraph(words=f"A {mark_of(each)} word.")))
        for each in chapters_of(found, order)
    )


@pytest.fixture
def changed(monkeypatch: pytest.MonkeyPatch) -> None:
    rooms: tuple[Any, ...] = (
        kerfolio.chapters.document_of,
        kerfolio.pages.plan,
        kerfolio.pages.start,
    )
    for each in rooms:
        monkeypatch.setattr(each, "chapters_of", marked)


def counts(text: str, order: tuple[Making, ...]) -> Counter[int]:
    """Return how often each chapter's word was found: how many were found so often."""
    marks = [mark_of(each) for each in chapters_of(edition(), order)]
    assert len(marks) == len(set(marks))
    return Counter(text.count(each) for each in marks)


@pytest.mark.usefixtures("changed")
def test_a_word_changed_in_a_chapter_is_changed_once_in_the_booklet() -> None:
    found = edition()
    look, document = found.identity.look, booklet_document(found)
    content = booklet_pdfs(document, {"a4": A4}, found.pictures, look)["a4"]
    assert set(counts("\n".join(texts(content)), BOOKLET)) == {1}


@pytest.mark.usefixtures("changed")
def test_a_word_changed_in_a_chapter_is_changed_once_on_the_page() -> None:
    assert set(counts(plan_page(site(), edition()), PAGE)) == {1}


@pytest.mark.usefixtures("changed")
def test_a_word_changed_in_a_chapter_is_changed_once_on_the_start_page() -> None:
    text = start_here(edition(), CONTENTS, {})
    assert set(counts(text, START)) == {1}


def test_a_word_that_was_not_changed_is_found_nowhere() -> None:
    assert set(counts(plan_page(site(), edition()), PAGE)) == {0}
