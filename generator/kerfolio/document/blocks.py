"""What a chapter is made of. A block says what it is; how it looks is for whoever renders it."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import ClassVar

from kerfolio.document.picture import Picture
from kerfolio.document.words import Words
from kerfolio.model.prose import Prose


class Manner(StrEnum):
    """How loud a paragraph speaks."""

    LEAD = "lead"
    BODY = "body"
    SMALL = "small"


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """Sentences that run on; ``loud`` is nothing anybody should pass over."""

    kind: ClassVar[str] = "paragraph"
    words: Words
    manner: Manner = Manner.BODY
    loud: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A maker's own text."""

    kind: ClassVar[str] = "told"
    prose: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """A heading within a chapter, kept with what follows; ``id`` where something leads to it."""

    kind: ClassVar[str] = "heading"
    words: Words
    id: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """A list; ``numbered`` where the order counts, ``ticked`` where each entry has a box."""

    kind: ClassVar[str] = "listing"
    entries: tuple[Words, ...]
    numbered: bool = False
    ticked: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A head with its values; of each the first line is the chief one, the rest are small."""

    head: str
    lines: tuple[tuple[Words, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """Heads with values: in ``rows`` one under the other, else side by side where there is room."""

    kind: ClassVar[str] = "facts"
    facts: tuple[Fact, ...]
    rows: bool = False


class Kind(StrEnum):
    """What a column of a table holds."""

    TEXT = "text"
    NUMBER = "number"  # stands at the right, decimals under each other
    COUNT = "count"  # how many, before what
    MARK = "mark"


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column: its head, what it holds; one that is ``spare`` is left out on a phone."""

    head: str
    kind: Kind = Kind.TEXT
    spare: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A cell of more than one line: the chief one and small ones below it."""

    words: Words
    below: tuple[Words, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A row has a cell for each column; a ``chief`` one stands out."""

    cells: tuple[Cell | Words, ...]
    chief: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table; ``title`` names it for those who only hear it, and is shown where ``titled``.

    ``foot`` sums it up. A table without rows is not shown.
    """

    kind: ClassVar[str] = "table"
    title: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    foot: Row | None = None
    titled: bool = False


class Size(StrEnum):
    """How much room a figure wants."""

    SMALL = "small"  # beside text
    HALF = "half"  # two side by side
    WIDE = "wide"  # the whole measure, part of a page
    TALL = "tall"  # most of a page


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A picture with the words under it; ``alt`` is for who cannot see it, and says what it shows.

    Where ``alt`` is empty the drawing's own description is taken.
    """

    kind: ClassVar[str] = "figure"
    picture: Picture
    caption: Words = ""
    alt: str = ""
    size: Size = Size.WIDE


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """Figures that belong together: side by side where there is room, captions level."""

    kind: ClassVar[str] = "figures"
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """What can hurt or spoil: a head and one or more sentences, never parted on paper."""

    kind: ClassVar[str] = "caution"
    head: str
    lines: tuple[Words, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A step of the assembly.

    ``begins`` tells what of a set is put together from here on. ``need`` are short lists with their
    heads: pieces, hardware, tools, time. ``by_hand`` is for who had no router.
    """

    kind: ClassVar[str] = "step"
    number: int
    title: str
    begins: str = ""
    need: tuple[Fact, ...] = ()
    figures: tuple[Figure, ...] = ()
    text: Prose = field(default_factory=Prose)
    by_hand: str = ""
    caution: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A question with its answer."""

    kind: ClassVar[str] = "asked"
    question: str
    answer: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class Dated:
    """What happened on a day; ``flag`` is what must not be passed over: a correction."""

    kind: ClassVar[str] = "dated"
    day: str  # as read
    iso: str  # as machines read it
    head: str
    flag: str = ""
    words: Words = ""
    id: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Folded:
    """What few want to know: folded away on screen, small on paper."""

    kind: ClassVar[str] = "folded"
    summary: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Live:
    """A place for what only a screen can do, by name: ``fitting``, ``model``; paper passes over it.

    ``blocks`` stand there where nothing of that name is at hand.
    """

    kind: ClassVar[str] = "live"
    name: str
    blocks: tuple[Block, ...] = ()


Block = (
    Paragraph
    | Told
    | Heading
    | Listing
    | Facts
    | Table
    | Figure
    | Figures
    | Caution
    | Step
    | Asked
    | Dated
    | Folded
    | Live
)
