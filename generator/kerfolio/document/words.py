"""What stands within a line: plain text, a maker's spans, marks, quantities, ways to elsewhere."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from kerfolio.basis.catalogue import message
from kerfolio.basis.reader import Reader
from kerfolio.model.prose import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """The mark of a piece, as it stands on drawings and templates: ``A1``."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Both:
    """One quantity told in the plan's unit (``first``) and in the other."""

    first: str
    other: str


def twin(pair: tuple[str, str]) -> Both:
    """Return the two texts of a quantity, that in the plan's unit first, as one piece."""
    return Both(first=pair[0], other=pair[1])


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """Words that lead to another chapter; ``chapter`` is its id.

    Where that chapter is not part of a document, the words stand alone. ``heading`` is the id of
    the heading in it under which it stands: paper tells that one's page.
    """

    text: str
    chapter: str
    heading: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """A file or folder of the bundle by its name in there; ``text`` is what is read, else that."""

    name: str
    text: str = ""


Inline = str | Span | Mark | Both | Reference | File
Words = str | tuple[Inline, ...]
"""A line of text: a plain one, or pieces that follow each other without anything between."""


def pieces(words: Words) -> tuple[Inline, ...]:
    """Return the pieces of a line; a plain one is one piece, an empty one none."""
    if isinstance(words, str):
        return (words,) if words else ()
    return words


def worded(reader: Reader, name: str, /, **values: Words | Inline | int) -> Words:
    """Return a message of the catalogue as a line, each value a piece or pieces of it.

    Raises as ``basis.saying.say``.
    """
    made = list[Inline]()
    for each in message(reader.language, name, values):
        for piece in each if isinstance(each, tuple) else (cast("Inline", each),):
            if made and type(piece) is str and type(made[-1]) is str:
                made[-1] += piece
            else:
                made.append(piece)
    if all(isinstance(each, str) for each in made):
        return "".join(cast("list[str]", made))
    return tuple(made)


def plain(words: Words) -> str:
    """Return a line without its manners: what a screen reader or a list of contents says."""
    return "".join(_plain(each) for each in pieces(words))


def _plain(piece: Inline) -> str:
    match piece:
        case str():
            return piece
        case Both():
            return f"{piece.first} ({piece.other})" if piece.other else piece.first
        case File():
            return piece.text or piece.name
        case _:
            return piece.text.replace("\n", " ")


def typed(text: str) -> Span:
    """Return text as it is typed or read on a screen: a field's name, a folder, a command."""
    return Span(text=text, code=True)


def address(href: str, text: str) -> Span:
    """Return words that lead to an address outside the document."""
    return Span(text=text, link=href)
