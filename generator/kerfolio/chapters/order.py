"""Which chapters a document has, in the order that its readers need them."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.chapters.cautions import cautions
from kerfolio.chapters.need import need
from kerfolio.document.chapter import Chapter, kept
from kerfolio.edition.edition import Edition

Making = Callable[[Edition], Chapter | None]
"""How a chapter is made; None where a plan has nothing to tell in it."""

BOOKLET: tuple[Making, ...] = (need, cautions)
PAGE: tuple[Making, ...] = (need, cautions)
START: tuple[Making, ...] = (cautions, need)


def chapters_of(edition: Edition, order: tuple[Making, ...]) -> tuple[Chapter, ...]:
    """Return the chapters of an edition in an order; those with nothing to tell are left out."""
    return kept([make(edition) for make in order])
