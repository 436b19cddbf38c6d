"""What readers measured and sent home, where the maker wants it told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from kerfolio.basis.names import name_of
from kerfolio.basis.saying import listed, say
from kerfolio.basis.thickness import sold_range_text, sold_text
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Manner, Paragraph
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition

FEW = 5
"""Fewer sheets say little: of four, two in five of all others lie outside what they measured (see
``_outside``)."""


def readers(edition: Edition) -> Chapter | None:
    """Return what sheets measured and how joints went together; None where nobody sent it."""
    blocks: list[Block] = [*_measured(edition), *_went(edition)]
    if not blocks:
        return None
    blocks.append(Paragraph(words=say(edition.reader, "readers-from"), manner=Manner.SMALL))
    title = say(edition.reader, "readers-title")
    return Chapter(id="readers", title=title, blocks=tuple(blocks), soon=Soon.BACKGROUND)


def _measured(edition: Edition) -> Iterator[Block]:
    reader, sheets = edition.reader, edition.settled.sheets
    for sheet in sheets:
        found = [
            each.thickness
            for each in edition.sent
            if each.thickness is not None
            and (each.sheet == sheet.name or (not each.sheet and len(sheets) == 1))
        ]
        if not found:
            continue
        values = {
            "sold": sold_text(sheet.stock.nominal, reader),
            "range": sold_range_text(min(found), max(found), reader),
        }
        count = len(found)
        if count == 1:
            words = say(reader, "readers-one", **values)
        elif count < FEW:
            words = say(reader, "readers-few", count=count, **values)
        else:
            words = say(reader, "readers-many", count=count, one=_outside(count), **values)
        yield Paragraph(words=told(words))


def _outside(count: int) -> int:
    """Return one in how many of all such sheets lies outside what so many measured.

    The next one is as likely to be any in rank, so that it is the thinnest or the thickest of all
    ``count + 1`` with a chance of 2 / (count + 1) (order statistics: David and Nagaraja, 3rd ed.,
    2.5 tolerance intervals, from memory).
    """
    return (count + 1) // 2


def _went(edition: Edition) -> Iterator[Block]:
    reader = edition.reader
    counts = Counter(each.went for each in edition.sent if each.went is not None)
    said = [
        say(
            reader,
            "readers-times",
            count=counts[feel],
            feel=say(reader, "readers-feel", feel=name_of(feel.word)),
        )
        for feel in sorted(counts)
    ]
    if said:
        yield Paragraph(words=say(reader, "readers-went", counts=listed(reader, said)))
