"""Another material: what it changes, beside the plan's own."""

from __future__ import annotations

from collections.abc import Iterator

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
from kerfolio.edition.swap import REMARK, SwapTable


def swaps(edition: Edition) -> Chapter | None:
    """Return a table for each material that the plan is compared in; None without any."""
    if not edition.swaps:
        return None
    blocks: list[Block] = []
    for each in edition.swaps:
        blocks += _swap(each)
    blocks.append(Paragraph(words=REMARK, manner=Manner.SMALL))
    return Chapter(id="swaps", title="Another material", blocks=tuple(blocks), soon=Soon.BACKGROUND)


def _swap(swap: SwapTable) -> Iterator[Block]:
    yield Heading(words=f"{swap.after} in place of {swap.before}")
    if swap.refused:
        yield Caution(head=swap.verdict, lines=tuple(_sentence(each) for each in swap.refused))
    else:
        yield Paragraph(words=swap.verdict)
    if swap.remarks:
        yield Listing(entries=tuple(_sentence(each) for each in swap.remarks))
    yield Table(
        title=f"{swap.before} and {swap.after}",
        columns=(Column(head="What"), Column(head=swap.before), Column(head=swap.after)),
        rows=tuple(Row(cells=(row.what, told(row.before), told(row.after))) for row in swap.rows),
    )


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."
