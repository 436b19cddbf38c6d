"""A maker's running text on a page: its headings fitted to the page's own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.model.prose import Block, BlockKind, Prose, Span

_LOWEST = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A stretch of text under one heading; ``head`` is empty before the first heading."""

    head: tuple[Span, ...]
    text: Prose


def heading_rank(block: Block, text: Prose, level: int) -> int:
    """Return the HTML rank of a heading: the text's highest headings stand at ``level``.

    A heading is at most one rank below the heading before it, so that no rank is skipped.
    """
    stated: list[int] = []
    rank = level
    for each in text.blocks:
        if each.kind is not BlockKind.HEADING:
            continue
        while stated and stated[-1] >= each.level:
            stated.pop()
        stated.append(each.level)
        rank = level + len(stated) - 1
        if each is block:
            break
    return min(_LOWEST, rank)


def chapters(text: Prose) -> tuple[Chapter, ...]:
    """Cut a text at its highest headings, so that each can stand in the page's margin."""
    return tuple(_chapters(text))


def _chapters(text: Prose) -> Iterator[Chapter]:
    levels = [block.level for block in text.blocks if block.kind is BlockKind.HEADING]
    top = min(levels, default=0)
    head: tuple[Span, ...] = ()
    blocks: list[Block] = []
    for block in text.blocks:
        if block.kind is BlockKind.HEADING and block.level == top:
            if head or blocks:
                yield Chapter(head=head, text=Prose(blocks=tuple(blocks)))
            head, blocks = block.entries[0], []
        else:
            blocks.append(block)
    if head or blocks:
        yield Chapter(head=head, text=Prose(blocks=tuple(blocks)))
