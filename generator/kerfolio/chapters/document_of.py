"""The documents of an edition: which chapters, and what they say of themselves."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.chapters.opening import opening
from kerfolio.chapters.order import BOOKLET, chapters_of
from kerfolio.document.chapter import Document
from kerfolio.edition.edition import Edition
from kerfolio.edition.newest import address_of


def booklet_document(edition: Edition) -> Document:
    """Return the booklet: what a builder wants at the bench."""
    plan, identity, reader = edition.plan, edition.identity, edition.reader
    named = {"title": plan.title, "version": plan.version}
    return Document(
        title=say(reader, "booklet-title", title=plan.title),
        opening=opening(edition),
        chapters=chapters_of(edition, BOOKLET),
        author=identity.maker,
        subject=say(reader, "booklet-subject", **named),
        language=identity.language,
        foot=say(reader, "booklet-foot", **named),
        address=address_of(edition),
        day=plan.released.isoformat(),
    )
