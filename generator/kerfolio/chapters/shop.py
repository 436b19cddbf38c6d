"""A shop cuts it for you: what it is sent, and what it is told."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.saying import say
from kerfolio.document.blocks import Listing, Paragraph
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.words import File, Reference, Words, worded
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words


def shop(edition: Edition) -> Chapter:
    """Return what a shop with a router, or with a saw alone, is to be sent."""
    reader = edition.reader
    blocks = (
        Paragraph(words=say(reader, "shop-ask")),
        Listing(entries=tuple(_sent(edition))),
    )
    title = say(reader, "shop-title")
    return Chapter(id="shop", title=title, blocks=blocks, who=frozenset({Who.SHOP}))


def _sent(edition: Edition) -> Iterator[Words]:
    reader = edition.reader
    sent = format_words(edition.formats, reader).sent
    yield worded(reader, "shop-files", formats=sent, folder=File(name="cut", text="cut/"))
    yield worded(
        reader,
        "shop-layouts",
        layouts=File(name="layout", text="layout/"),
        setup=File(name="setup", text="setup/"),
    )
    layers = Reference(text=say(reader, "shop-layers"), chapter="router", heading="layers")
    yield worded(reader, "shop-lines", layers=layers)
    if edition.parts:
        parts = File(name="lists/parts.csv", text=say(reader, "shop-parts"))
        yield worded(reader, "shop-saw", parts=parts)
