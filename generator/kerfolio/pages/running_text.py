"""A maker's page as chapters, so that its highest headings can stand in the margin."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.model.prose import Block, Heading, Prose, Spans


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A stretch of text under one heading; ``head`` is empty before the first heading.

    The headings in ``text`` count from 1 again.
    """

    head: Spans
    text: Prose


def chapters(text: Prose) -> tuple[Chapter, ...]:
    """Cut a text at its highest headings."""
    return tuple(_chapters(text))


def _chapters(text: Prose) -> Iterator[Chapter]:
    head: Spans = ()
    blocks: list[Block] = []
    for block in text.blocks:
        if isinstance(block, Heading) and block.level == 1:
            if head or blocks:
                yield Chapter(head=head, text=Prose(blocks=tuple(blocks)))
            head, blocks = block.spans, []
        elif isinstance(block, Heading):
            blocks.append(replace(block, level=block.level - 1))
        else:
            blocks.append(block)
    if head or blocks:
        yield Chapter(head=head, text=Prose(blocks=tuple(blocks)))
