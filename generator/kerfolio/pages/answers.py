"""Answers to what every reader asks, worked out from the plan itself."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text
from kerfolio.basis.words import counted, listed
from kerfolio.edition.cutter_words import cutter_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.licence_words import RULES, contact_words
from kerfolio.edition.measuring import measuring_of
from kerfolio.edition.proved_words import proved_words
from kerfolio.pages.facts import sheet_ranges
from kerfolio.pages.licences import licence_note


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A question and its answer in plain words."""

    question: str
    answer: str


def usual_answers(edition: Edition) -> tuple[Answer, ...]:
    """Return the answers on thickness, cutter, sheets, formats and selling."""
    found = (
        Answer(question="My sheet is not quite that thick. What now?", answer=_thickness(edition)),
        Answer(question="Which cutter do I need?", answer=cutter_words(edition)),
        Answer(question="How many sheets do I buy?", answer=_sheets(edition)),
        Answer(question="Which file formats are there?", answer=_formats(edition)),
        Answer(question="May I sell what I make?", answer=_selling(edition)),
    )
    return tuple(each for each in found if each.answer)


def _formats(edition: Edition) -> str:
    return (
        f"Cut files come {format_words(edition.formats).coming}, one file for each sheet and one "
        "for each part. Templates, booklet, layouts and setup sheets are PDF, on A4 and on US "
        "Letter. Lists are CSV, which any spreadsheet opens."
    )


def _thickness(edition: Edition) -> str:
    ranges = sheet_ranges(edition)
    if not ranges:
        return ""
    first = edition.first
    spans = listed(
        [f"{each.title}, {sold_range_text(each.least, each.most, first)}" for each in ranges]
    )
    words, proved = measuring_of(edition), proved_words(edition)
    if not words.makes:
        return f"{words.take} The plan is published for {spans}. {proved}".rstrip()
    return (
        f"Few are. The plan is for {spans}, and every slot follows what you measured: see “Files "
        f"for your sheet” on this page. {proved}"
    ).rstrip()


def _sheets(edition: Edition) -> str:
    first = edition.first
    rows = [
        f"{counted(row.count, 'sheet')} of {row.title}, "
        f"{sheet_text((row.width, row.height), first)}"
        for row in edition.sheets
    ]
    return f"{listed(rows)}, as laid out on this page." if rows else ""


def _selling(edition: Edition) -> str:
    words = (licence_note(edition).sentence, RULES, contact_words(edition.identity))
    return " ".join(filter(None, words))
