"""Costs: one copy line by line, and what several come to."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from kerfolio.basis.figures import money_number
from kerfolio.basis.words import counted
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
    return Chapter(id="costs", title="Costs", blocks=blocks, soon=Soon.BACKGROUND)


def _one(edition: Edition) -> Iterator[Block]:
    rows = edition.costs
    named, currency = copies_called(edition.plan), edition.identity.currency
    yield Table(
        title=f"One {named.one}, in {currency}",
        columns=(
            Column(head="Count", kind=Kind.COUNT),
            Column(head="What"),
            Column(head="Each", kind=Kind.NUMBER, spare=True),
            Column(head="Together", kind=Kind.NUMBER),
        ),
        rows=tuple(
            Row(cells=(str(row.count), told(row.what), _amount(row.price), _amount(row.total)))
            for row in rows
        ),
        foot=Row(cells=("", "In all", "", money_number(known_total(rows)))),
        titled=True,
    )
    unknown = sum(row.total is None for row in rows)
    missing = f" No price is known for {counted(unknown, 'line')} of the list." if unknown else ""
    words = f"The maker’s own prices; yours will differ.{missing}"
    yield Paragraph(words=words, manner=Manner.SMALL)


def _amount(value: Decimal | None) -> str:
    return "–" if value is None else money_number(value)


def _several(edition: Edition) -> Iterator[Block]:
    if len(edition.copies) < 2 or not known_total(edition.costs):
        return
    named, currency = copies_called(edition.plan), edition.identity.currency
    yield Table(
        title=f"Several {named.many}, in {currency}",
        columns=(
            Column(head=named.many.capitalize(), kind=Kind.COUNT),
            Column(head="Sheets", kind=Kind.NUMBER),
            Column(head="Together", kind=Kind.NUMBER),
            Column(head="Each", kind=Kind.NUMBER),
        ),
        rows=tuple(
            Row(
                cells=(
                    str(each.copies),
                    str(each.sheets),
                    money_number(each.total),
                    money_number(each.each),
                )
            )
            for each in edition.copies
        ),
        titled=True,
    )
    yield Paragraph(words=copies_remark(edition), manner=Manner.SMALL)
