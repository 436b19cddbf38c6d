"""Every word of a chapter, with whose it is: the generator's, or the maker's own."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from kerfolio.document.blocks import (
    Asked,
    Block,
    Caution,
    Cell,
    Dated,
    Fact,
    Facts,
    Figure,
    Figures,
    Folded,
    Heading,
    Listing,
    Live,
    Paragraph,
    Row,
    Step,
    Table,
)
from kerfolio.document.chapter import Chapter
from kerfolio.document.words import Inline, Reference, Words, pieces, plain


def lines_of(blocks: Iterable[Block]) -> Iterator[Words]:
    """Yield every line in order; a maker's prose is passed over."""
    for block in blocks:
        match block:
            case Paragraph() | Heading():
                yield block.words
            case Listing():
                yield from block.entries
            case Facts():
                yield from _facts(block.facts)
            case Table():
                yield from (block.title, *(each.head for each in block.columns))
                yield from _rows((*block.rows, *((block.foot,) if block.foot else ())))
            case Figure():
                yield from (block.caption, block.alt)
            case Figures():
                yield from lines_of(block.figures)
            case Caution():
                yield from (block.head, *block.lines)
            case Step():
                yield from (block.title, block.begins, block.by_hand, block.caution)
                yield from _facts(block.need)
                yield from lines_of(block.figures)
            case Asked():
                yield from (block.question, block.answer.plain())
            case Dated():
                yield from (block.day, block.head, block.flag, block.words)
            case Folded():
                yield block.summary
                yield from lines_of(block.blocks)
            case Live():
                yield from lines_of(block.blocks)


def _facts(facts: Iterable[Fact]) -> Iterator[Words]:
    for fact in facts:
        yield fact.head
        yield from (words for line in fact.lines for words in line)


def _rows(rows: Iterable[Row]) -> Iterator[Words]:
    for cell in (cell for row in rows for cell in row.cells):
        yield from (cell.words, *cell.below) if isinstance(cell, Cell) else (cell,)


def inlines_of(chapter: Chapter) -> Iterator[Inline]:
    """Yield every piece of every line."""
    yield from (each for line in lines_of(chapter.blocks) for each in pieces(line))


def text_of(chapter: Chapter | None) -> str:
    """Return all of it, a line each; fails for a chapter that is not there."""
    assert chapter is not None
    return "\n".join(plain(line) for line in (chapter.title, *lines_of(chapter.blocks)))


def references_of(chapter: Chapter) -> Iterator[Reference]:
    """Yield what leads to other chapters."""
    yield from (each for each in inlines_of(chapter) if isinstance(each, Reference))


def facts_of(blocks: Iterable[Block]) -> dict[str, list[str]]:
    """Return the lines of each fact by its head, folded ones too."""
    found: dict[str, list[str]] = {}
    for block in blocks:
        if isinstance(block, Facts):
            for fact in block.facts:
                lines = [plain(words) for line in fact.lines for words in line]
                found.setdefault(fact.head, []).extend(lines)
        elif isinstance(block, Folded):
            for head, lines in facts_of(block.blocks).items():
                found.setdefault(head, []).extend(lines)
    return found


def table_of(chapter: Chapter | None, title: str) -> list[list[str]]:
    """Return the rows of a table by its title, its foot last; fails where there is none."""
    assert chapter is not None
    (table,) = (each for each in chapter.blocks if isinstance(each, Table) and each.title == title)
    rows = (*table.rows, *((table.foot,) if table.foot else ()))
    return [[plain(next(iter(_rows((Row(cells=(cell,)),))))) for cell in row.cells] for row in rows]
