"""Several copies of a plan, in words: one place for page and booklet."""

from __future__ import annotations

from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition


def copies_remark(edition: Edition) -> str:
    """Return how the sheets of several copies were counted."""
    most = len(edition.copies)
    counted = {each.sheet for each in edition.layout.copies if len(each.counts) >= most}
    used = {sheet.sheet for sheet in edition.layout.sheets}
    called = "set" if edition.plan.is_set else "copy"
    told = "together" if used <= counted else "apart"
    return say(edition.reader, f"copies-{told}", called=called)
