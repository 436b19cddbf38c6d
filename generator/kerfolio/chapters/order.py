"""Which chapters a document has, in the order that its readers need them."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.chapters.cautions import cautions
from kerfolio.document.chapter import Chapter, kept
from kerfolio.edition.edition import Edition

Making = Callable[[Edition], Chapter | None]
"""How a chapter is made; None where a plan has nothing to tell in it."""

BOOKLET: tuple[Making, ...] = (cautions,)
PAGE: tuple[Making, ...] = (cautions,)
START: tuple[Making, ...] = (cautions,)


def chapters_of(edition: Edition, order: tuple[Making, ...]) -> tuple[Chapter, ...]:
    """Return the chapters of an edition in an order; those with nothing to tell are left out."""
    return kept([make(edition) for make in order])
