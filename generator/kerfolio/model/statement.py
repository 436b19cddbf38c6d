"""Values as a maker stated them, before anything is worked out."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class Amount:
    """A number, a quantity with a unit, or an expression over the plan's sizes, as written.

    ``text`` is what stands in the file (``360``, ``3/4 in``, ``seat/2 - t``).
    """

    text: str
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Spot:
    """A stated point: x to the right, y up, from the part's lower left corner."""

    x: Amount
    y: Amount
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Named:
    """A name that refers to something stated elsewhere, with the place of the reference."""

    name: str
    place: Place = NOWHERE

    def __str__(self) -> str:
        return self.name
