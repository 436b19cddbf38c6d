"""What holds of every chapter of every document, whatever the plan."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from kerfolio.chapters.order import BOOKLET, PAGE, START, Making, chapters_of
from kerfolio.document.blocks import Heading, Paragraph
from kerfolio.document.chapter import Chapter
from kerfolio.document.words import Reference
from kerfolio.edition.edition import Edition
from kerfolio.edition.public import shown_to_all
from tests.chapters.told import locked as rack_locked
from tests.chapters.told import names_in, rack, references_in, words_of
from tests.edition.carrying import carrying
from tests.edition.of_set import edition_of_set
from tests.edition.used import sat
from tests.pages.invented import edition, locked
from tests.sets import SET

ORDERS = {"booklet": BOOKLET, "page": PAGE, "start page": START}
EDITIONS: dict[str, Callable[[], Edition]] = {
    "a rack": rack,
    "a rack for supporters": rack_locked,
    "a stool": edition,
    "in inches": lambda: edition("in"),
    "for supporters": lambda: shown_to_all(locked(edition())),
    "loaded": carrying,
    "sat on": sat,
    "a set": lambda: edition_of_set(SET),
}

_STRAIGHT = re.compile(r"\w'\w|\"")
_COPY = re.compile(r"\b\d+/[a-z]{3}")
_TIMES = re.compile(r"\d x \d")


def faults(order: tuple[Making, ...], found: Edition) -> list[str]:
    """Return what is wrong with the chapters of an edition."""
    known = _ids(order)
    return [each for chapter in chapters_of(found, order) for each in _faults(chapter, known)]


def _faults(chapter: Chapter, known: frozenset[str]) -> list[str]:
    leading = [each.chapter for each in references_in(chapter)]
    wrong = [f"leads nowhere: {each}" for each in leading if each not in known]
    wrong += [f"a name of the plan's file: {each}" for each in names_in(chapter)]
    for line in words_of(chapter).splitlines():
        wrong += [f"straight quote: {line}"] if _STRAIGHT.search(line) else []
        wrong += [f"x for ×: {line}"] if _TIMES.search(line) else []
        wrong += [f"label of a copy: {line}"] if _COPY.search(line) else []
        wrong += [f"back quote: {line}"] if "`" in line else []
    return [f"{chapter.id}: {each}" for each in wrong]


@cache
def _ids(order: tuple[Making, ...]) -> frozenset[str]:
    """Return the ids of all chapters that an order may have, whatever the plan."""
    made = (each() for each in EDITIONS.values())
    return frozenset(chapter.id for found in made for chapter in chapters_of(found, order))


@pytest.mark.parametrize("order", ORDERS.values(), ids=ORDERS)
@pytest.mark.parametrize("made", EDITIONS.values(), ids=EDITIONS)
def test_every_chapter_reads_well(made: Callable[[], Edition], order: tuple[Making, ...]) -> None:
    assert faults(order, made()) == []


@pytest.mark.parametrize("order", ORDERS.values(), ids=ORDERS)
@pytest.mark.parametrize("made", EDITIONS.values(), ids=EDITIONS)
def test_ids_are_unique_and_titles_are_there(
    made: Callable[[], Edition], order: tuple[Making, ...]
) -> None:
    chapters = chapters_of(made(), order)
    ids = [each.id for each in chapters]
    assert len(ids) == len(set(ids))
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", each) for each in ids)
    assert all(each.title for each in chapters)
    assert all(each.blocks and each.who for each in chapters)


def test_faults_are_seen() -> None:
    words = (
        "The maker's 3 x 4",
        Reference(text=" rails", chapter="nowhere"),
        ", `side.left`, 2/foot",
    )

    def spoilt(_: Edition) -> Chapter:
        blocks = (Heading(words="Spoilt"), Paragraph(words=words))
        return Chapter(id="spoilt", title="Spoilt", blocks=blocks)

    line = "The maker's 3 x 4 rails, `side.left`, 2/foot"
    assert faults((spoilt,), edition()) == [
        "spoilt: leads nowhere: nowhere",
        "spoilt: a name of the plan's file: side.left",
        f"spoilt: straight quote: {line}",
        f"spoilt: x for ×: {line}",
        f"spoilt: label of a copy: {line}",
        f"spoilt: back quote: {line}",
    ]


def test_a_plan_that_shows_nothing_has_its_cautions_still() -> None:
    found = edition()
    plan = replace(found.plan, access="supporters", show=())
    bare = shown_to_all(replace(found, plan=plan))
    ids = {each.id for each in chapters_of(bare, PAGE)}
    assert {"cautions", "releases", "about"} <= ids
    assert not ids & {"story", "steps", "costs", "cutting", "loads", "in-use", "swaps"}


_SENTENCE = 60
"""What has so many letters is a sentence; shorter lines may well be the same."""


def twice(chapters: tuple[Chapter, ...]) -> list[str]:
    """Return the sentences that stand in more than one chapter."""
    found: dict[str, set[str]] = {}
    for chapter in chapters:
        for line in words_of(chapter).splitlines():
            found.setdefault(line, set()).add(chapter.id)
    return [line for line, ids in found.items() if len(ids) > 1 and len(line) >= _SENTENCE]


@pytest.mark.parametrize("order", ORDERS.values(), ids=ORDERS)
@pytest.mark.parametrize("made", EDITIONS.values(), ids=EDITIONS)
def test_no_sentence_is_told_in_two_chapters(
    made: Callable[[], Edition], order: tuple[Making, ...]
) -> None:
    chapters = chapters_of(made(), order)
    assert twice(chapters) == []
    again = replace(chapters[0], id="again")
    assert twice((*chapters, again)) != []
