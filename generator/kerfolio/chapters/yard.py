"""At the yard: what to ask for, and where the yard's saw makes it small enough to take home."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.document.blocks import (
    Block,
    Cell,
    Column,
    Figure,
    Folded,
    Heading,
    Kind,
    Listing,
    Live,
    Manner,
    Paragraph,
    Row,
    Table,
)
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.document.picture import Art, Room
from kerfolio.drawing.yard_view import ROOM, yard_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.yard import Ask, BlankWords, SawnSheet, YardCard, cuts_of, yard_card


def yard(edition: Edition) -> Chapter | None:
    """Return the yard card; None where there is nothing to buy at a yard, or nothing to be seen."""
    card = yard_card(edition) if edition.exact else None
    if card is None:
        return None
    blocks = (Live(name="yard", blocks=(*_asks(card, edition.reader), *_saw(edition, card))),)
    title = say(edition.reader, "yardcard-title")
    return Chapter(id="yard", title=title, blocks=blocks, who=BUILDERS)


def _asks(card: YardCard, reader: Reader) -> Iterator[Block]:
    yield Table(
        title=say(reader, "yardcard-ask"),
        columns=(
            Column(head=say(reader, "yardcard-count"), kind=Kind.COUNT),
            Column(head=say(reader, "yardcard-ask")),
            Column(head=say(reader, "yardcard-weight"), kind=Kind.NUMBER),
        ),
        rows=tuple(_ask(each) for each in card.asks),
    )
    weight = say(reader, "yardcard-together", weight=card.weight) if card.weight else ""
    words = " ".join(filter(None, (weight, card.measure)))
    yield Paragraph(words=words, manner=Manner.SMALL)


def _ask(ask: Ask) -> Row:
    return Row(cells=(str(ask.count), Cell(words=ask.title, below=ask.details), ask.weight or "–"))


def _saw(edition: Edition, card: YardCard) -> Iterator[Folded]:
    """Yield the cuts of the yard's saw, for those who have no room for whole sheets."""
    if card.sheets:
        sheets = [block for each in card.sheets for block in _sheet(edition, each)]
        yield Folded(
            summary=say(edition.reader, "yardcard-small"),
            blocks=(
                Paragraph(words=card.limits),
                *sheets,
                Paragraph(words=card.sawn, manner=Manner.SMALL),
            ),
        )


def _sheet(edition: Edition, sheet: SawnSheet) -> Iterator[Block]:
    yield Heading(words=sheet.title)
    yield Paragraph(words=sheet.words)
    if sheet.cuts:
        yield from _picture(edition, sheet.number)
        yield Listing(entries=sheet.cuts, numbered=True)
        reader = edition.reader
        yield Table(
            title=say(reader, "yardcard-blanks", number=sheet.number),
            columns=(
                Column(head=say(reader, "yardcard-blank"), kind=Kind.MARK),
                Column(head=say(reader, "yardcard-size")),
                Column(head=say(reader, "yardcard-pieces")),
                Column(head=say(reader, "yardcard-corner")),
            ),
            rows=tuple(_blank(each, reader) for each in sheet.blanks),
        )


def _blank(blank: BlankWords, reader: Reader) -> Row:
    return Row(
        cells=(
            str(blank.number),
            Cell(words=blank.size, below=(blank.weight,)),
            listed(reader, blank.marks),
            blank.corner,
        )
    )


def _picture(edition: Edition, number: int) -> Iterator[Figure]:
    layout = next(each for each in edition.layout.sheets if each.number == number)
    cuts = cuts_of(edition, layout)
    if cuts is not None:
        yield Figure(
            picture=Art(
                name=f"yard-{number}",
                draw=lambda room: yard_view(
                    edition.settled, layout, cuts, edition.reader, _phone(room)
                ),
            )
        )


def _phone(room: Room) -> Room:
    """Return a room no larger than a phone's, so that numbers are as large there as on paper."""
    return min(room[0], ROOM[0]), min(room[1], ROOM[1])
