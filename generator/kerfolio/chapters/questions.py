"""Questions and answers: those of readers, then what every reader asks, from the plan itself."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text
from kerfolio.document.blocks import Asked
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.licence_words import (
    contact_words,
    licence_of,
    licence_rules,
    licence_sentence,
)
from kerfolio.edition.measuring import measuring_of
from kerfolio.model.prose import sentences


def questions(edition: Edition) -> Chapter:
    """Return them; no plan is without the usual ones."""
    asked = [Asked(question=each.question, answer=each.answer) for each in edition.plan.questions]
    usual = (
        Asked(question=question, answer=sentences(answer))
        for question, answer in _usual(edition)
        if answer
    )
    title = say(edition.reader, "questions-title")
    return Chapter(id="questions", title=title, blocks=(*asked, *usual), soon=Soon.BACKGROUND)


def _usual(edition: Edition) -> Iterator[tuple[str, str]]:
    """Yield each question with its answer, which is empty where the plan has none."""
    reader = edition.reader
    yield say(reader, "questions-thickness"), _thickness(edition)
    yield say(reader, "questions-cutter"), _cutter(edition)
    yield say(reader, "questions-sheets"), _sheets(edition)
    yield say(reader, "questions-formats"), _formats(edition)
    yield say(reader, "questions-selling"), _selling(edition)


def _thickness(edition: Edition) -> str:
    sheets, reader = edition.settled.sheets, edition.reader
    if not sheets:
        return ""
    spans = [f"{each.stock.title}, {sold_range_text(*each.published, reader)}" for each in sheets]
    told, makes, sets = listed(reader, spans), measuring_of(edition).makes, len(edition.variants)
    if makes:
        return say(reader, "questions-any-thickness", sheets=told)
    if sets < 2:
        return say(reader, "questions-one-thickness", sheets=told)
    return say(reader, "questions-some-thicknesses", sheets=told, sets=sets)


def _cutter(edition: Edition) -> str:
    found = (each.cutter for each in edition.settled.sheets)
    named = dict.fromkeys(each.title for each in found if each is not None)
    if not named:
        return ""
    cutters = listed(edition.reader, list(named))
    return say(edition.reader, "questions-cutters", cutters=cutters)


def _sheets(edition: Edition) -> str:
    reader = edition.reader
    rows = [
        say(
            reader,
            "questions-some-sheets",
            count=row.count,
            sheet=row.title,
            size=sheet_text((row.width, row.height), reader),
        )
        for row in edition.sheets
    ]
    return say(reader, "questions-all-sheets", sheets=listed(reader, rows)) if rows else ""


def _formats(edition: Edition) -> str:
    return say(
        edition.reader,
        "questions-files",
        coming=format_words(edition.formats, edition.reader).coming,
    )


def _selling(edition: Edition) -> str:
    reader = edition.reader
    said = (
        licence_sentence(licence_of(edition), reader),
        licence_rules(reader),
        contact_words(edition.identity),
    )
    return " ".join(filter(None, said))
