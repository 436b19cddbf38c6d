"""Lines and running text of a page with the signs they mean, which a keyboard lacks."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.reader import Reader
from kerfolio.document.signs import with_signs
from kerfolio.document.words import Inline, Reference, Words, pieces, plain
from kerfolio.model.prose import (
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
)


def signed(words: Words, language: str) -> tuple[Inline, ...]:
    """Return the pieces of a line with their signs.

    Blanks stay as they are: what is looked for on a page or copied from it is found as typed.
    """
    found = pieces(words)
    texts = [each.text if isinstance(each, Span) else plain((each,)) for each in found]
    kept = [not _has_signs(each) for each in found]
    made = with_signs(texts, language, kept, firm=False)
    return tuple(_with(each, text) for each, text in zip(found, made, strict=True))


def signs(text: str | Spans | Prose, reader: Reader) -> str | Spans | Prose:
    """Return what a maker wrote with its signs, line by line; what is typed as code stays."""
    match text:
        case str():
            return plain(signed(text, reader.language))
        case Prose():
            return replace(text, blocks=_blocks(text.blocks, reader.language))
    return _spans(text, reader.language)


def _spans(spans: Spans, language: str) -> Spans:
    return tuple(each for each in signed(spans, language) if isinstance(each, Span))


def _has_signs(piece: Inline) -> bool:
    """Tell whether a piece is words; marks, names of files and quantities are told as they are."""
    return isinstance(piece, str | Reference) or (isinstance(piece, Span) and not piece.code)


def _with(piece: Inline, text: str) -> Inline:
    if isinstance(piece, str):
        return text
    return replace(piece, text=text) if isinstance(piece, Span | Reference) else piece


def _blocks(blocks: tuple[Block, ...], language: str) -> tuple[Block, ...]:
    return tuple(_block(each, language) for each in blocks)


def _block(block: Block, language: str) -> Block:
    match block:
        case Paragraph() | Heading():
            return replace(block, spans=_spans(block.spans, language))
        case Listing():
            return replace(block, entries=tuple(_blocks(e, language) for e in block.entries))
        case Quotation():
            return replace(block, blocks=_blocks(block.blocks, language))
        case Table():
            return replace(
                block,
                head=tuple(_spans(cell, language) for cell in block.head),
                rows=tuple(tuple(_spans(c, language) for c in row) for row in block.rows),
            )
        case Code():
            return block
