"""Questions and answers: those of readers, then what every reader asks, from the plan itself."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.thickness import sold_range_text
from kerfolio.basis.words import counted, listed
from kerfolio.document.blocks import Asked
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.licence_words import RULES, contact_words, licence_of, licence_sentence
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
    return Chapter(
        id="questions",
        title="Questions and answers",
        blocks=(*asked, *usual),
        soon=Soon.BACKGROUND,
    )


def _usual(edition: Edition) -> Iterator[tuple[str, str]]:
    """Yield each question with its answer, which is empty where the plan has none."""
    yield "My sheet is not quite that thick. What now?", _thickness(edition)
    yield "Which cutter do I need?", _cutter(edition)
    yield "How many sheets do I buy?", _sheets(edition)
    yield "Which file formats are there?", _formats(edition)
    yield "May I sell what I make?", _selling(edition)


def _thickness(edition: Edition) -> str:
    sheets, reader = edition.settled.sheets, edition.reader
    if not sheets:
        return ""
    spans = [f"{each.stock.title}, {sold_range_text(*each.published, reader)}" for each in sheets]
    words, sets = measuring_of(edition), len(edition.variants)
    if not words.makes and sets < 2:
        return f"The plan is for {listed(spans)} alone: take a sheet that measures so."
    if words.makes:
        how = f", and every slot follows what you measured. {words.makes}"
    else:
        how = f", in {sets} sets of files: take the one that your thickest reading names."
    return f"Few are. The plan is for {listed(spans)}{how}"


def _cutter(edition: Edition) -> str:
    cutters = (each.cutter for each in edition.settled.sheets)
    named = dict.fromkeys(each.title for each in cutters if each is not None)
    if not named:
        return ""
    return (
        f"{listed(list(named))} for a router, or a smaller one; a larger one leaves inside corners "
        "too full. With a saw or by hand, none."
    )


def _sheets(edition: Edition) -> str:
    reader = edition.reader
    rows = [
        f"{counted(row.count, 'sheet')} of {row.title}, "
        f"{sheet_text((row.width, row.height), reader)}"
        for row in edition.sheets
    ]
    return f"{listed(rows)}, as laid out in this plan." if rows else ""


def _formats(edition: Edition) -> str:
    coming = format_words(edition.formats, edition.reader).coming
    return (
        f"Cut files come {coming}, one file for each sheet and one "
        "for each part. Templates, booklet, layouts and setup sheets are PDF, on A4 and on US "
        "Letter. Lists are CSV, which any spreadsheet opens."
    )


def _selling(edition: Edition) -> str:
    said = (licence_sentence(licence_of(edition)), RULES, contact_words(edition.identity))
    return " ".join(filter(None, said))
