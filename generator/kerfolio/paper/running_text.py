"""A maker's prose as bands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.prose import Block, BlockKind, Prose, Span
from kerfolio.paper.band import Band, Bands, indented, kept, paragraph, spaced
from kerfolio.paper.type import CODE, MINOR, READING, READING_LEADING, italic, strong
from kerfolio.writing.page import Role, Run, Text
from kerfolio.writing.typeface import Style

_PARAGRAPH_SPACE = 0.5 * READING_LEADING
_ITEM_SPACE = 0.25 * READING_LEADING
_HANG = 5.0


def runs(spans: Sequence[Span], style: Style = READING) -> tuple[Run, ...]:
    """Return spans as runs in a style and its slanted and heavy cuts."""
    return tuple(Run(span.text, _styled(span, style), span.link) for span in spans)


def _styled(span: Span, style: Style) -> Style:
    if span.code:
        style = replace(CODE, points=style.points * 0.92, ink=style.ink)
    if span.emphasis:
        style = italic(style)
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
    bands: list[Band] = []
    for block in text.blocks:
        set_block = tuple(_block(block, measure, style))
        bands += spaced(set_block, _PARAGRAPH_SPACE if bands else 0.0)
    return tuple(bands)


def _block(block: Block, measure: float, style: Style) -> Iterator[Band]:
    leading = _leading(style)
    match block.kind:
        case BlockKind.HEADING:
            heading = replace(MINOR, points=style.points)
            for entry in block.entries:
                yield from kept(
                    paragraph(runs(entry, heading), measure, leading, role=Role.HEADING),
                    with_next=True,
                )
        case BlockKind.BULLETS | BlockKind.NUMBERS:
            numbered = block.kind is BlockKind.NUMBERS
            for index, entry in enumerate(block.entries):
                sign = f"{index + 1}." if numbered else "–"
                item = _hanging(sign, runs(entry, style), measure, style)
                yield from spaced(item, _ITEM_SPACE if index else 0.0)
        case BlockKind.QUOTE:
            for entry in block.entries:
                quote = paragraph(runs(entry, italic(style)), measure - 2 * _HANG, leading)
                yield from indented(quote, _HANG)
        case BlockKind.PARAGRAPH:
            for entry in block.entries:
                yield from paragraph(runs(entry, style), measure, leading)


def _hanging(sign: str, text: Sequence[Run], measure: float, style: Style) -> Bands:
    item = indented(paragraph(text, measure - _HANG, _leading(style)), _HANG)
    if not item:
        return ()
    first = item[0].passages[0]
    line = next(mark for mark in first.marks if isinstance(mark, Text))
    mark = Text(x=0.0, y=line.y, runs=(Run(sign, style),))
    passage = replace(first, marks=(mark, *first.marks))
    return (replace(item[0], passages=(passage,)), *item[1:])


def bullets(items: Sequence[str], measure: float, style: Style = READING) -> Bands:
    """Return a list of plain sentences."""
    entries = tuple((Span(text=item),) for item in items)
    return tuple(_block(Block(kind=BlockKind.BULLETS, entries=entries), measure, style))
