"""The person that a plan is reckoned for: as stated, else by a standard."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place

MASS = 110.0
"""kg, that of EN 1022:2018 (domestic seating, users of up to 110 kg)."""
PUSH = 200.0
"""N, of somebody who leans or planes (common practice, no single source)."""
FRICTION = 0.3
"""Of wood on a hard, dry floor: 0.25 to 0.5 in engineering handbooks, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Who sits, leans or planes: mass kg, level push N."""

    kg: float = MASS
    push: float = PUSH
    place: Place = NOWHERE
