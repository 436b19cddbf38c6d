"""Words of the catalogue as a page says them: everything in them is escaped but what is markup."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from markupsafe import Markup, escape

from kerfolio.basis.catalogue import message
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed
from kerfolio.pages.signs import cleaned


def spoken(reader: Reader, name: str, /, **values: str | int) -> Markup:
    """Return a message; values that are markup (a link, a word set as code) stay so.

    Raises as ``basis.saying.say``.
    """
    pieces = message(reader.language, name, values)
    return Markup("").join(
        each if isinstance(each, Markup) else escape(cleaned(str(each))) for each in pieces
    )


def spoken_list(items: Sequence[str], reader: Reader, last: str = "and") -> Markup:
    """Return ``a``, ``a and b`` or ``a, b and c``; ``last`` is ``and`` or ``or``."""
    return Markup(listed(reader, items, last, spoken))


def ways(
    found: Iterable[tuple[str, object]], name: str, reader: Reader, download: bool = False
) -> list[Markup]:
    """Return links to files on papers, each with a message that says on which ``paper``.

    A file is its address, or has one (``href``).
    """
    link = Markup('<a href="{}" download>{}</a>' if download else '<a href="{}">{}</a>')
    return [
        link.format(getattr(file, "href", file), spoken(reader, name, paper=paper))
        for paper, file in found
    ]
