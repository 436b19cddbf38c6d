"""Costs: one copy line by line, and what several come to."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from kerfolio.basis.figures import money_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Column, Kind, Manner, Paragraph, Row, Table
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.copies import copies_remark
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import copies_called
from kerfolio.shop.lists import known_total


def costs(edition: Edition) -> Chapter | None:
    """Return what one copy and several cost; None where no price is known."""
    if not any(row.total is not None for row in edition.costs):
        return None
    blocks = (*_one(edition), *_several(edition))
    title = say(edition.reader, "costs-title")
    return Chapter(id="costs", title=title, blocks=blocks, soon=Soon.BACKGROUND)


def _one(edition: Edition) -> Iterator[Block]:
    reader, rows = edition.reader, edition.costs
    named, currency = copies_called(edition.plan, reader), edition.identity.currency
    yield Table(
        title=say(reader, "costs-one", copy=named.one, currency=currency),
        columns=(
            Column(head=say(reader, "costs-count"), kind=Kind.COUNT),
            Column(head=say(reader, "costs-what")),
            Column(head=say(reader, "costs-each"), kind=Kind.NUMBER, spare=True),
            Column(head=say(reader, "costs-together"), kind=Kind.NUMBER),
        ),
        rows=tuple(
            Row(
                cells=(
                    str(row.count),
                    told(row.what),
                    _amount(reader, row.price),
                    _amount(reader, row.total),
                )
            )
            for row in rows
        ),
        foot=Row(cells=("", say(reader, "costs-in-all"), "", _amount(reader, known_total(rows)))),
        titled=True,
    )
    unknown = sum(row.total is None for row in rows)
    yield Paragraph(words=say(reader, "costs-own-prices", unknown=unknown), manner=Manner.SMALL)


def _amount(reader: Reader, value: Decimal | None) -> str:
    return "–" if value is None else money_number(value, reader)


def _several(edition: Edition) -> Iterator[Block]:
    if len(edition.copies) < 2 or not known_total(edition.costs):
        return
    reader = edition.reader
    named, currency = copies_called(edition.plan, reader), edition.identity.currency
    yield Table(
        title=say(reader, "costs-several", copies=named.many, currency=currency),
        columns=(
            Column(head=named.many.capitalize(), kind=Kind.COUNT),
            Column(head=say(reader, "costs-sheets"), kind=Kind.NUMBER),
            Column(head=say(reader, "costs-together"), kind=Kind.NUMBER),
            Column(head=say(reader, "costs-each"), kind=Kind.NUMBER),
        ),
        rows=tuple(
            Row(
                cells=(
                    str(each.copies),
                    str(each.sheets),
                    _amount(reader, each.total),
                    _amount(reader, each.each),
                )
            )
            for each in edition.copies
        ),
        titled=True,
    )
    yield Paragraph(words=copies_remark(edition), manner=Manner.SMALL)
