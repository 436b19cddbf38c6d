"""A maker's text as the template reads it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from kerfolio.booklet.lines import Lines, printable
from kerfolio.booklet.tables import told_table
from kerfolio.model.prose import (
    Block,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    Table,
    ticked,
)


def prose_blocks(prose: Prose, lines: Lines, level: int) -> Iterator[dict[str, Any]]:
    """Yield the blocks of a text; its highest headings are of ``level``."""
    yield from _blocks(prose.blocks, lines, level)


def _blocks(blocks: Sequence[Block], lines: Lines, level: int) -> Iterator[dict[str, Any]]:
    for block in blocks:
        match block:
            case Paragraph():
                yield {
                    "kind": "paragraph",
                    "line": lines.spans(block.spans),
                    "manner": "body",
                    "loud": False,
                }
            case Heading():
                yield {
                    "kind": "minor",
                    "line": lines.spans(block.spans),
                    "level": level + block.level - 1,
                }
            case Listing():
                yield _listing(block, lines, level)
            case Quotation():
                yield {"kind": "quote", "blocks": [*_blocks(block.blocks, lines, level)]}
            case Code():
                yield {"kind": "code", "text": "\n".join(map(printable, block.lines))}
            case Table():
                yield told_table(block, lines)


def _listing(block: Listing, lines: Lines, level: int) -> dict[str, Any]:
    entries = [
        {"blocks": [*_blocks(entry, lines, level)], "signed": not ticked(entry)}
        for entry in block.entries
    ]
    return {"kind": "list", "entries": entries, "first": block.first}
