"""How far a count of sheets can be trusted, in words that page and booklet share."""

from __future__ import annotations

from collections.abc import Mapping

from kerfolio.basis.words import counted
from kerfolio.edition.edition import Edition
from kerfolio.layouts.count import proven_minimal, sheets_used


def counted_as(edition: Edition) -> Mapping[str, str]:
    """Return what is known of the fewest sheets of each material; nothing where nothing is.

    The bound is the layout's own: the area of the pieces with their gaps, and pieces too wide to
    lie side by side.
    """
    used = sheets_used(edition.layout)
    proven, bounds = proven_minimal(edition.layout), dict(edition.layout.bounds)
    return {
        name: f"{counted(count, 'sheet')}: " + _words(proven[name], bounds[name])
        for name, count in used.items()
        if name in proven
    }


def _words(proven: bool, bound: int) -> str:
    return "proven the fewest" if proven else f"nobody can do with fewer than {bound}"
