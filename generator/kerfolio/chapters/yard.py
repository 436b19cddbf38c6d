"""At the yard: what to ask for, and where the yard's saw makes it small enough to take home."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.words import listed
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
from kerfolio.document.picture import still
from kerfolio.drawing.yard_view import yard_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.yard import Ask, BlankWords, SawnSheet, YardCard, cuts_of, yard_card


def yard(edition: Edition) -> Chapter | None:
    """Return the yard card; None where there is nothing to buy at a yard, or nothing to be seen."""
    card = yard_card(edition) if edition.exact else None
    if card is None:
        return None
    blocks = (Live(name="yard", blocks=(*_asks(card), *_saw(edition, card))),)
    return Chapter(id="yard", title="At the yard", blocks=blocks, who=BUILDERS)


def _asks(card: YardCard) -> Iterator[Block]:
    yield Table(
        title="What to ask for",
        columns=(
            Column(head="Count", kind=Kind.COUNT),
            Column(head="What to ask for"),
            Column(head="Weight", kind=Kind.NUMBER),
        ),
        rows=tuple(_ask(each) for each in card.asks),
    )
    weight = f"The sheets weigh {card.weight} together. " if card.weight else ""
    yield Paragraph(words=f"{weight}{card.measure}", manner=Manner.SMALL)


def _ask(ask: Ask) -> Row:
    return Row(cells=(str(ask.count), Cell(words=ask.title, below=ask.details), ask.weight or "–"))


def _saw(edition: Edition, card: YardCard) -> Iterator[Folded]:
    """Yield the cuts of the yard's saw, for those who have no room for whole sheets."""
    if card.sheets:
        sheets = [block for each in card.sheets for block in _sheet(edition, each)]
        yield Folded(
            summary="Cut small at the yard, to fit a car",
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
        yield Table(
            title=f"Blanks of sheet {sheet.number}",
            columns=(
                Column(head="Blank", kind=Kind.MARK),
                Column(head="Size, weight"),
                Column(head="Pieces"),
                Column(head="Its corner"),
            ),
            rows=tuple(_blank(each) for each in sheet.blanks),
        )


def _blank(blank: BlankWords) -> Row:
    return Row(
        cells=(
            str(blank.number),
            Cell(words=blank.size, below=(blank.weight,)),
            listed(blank.marks),
            blank.corner,
        )
    )


def _picture(edition: Edition, number: int) -> Iterator[Figure]:
    layout = next(each for each in edition.layout.sheets if each.number == number)
    cuts = cuts_of(edition, layout)
    if cuts is not None:
        yield Figure(picture=still(f"yard-{number}", yard_view(edition.settled, layout, cuts)))
