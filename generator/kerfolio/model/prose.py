"""A maker's running text, read once and set alike on screen and paper."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A run of text in one style; ``link`` is an address or empty."""

    text: str
    strong: bool = False
    emphasis: bool = False
    code: bool = False
    link: str = ""


class BlockKind(StrEnum):
    """What a block of prose is."""

    PARAGRAPH = "paragraph"
    HEADING = "heading"
    BULLETS = "bullets"
    NUMBERS = "numbers"
    QUOTE = "quote"


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A paragraph, heading, quotation (one entry) or list (an entry for each item)."""

    kind: BlockKind
    entries: tuple[tuple[Span, ...], ...]
    level: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """A text as blocks; empty where nothing was written."""

    blocks: tuple[Block, ...] = ()
    place: Place = NOWHERE

    def __bool__(self) -> bool:
        return bool(self.blocks)

    def plain(self) -> str:
        """Return the text without any marks, blocks joined by a space."""
        return " ".join(
            "".join(span.text for span in entry) for block in self.blocks for entry in block.entries
        )
