"""A set laid out and worked out whole."""

from __future__ import annotations

from functools import cache

from kerfolio.edition.edition import Edition
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from tests.plans import proved, workshop


@cache
def edition_of_set(text: str) -> Edition:
    """Return a set as it is published, of the text of its plan."""
    proof = proved(text)
    layout, faults = lay_out(proof.points)
    assert layout is not None, faults
    return edition_of(workshop(text), LaidOut(proof=proof, layout=layout, fresh=""))
