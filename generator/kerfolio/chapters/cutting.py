"""Cutting time: sheet by sheet, cutter by cutter, in rows that add up, and what it rests on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.adding_up import adding_up
from kerfolio.basis.figures import minutes_text, way_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.chapters.grounds import grounds
from kerfolio.document.blocks import Cell, Column, Kind, Manner, Paragraph, Row, Table
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.words import Words
from kerfolio.edition.cutting import CuttingWords, SheetCutting, cutting_of
from kerfolio.edition.edition import Edition

_UNKNOWN = "no cut settings are stated for it"
_BESIDES = "Moves above the sheet and changes of cutter"


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
        *grounds(words.assumptions, "What the time rests on"),
    )
    return Chapter(id="cutting", title="Cutting time", blocks=blocks, soon=Soon.BACKGROUND)


def _by_sheet(words: CuttingWords) -> Table:
    known = [each for each in words.sheets if each.minutes is not None]
    times = iter(_times([each.minutes or 0.0 for each in known]))
    whole = "In all" if words.whole else f"In all, {words.known}"
    return Table(
        title="Cutting time, sheet by sheet",
        columns=(
            Column(head="Sheet"),
            Column(head=words.way_head, kind=Kind.NUMBER, spare=True),
            Column(head="Time", kind=Kind.NUMBER),
        ),
        rows=tuple(_sheet(each, words.reader, times) for each in words.sheets),
        foot=Row(cells=(whole, *_sums(words))) if len(words.sheets) > 1 else None,
    )


def _sheet(each: SheetCutting, reader: Reader, times: Iterator[str]) -> Row:
    title = f"{each.number}, {each.title}"
    if each.minutes is None:
        return Row(cells=(Cell(words=title, below=(_UNKNOWN,)), "–", "–"))
    sheet = Cell(words=title, below=(listed(each.cutters),))
    return Row(cells=(sheet, way_number(each.metres, reader), next(times)))


def _by_cutter(words: CuttingWords) -> Table:
    """Return what each cutter does in the wood, and what of the time it is not in there."""
    besides = words.minutes - sum(each.minutes for each in words.work)
    *inside, outside = _times([*(each.minutes for each in words.work), max(0.0, besides)])
    rows = [
        Row(cells=(each.title, str(each.cuts), way_number(each.metres, words.reader), time))
        for each, time in zip(words.work, inside, strict=True)
    ]
    return Table(
        title="What each cutter does in the wood",
        columns=(
            Column(head="Cutter"),
            Column(head="Cuts", kind=Kind.NUMBER, spare=True),
            Column(head=words.way_head, kind=Kind.NUMBER, spare=True),
            Column(head="Time", kind=Kind.NUMBER),
        ),
        rows=(*rows, Row(cells=(_BESIDES, "", "", outside))),
        foot=Row(cells=("In all", "", *_sums(words))),
        titled=True,
    )


def _sums(words: CuttingWords) -> tuple[Words, Words]:
    return way_number(words.metres, words.reader), minutes_text(words.minutes)


def _times(minutes: Sequence[float]) -> list[str]:
    """Return times in whole minutes that add up to their sum in whole minutes."""
    return [minutes_text(each) if each else "under 1 minute" for each in adding_up(minutes)]
