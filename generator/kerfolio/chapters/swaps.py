"""Another material: what it changes, beside the plan's own."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import (
    Block,
    Caution,
    Column,
    Heading,
    Listing,
    Manner,
    Paragraph,
    Row,
    Table,
)
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.edition.swap import SwapTable, swap_remark


def swaps(edition: Edition) -> Chapter | None:
    """Return a table for each material that the plan is compared in; None without any."""
    if not edition.swaps:
        return None
    blocks: list[Block] = []
    for each in edition.swaps:
        blocks += _swap(each, edition.reader)
    blocks.append(Paragraph(words=swap_remark(edition.reader), manner=Manner.SMALL))
    title = say(edition.reader, "swaps-title")
    return Chapter(id="swaps", title=title, blocks=tuple(blocks), soon=Soon.BACKGROUND)


def _swap(swap: SwapTable, reader: Reader) -> Iterator[Block]:
    pair = {"before": swap.before, "after": swap.after}
    yield Heading(words=say(reader, "swaps-one", **pair))
    if swap.refused:
        yield Caution(head=swap.verdict, lines=tuple(_sentence(each) for each in swap.refused))
    else:
        yield Paragraph(words=swap.verdict)
    if swap.remarks:
        yield Listing(entries=tuple(_sentence(each) for each in swap.remarks))
    yield Table(
        title=say(reader, "swaps-both", **pair),
        columns=(
            Column(head=say(reader, "swaps-what")),
            Column(head=swap.before),
            Column(head=swap.after),
        ),
        rows=tuple(Row(cells=(row.what, told(row.before), told(row.after))) for row in swap.rows),
    )


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."
