"""Several copies of a plan, in words: one place for page and booklet."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.edition.making import copies_called

TOGETHER = "Sheets are counted for all {} laid out together."
APART = "Every {} is counted with whole sheets of its own; laid out together they may take fewer."


def copies_remark(edition: Edition) -> str:
    """Return how the sheets of several copies were counted."""
    most = len(edition.copies)
    counted = {each.sheet for each in edition.layout.copies if len(each.counts) >= most}
    used = {sheet.sheet for sheet in edition.layout.sheets}
    called = copies_called(edition.plan)
    return TOGETHER.format(called.many) if used <= counted else APART.format(called.one)
