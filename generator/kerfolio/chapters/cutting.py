"""Cutting time: sheet by sheet, cutter by cutter, in rows that add up, and what it rests on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.adding_up import adding_up
from kerfolio.basis.figures import minutes_text, way_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.chapters.grounds import grounds
from kerfolio.document.blocks import Cell, Column, Kind, Manner, Paragraph, Row, Table
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.words import Words
from kerfolio.edition.cutting import CuttingWords, SheetCutting, cutting_of
from kerfolio.edition.edition import Edition


def cutting(edition: Edition) -> Chapter | None:
    """Return how long cutting takes; None where no sheet has cut settings."""
    words = cutting_of(edition)
    if words is None:
        return None
    blocks = (
        _by_sheet(words),
        Paragraph(words=words.remark, manner=Manner.SMALL),
        _by_cutter(words),
        Paragraph(words=words.wear_remark, manner=Manner.SMALL),
        *grounds(words.assumptions, say(edition.reader, "cutting-rests")),
    )
    title = say(edition.reader, "cutting-title")
    return Chapter(id="cutting", title=title, blocks=blocks, soon=Soon.BACKGROUND)


def _by_sheet(words: CuttingWords) -> Table:
    reader, known = words.reader, [each for each in words.sheets if each.minutes is not None]
    times = iter(_times([each.minutes or 0.0 for each in known], reader))
    whole = say(reader, "cutting-in-all")
    if not words.whole:
        whole = say(reader, "cutting-in-some", known=words.known)
    return Table(
        title=say(reader, "cutting-by-sheet"),
        columns=(
            Column(head=say(reader, "cutting-sheet")),
            Column(head=words.way_head, kind=Kind.NUMBER, spare=True),
            Column(head=say(reader, "cutting-time"), kind=Kind.NUMBER),
        ),
        rows=tuple(_sheet(each, reader, times) for each in words.sheets),
        foot=Row(cells=(whole, *_sums(words))) if len(words.sheets) > 1 else None,
    )


def _sheet(each: SheetCutting, reader: Reader, times: Iterator[str]) -> Row:
    title = f"{each.number}, {each.title}"
    if each.minutes is None:
        unknown = say(reader, "cutting-unknown")
        return Row(cells=(Cell(words=title, below=(unknown,)), "–", "–"))
    sheet = Cell(words=title, below=(listed(reader, each.cutters),))
    return Row(cells=(sheet, way_number(each.metres, reader), next(times)))


def _by_cutter(words: CuttingWords) -> Table:
    """Return what each cutter does in the wood, and what of the time it is not in there."""
    reader = words.reader
    besides = words.minutes - sum(each.minutes for each in words.work)
    times = [*(each.minutes for each in words.work), max(0.0, besides)]
    *inside, outside = _times(times, reader)
    rows = [
        Row(cells=(each.title, str(each.cuts), way_number(each.metres, reader), time))
        for each, time in zip(words.work, inside, strict=True)
    ]
    return Table(
        title=say(reader, "cutting-by-cutter"),
        columns=(
            Column(head=say(reader, "cutting-cutter")),
            Column(head=say(reader, "cutting-cuts"), kind=Kind.NUMBER, spare=True),
            Column(head=words.way_head, kind=Kind.NUMBER, spare=True),
            Column(head=say(reader, "cutting-time"), kind=Kind.NUMBER),
        ),
        rows=(*rows, Row(cells=(say(reader, "cutting-besides"), "", "", outside))),
        foot=Row(cells=(say(reader, "cutting-in-all"), "", *_sums(words))),
        titled=True,
    )


def _sums(words: CuttingWords) -> tuple[Words, Words]:
    return way_number(words.metres, words.reader), minutes_text(words.minutes, words.reader)


def _times(minutes: Sequence[float], reader: Reader) -> list[str]:
    """Return times in whole minutes that add up to their sum in whole minutes."""
    under = say(reader, "figures-under", figure=minutes_text(1, reader))
    return [minutes_text(each, reader) if each else under for each in adding_up(minutes)]
