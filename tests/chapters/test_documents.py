"""Every chapter is set once in a booklet."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

import kerfolio.chapters.document_of
from kerfolio.booklet.pdf import booklet_pdf
from kerfolio.chapters.document_of import booklet_document
from kerfolio.chapters.order import BOOKLET, Making, chapters_of
from kerfolio.document.blocks import Paragraph
from kerfolio.document.chapter import Chapter
from kerfolio.edition.edition import Edition
from tests.pages.invented import edition
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
    monkeypatch.setattr(kerfolio.chapters.document_of, "chapters_of", marked)


def counts(text: str, order: tuple[Making, ...]) -> Counter[int]:
    """Return how often each chapter's word was found: how many were found so often."""
    marks = [mark_of(each) for each in chapters_of(edition(), order)]
    assert len(marks) == len(set(marks))
    return Counter(text.count(each) for each in marks)


@pytest.mark.usefixtures("changed")
def test_a_word_changed_in_a_chapter_is_changed_once_in_the_booklet() -> None:
    found = edition()
    content = booklet_pdf(booklet_document(found), A4, found.pictures, found.identity.look)
    assert set(counts("\n".join(texts(content)), BOOKLET)) == {1}
