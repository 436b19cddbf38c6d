"""What is used up in making: sandpaper, oil, cutters."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from kerfolio.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Consumable:
    """A line of the costs, in the workshop's currency: ``price`` for each ``each``.

    ``each`` is ``copy``, ``sheet`` or ``hour`` (of the machine).
    """

    what: str
    price: Decimal
    each: str = "copy"
    place: Place = NOWHERE
