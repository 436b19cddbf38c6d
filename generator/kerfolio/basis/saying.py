"""Words of the catalogue, said to a reader."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from typing import cast

from babel.dates import format_date

from kerfolio.basis.catalogue import message
from kerfolio.basis.figured import Figure, Figured, Part, parts_of
from kerfolio.basis.reader import Reader


def say(reader: Reader, name: str, /, **values: str | int | Figure) -> str:
    """Return a message of the catalogue in the reader's language.

    Where a value is or has a figure, the text still knows it (``Figured``). Raises KeyError for a
    message that is not there, ValueError where it wants other values.
    """
    pieces = message(reader.language, name, values)
    if not any(isinstance(each, Figure | Figured) for each in pieces):
        return "".join(map(str, pieces))
    return Figured(*(part for each in pieces for part in _parts(each)))


def _parts(piece: object) -> tuple[Part, ...]:
    return (piece,) if isinstance(piece, Figure) else parts_of(cast("str", piece))


def day_text(reader: Reader, when: date) -> str:
    """Return ``2 October 2026``; the words follow no machine's locale (months by Unicode CLDR)."""
    return str(format_date(when, say(reader, "dates-day"), locale=reader.locale))


def listed(
    reader: Reader, items: Sequence[str], last: str = "and", said: Callable[..., str] = say
) -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``; figures are still known.

    ``last`` is the word before the last of them, ``and`` or ``or``, whatever the language; ``said``
    is how a message is said.
    """
    if len(items) < 2:
        return said(reader, "lists-one", item=items[0]) if items else ""
    head = items[0]
    for each in items[1:-1]:
        head = said(reader, "lists-more", head=head, item=each)
    return said(reader, f"lists-{last}", head=head, item=items[-1])
