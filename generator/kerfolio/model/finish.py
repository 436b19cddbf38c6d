"""What a thing is finished with, and when: before its pieces go together, or after."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Amount, Named

BEFORE, AFTER = WHEN = ("before assembly", "after assembly")
"""When pieces are finished: with a film inside their joints, or without."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """What is put on, in how many coats, and what sanding takes off.

    ``of`` names a finish of the stock; ``film`` is how thick one dry coat of it is, else ``wet``
    times ``solids``, where those are stated in place of the stock's. ``sanding`` is what is taken
    off each face before assembly, ``between_coats`` what is taken off each coat but the last.
    """

    of: Named
    coats: int = 1
    when: str = AFTER
    film: Amount | None = None
    wet: Amount | None = None
    solids: float | None = None
    sanding: Amount | None = None
    between_coats: Amount | None = None
    place: Place = NOWHERE
