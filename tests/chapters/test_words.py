"""What chapters say to a reader of another language, and the quantities that they find."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from fluent.syntax import FluentParser
from fluent.syntax import ast as fluent
from fluent.syntax.visitor import Visitor

from kerfolio.basis.lengths import both_text, sag_pair, size_text
from kerfolio.basis.masses import mass_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.thickness import sold_range_text
from kerfolio.chapters.document_of import booklet_document
from kerfolio.chapters.order import BOOKLET, PAGE, START
from kerfolio.chapters.quantities import told
from kerfolio.document.words import Both
from kerfolio.edition.edition import Edition
from tests.basis.test_catalogue import WORDS
from tests.chapters.told import words_of
from tests.pages.invented import edition

GERMAN = Reader(language="de")
_WORDS = 3
"""How many words in a row tell a language."""


class Texts(Visitor):  # type: ignore[misc]
    """The texts of messages between their values, as they are read."""

    def __init__(self) -> None:
        self.found: set[str] = set()

    def visit_TextElement(self, node: fluent.TextElement) -> None:  # noqa: N802
        text = " ".join(node.value.split())
        if len(re.findall(r"[^\W\d_]{2,}", text)) >= _WORDS:
            self.found.add(text)


@cache
def texts(language: str) -> frozenset[str]:
    """Return what the catalogue says in a language in some words without a value."""
    seen = Texts()
    for path in sorted((WORDS / language).glob("*.ftl")):
        seen.visit(FluentParser().parse(path.read_text("utf-8")))
    return frozenset(seen.found)


def all_words(found: Edition) -> str:
    """Return the words of all chapters, and what the booklet says of itself."""
    document = booklet_document(found)
    made = (make(found) for make in dict.fromkeys((*BOOKLET, *PAGE, *START)))
    chapters = "\n".join(words_of(each) for each in made if each is not None)
    return "\n".join((words_of(document.opening), document.title, document.foot, chapters))


def test_a_german_reader_reads_no_english_of_the_catalogue() -> None:
    found = edition()
    english = all_words(found)
    german = all_words(replace(found, identity=replace(found.identity, language="de")))
    only_english = texts("en") - texts("de")
    assert [each for each in sorted(only_english) if each in german] == []
    assert sum(each in english for each in only_english) > 100
    for words in ("Was du brauchst", "Miss deine Platte", "Bauheft", "17,8", "Platte 1 von 1"):
        assert words in german


def test_quantities_are_found_in_either_language() -> None:
    for reader in (METRIC, GERMAN, METRIC.inches, GERMAN.inches):
        first, other = sag_pair(0.01, reader)
        for text in (
            both_text(360.5, reader),
            size_text((360, 450.5), reader),
            sold_range_text(17.2, 18.6, reader),
            mass_text(8.2, reader),
            f"{first} ({other})",
        ):
            (before, found, after) = told(f"mit ({text}), so")
            assert (before, after) == ("mit (", "), so")
            assert isinstance(found, Both)
            assert f"{found.first} ({found.other})" == text


def test_what_a_load_is_spread_over_belongs_to_it() -> None:
    metre = Both(first="20 kg je Meter", other="13 lb je Fuß")
    assert told("20 kg je Meter (13 lb je Fuß), verteilt") == (metre, ", verteilt")
    assert told("20 kg im Mittel (13 lb)") == "20 kg im Mittel (13 lb)"
