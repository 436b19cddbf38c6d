"""The documents of an edition: which chapters, and what they say of themselves."""

from __future__ import annotations

from kerfolio.chapters.opening import opening
from kerfolio.chapters.order import BOOKLET, chapters_of
from kerfolio.document.chapter import Document
from kerfolio.edition.edition import Edition
from kerfolio.edition.newest import address_of


def booklet_document(edition: Edition) -> Document:
    """Return the booklet: what a builder wants at the bench."""
    plan, identity = edition.plan, edition.identity
    return Document(
        what="Booklet",
        opening=opening(edition),
        chapters=chapters_of(edition, BOOKLET),
        author=identity.maker,
        subject=f"Booklet for {plan.title}, release {plan.version}",
        language=identity.language,
        foot=f"{plan.title} · release {plan.version}",
        address=address_of(edition),
        day=plan.released.isoformat(),
    )
