"""A maker's running text, read once and set alike on screen and paper."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from kerfolio.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A run of text in one style; ``link`` is an address or empty.

    A line feed in the text ends the line there and then.
    """

    text: str
    strong: bool = False
    emphasis: bool = False
    code: bool = False
    link: str = ""


Spans = tuple[Span, ...]

BOX = "☐"
BOX_TICKED = "☑"


class Alignment(StrEnum):
    """Where the cells of a column stand."""

    START = "start"
    CENTRE = "centre"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """Sentences that run on."""

    kind: ClassVar[str] = "paragraph"
    spans: Spans


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """A heading; the highest of a text are of level 1, and no level is skipped on the way down."""

    kind: ClassVar[str] = "heading"
    spans: Spans
    level: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """A list of entries, each of blocks; ``first`` is the first one's number, None for bullets."""

    kind: ClassVar[str] = "listing"
    entries: tuple[tuple[Block, ...], ...]
    first: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Quotation:
    """What somebody else said."""

    kind: ClassVar[str] = "quotation"
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Code:
    """Lines that stay as they were typed, blanks included."""

    kind: ClassVar[str] = "code"
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table: every row has a cell for each alignment; ``head`` is empty where it says nothing."""

    kind: ClassVar[str] = "table"
    alignments: tuple[Alignment, ...]
    head: tuple[Spans, ...]
    rows: tuple[tuple[Spans, ...], ...]


Block = Paragraph | Heading | Listing | Quotation | Code | Table


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """A text as blocks; empty where nothing was written."""

    blocks: tuple[Block, ...] = ()
    place: Place = NOWHERE

    def __bool__(self) -> bool:
        return bool(self.blocks)

    def plain(self) -> str:
        """Return the text without any marks, blocks joined by a space."""
        return " ".join(_texts(self.blocks))


def sentences(text: str, place: Place = NOWHERE) -> Prose:
    """Return a text without any marks as a single paragraph."""
    return Prose(blocks=(Paragraph(spans=(Span(text=text),)),), place=place)


def ticked(entry: tuple[Block, ...]) -> bool:
    """Tell whether an entry of a list begins with a box to tick, which stands for its sign."""
    first = entry[0]
    return isinstance(first, Paragraph) and first.spans[0].text.startswith((BOX, BOX_TICKED))


def plain_text(spans: Spans) -> str:
    """Return spans without their styles, on one line."""
    return "".join(span.text for span in spans).replace("\n", " ")


def _texts(blocks: tuple[Block, ...]) -> Iterator[str]:
    for block in blocks:
        match block:
            case Paragraph() | Heading():
                yield plain_text(block.spans)
            case Listing():
                for entry in block.entries:
                    yield from _texts(entry)
            case Quotation():
                yield from _texts(block.blocks)
            case Code():
                yield from block.lines
            case Table():
                yield from (plain_text(cell) for row in (block.head, *block.rows) for cell in row)
