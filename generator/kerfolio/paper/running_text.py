"""A maker's prose as bands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.prose import (
    Alignment,
    Block,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    Span,
    Spans,
    Table,
    ticked,
)
from kerfolio.paper.band import Band, Bands, baseline, indented, kept, paragraph, spaced
from kerfolio.paper.code_lines import code_lines
from kerfolio.paper.ledger import Column, natural_width, table
from kerfolio.paper.type import (
    CELL,
    CELL_STRONG,
    CODE,
    MINOR,
    READING,
    READING_LEADING,
    emphasised,
    italic,
    strong,
)
from kerfolio.writing.page import Passage, Role, Run, Text
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import Face, Style

_PARAGRAPH_SPACE = 0.5 * READING_LEADING
_ITEM_SPACE = 0.25 * READING_LEADING
_HANG = 5.0
_AFTER_SIGN = 1.4
_DASH = "–"
_HEADINGS = (MINOR, replace(MINOR, face=Face.SERIF_ITALIC), CELL_STRONG)
"""By level; the size of the first two is that of the text around them."""


def runs(spans: Sequence[Span], style: Style = READING) -> tuple[Run, ...]:
    """Return spans as runs in a style and its slanted and heavy cuts."""
    return tuple(Run(span.text, _styled(span, style), span.link) for span in spans)


def _styled(span: Span, style: Style) -> Style:
    if span.code:
        style = replace(CODE, points=style.points * 0.92, ink=style.ink)
    if span.emphasis:
        style = emphasised(style)
    if span.strong:
        style = strong(style)
    return replace(style, ink=Ink.ACCENT) if span.link else style


def plain(text: str, measure: float, style: Style = READING, leading: float = 0.0) -> Bands:
    """Return a text without marks as one paragraph."""
    return paragraph((Run(text, style),), measure, leading or _leading(style))


def _leading(style: Style) -> float:
    return READING_LEADING * style.points / READING.points


def prose(text: Prose, measure: float, style: Style = READING) -> Bands:
    """Return the blocks of a prose text in a column ``measure`` mm wide."""
    return _column(text.blocks, measure, style, 0)


def _column(blocks: Sequence[Block], measure: float, style: Style, depth: int) -> Bands:
    """Return blocks under each other; ``depth`` lists stand around them."""
    bands: list[Band] = []
    space = _ITEM_SPACE if depth else _PARAGRAPH_SPACE
    for block in blocks:
        bands += spaced(_block(block, measure, style, depth), space if bands else 0.0)
    return tuple(bands)


def _block(block: Block, measure: float, style: Style, depth: int) -> Bands:
    match block:
        case Paragraph():
            return _lines(block.spans, measure, style)
        case Heading():
            heading = _HEADINGS[block.level - 1]
            if block.level < len(_HEADINGS):
                heading = replace(heading, points=style.points)
            return kept(_lines(block.spans, measure, heading, Role.HEADING), with_next=True)
        case Listing():
            return tuple(_listing(block, measure, style, depth))
        case Quotation():
            inner = _column(block.blocks, measure - 2 * _HANG, italic(style), depth)
            return indented(inner, _HANG)
        case Code():
            return code_lines(block.lines, measure)
        case Table():
            return _table(block, measure)


def _lines(spans: Spans, measure: float, style: Style, role: Role = Role.PARAGRAPH) -> Bands:
    """Return a paragraph; where its text has a line feed, a line ends."""
    bands: list[Band] = []
    for line in _typed_lines(spans):
        more = paragraph(runs(line, style), measure, _leading(style), role=role)
        if bands and more:
            first = replace(more[0].passages[0], continues=True)
            more = (replace(more[0], passages=(first,)), *more[1:])
        bands += more
    return tuple(bands)


def _typed_lines(spans: Spans) -> list[list[Span]]:
    found: list[list[Span]] = [[]]
    for span in spans:
        first, *others = span.text.split("\n")
        found[-1].append(replace(span, text=first))
        found += [[replace(span, text=other)] for other in others]
    return found


def _listing(block: Listing, measure: float, style: Style, depth: int) -> Iterator[Band]:
    last = (block.first or 0) + len(block.entries) - 1
    widest = width((Run(_DASH if block.first is None else f"{last}.", style),))
    hang = max(_HANG, widest + _AFTER_SIGN)
    for index, entry in enumerate(block.entries):
        text = _DASH if block.first is None else f"{block.first + index}."
        text = "" if block.first is None and ticked(entry) else text
        inner = indented(_column(entry, measure - hang, style, depth + 1), hang)
        yield from spaced(_signed(Run(text, style), inner), _ITEM_SPACE if index else 0.0)


def _signed(sign: Run, bands: Bands) -> Bands:
    """Return an entry with its sign on its first line."""
    if not bands or not sign.text:
        return bands
    passages = list(bands[0].passages)
    for index, passage in enumerate(passages):
        line = next((mark for mark in passage.marks if isinstance(mark, Text)), None)
        if line is not None:
            mark = Text(x=0.0, y=line.y, runs=(sign,))
            passages[index] = replace(passage, marks=(mark, *passage.marks))
            break
    else:
        mark = Text(x=0.0, y=-baseline((sign,), _leading(sign.style)), runs=(sign,))
        passages.append(Passage(marks=(mark,)))
    return (replace(bands[0], passages=tuple(passages)), *bands[1:])


def _table(block: Table, measure: float) -> Bands:
    heads = block.head or ((),) * len(block.alignments)
    columns = [
        Column(
            head=runs(head, CELL_STRONG),
            number=alignment is Alignment.END,
            centred=alignment is Alignment.CENTRE,
            grows=True,
        )
        for head, alignment in zip(heads, block.alignments, strict=True)
    ]
    rows = [[runs(cell, CELL) for cell in row] for row in block.rows]
    return table(columns, rows, min(measure, natural_width(columns, rows)))


def bullets(items: Sequence[str], measure: float, style: Style = READING) -> Bands:
    """Return a list of plain sentences."""
    entries = tuple((Paragraph(spans=(Span(text=item),)),) for item in items)
    return _block(Listing(entries=entries), measure, style, 0)
