"""What a joint is for: it decides how much room its features have."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Purpose:
    """A purpose of a joint; one is told from another by identity.

    ``name`` is its word in a plan, ``says`` what is done with such a joint.
    """

    name: str
    says: str

    def __str__(self) -> str:
        return self.name


KNOCK_DOWN = Purpose(name="knock-down", says="goes together and comes apart by hand")
GLUED = Purpose(name="glued", says="has room for a film of glue")
PRESS = Purpose(name="press", says="is driven in and held by its grip")
DROP_IN = Purpose(name="drop-in", says="drops in and lifts out")
PURPOSES = (KNOCK_DOWN, GLUED, PRESS, DROP_IN)
"""Every purpose, in the order in which a plan's schema lists them."""
