"""Another material in place of a plan's own, as a maker or a command line states it."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Named


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """Which stock takes the place of which sheets' own.

    ``stocks`` are pairs of a sheet of the plan and a sheet stock; a sheet without a name is the
    plan's only one.
    """

    stocks: tuple[tuple[Named, Named], ...]
    place: Place = NOWHERE
