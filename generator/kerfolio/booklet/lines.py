"""Lines of text as the template reads them: pieces with their manners, signs as printed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.document.signs import with_signs
from kerfolio.document.words import Both, File, Inline, Mark, Reference, Words, pieces
from kerfolio.model.prose import Span, Spans
from kerfolio.writing.typeface import Face, in_faces

_ENDLESS = re.compile(r"[^\s\xa0-]{41,}")
_BREAK = "\N{ZERO WIDTH SPACE}"

Piece = dict[str, Any]
"""A piece: its ``text``, and only those manners that it has."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """How a document's lines are written: its language, and the ids of what can be led to."""

    language: str
    targets: frozenset[str]

    @property
    def reader(self) -> Reader:
        """Whom they are for; a document tells no quantity of its own."""
        return Reader(language=self.language)

    @property
    def led(self) -> str:
        """What stands about behind words that lead elsewhere: the number of a page."""
        return say(self.reader, "booklet-led", words="", page=99)

    def line(self, words: Words) -> list[Piece]:
        """Return the pieces of a line."""
        return self._signed([made for each in pieces(words) for made in self._pieces(each)])

    def spans(self, spans: Spans) -> list[Piece]:
        """Return the pieces of a maker's line."""
        return self._signed([made for each in spans for made in _span(each)])

    def text(self, text: str) -> str:
        """Return a plain text with its signs."""
        return printable(with_signs((text,), self.language)[0])

    def _signed(self, made: Sequence[Piece]) -> list[Piece]:
        texts = [each["text"] for each in made]
        plain = [each.get("code", False) for each in made]
        signed = with_signs(texts, self.language, plain)
        return [
            {**each, "text": printable(text)}
            for each, text in zip(made, signed, strict=True)
            if text or each.get("ends")
        ]

    def _pieces(self, piece: Inline) -> Iterator[Piece]:
        match piece:
            case str():
                yield {"text": piece}
            case Span():
                yield from _span(piece)
            case Mark():
                yield {"text": piece.text, "mark": True}
            case Both():
                yield {"text": piece.first}
                if piece.other:
                    yield {"text": f" ({piece.other})", "soft": True}
            case Reference():
                ids = (each for each in (piece.heading, piece.chapter) if each in self.targets)
                to = next(ids, "")
                yield {"text": piece.text, **({"to": to} if to else {})}
            case File():
                yield {"text": piece.text or piece.name, "code": True}


@lru_cache(maxsize=4096)
def printable(text: str) -> str:
    """Return a text in letters that the faces have; words of no end may break anywhere."""
    shown = "".join(shown for _, shown in in_faces(Face.SANS, text))
    return _ENDLESS.sub(lambda found: _BREAK.join(found[0]), shown)


def _span(span: Span) -> Iterator[Piece]:
    """Return a span; where a line ends within it, a piece that ``ends`` it."""
    manners = {name: True for name in ("strong", "emphasis", "code") if getattr(span, name)} | (
        {"link": span.link} if span.link else {}
    )
    for index, text in enumerate(span.text.split("\n")):
        if index:
            yield {"text": "", "ends": True}
        yield {"text": text, **manners}
