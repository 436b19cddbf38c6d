"""Bundles of plans that several tests look into, each packed once."""

from __future__ import annotations

from functools import cache

from kerfolio.publishing.bundle import Bundle, bundle_of
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from tests.plans import proved, small_layout, workshop


@cache
def bundle(text: str) -> Bundle:
    """Pack a plan from its text, laid out as the small one is."""
    found = LaidOut(proof=proved(text), layout=small_layout(), fresh="")
    return bundle_of(edition_of(workshop(text), found))
