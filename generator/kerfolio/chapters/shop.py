"""A shop cuts it for you: what it is sent, and what it is told."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.document.blocks import Listing, Paragraph
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.words import File, Reference, Words
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words


def shop(edition: Edition) -> Chapter:
    """Return what a shop with a router, or with a saw alone, is to be sent."""
    blocks = (
        Paragraph(
            words="Ask for the thickness that the shop has measured, not for the name of the "
            "sheet: the files are for that."
        ),
        Listing(entries=tuple(_sent(edition))),
    )
    return Chapter(
        id="shop", title="A shop cuts it for you", blocks=blocks, who=frozenset({Who.SHOP})
    )


def _sent(edition: Edition) -> Iterator[Words]:
    sent = format_words(edition.formats, edition.reader).sent
    yield (f"The {sent} files of that thickness, in ", File(name="cut", text="cut/"), ".")
    yield (
        "The layouts, in ",
        File(name="layout", text="layout/"),
        ", and the setup sheets, in ",
        File(name="setup", text="setup/"),
        ".",
    )
    layers = Reference(text="list of layers", chapter="router")
    yield ("The ", layers, ": which line is cut how deep, and on which side.")
    if edition.parts:
        parts = File(name="lists/parts.csv", text="list of parts")
        yield ("For a shop that has a saw alone the ", parts, " and the saw sheets will do.")
