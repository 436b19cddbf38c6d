"""Where a thing lives: how damp its air is, and with that how damp its wood gets."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Climate:
    """A kind of place; one is told from another by identity.

    ``name`` is its word in a plan, ``where`` the same in a sentence. ``least`` and ``most`` are the
    relative humidities, in per cent, between which its air stays but for some weeks a year.
    """

    name: str
    where: str
    least: float
    most: float

    def __str__(self) -> str:
        return self.name


DRY = Climate(name="dry", where="a dry room", least=30, most=50)
HEATED = Climate(name="heated room", where="a heated room", least=30, most=65)
SHED = Climate(name="shed", where="a shed", least=50, most=85)
OUTDOORS = Climate(name="outdoors", where="the open air", least=50, most=95)
CLIMATES = (DRY, HEATED, SHED, OUTDOORS)
"""Every place, in the order in which a plan's schema lists them.

The most of a heated room and of a shed is that of the service classes 1 and 2 of EN 1995-1-1,
2.3.1.3, at 20 deg C. That class 3, which is outdoors, goes beyond is all that it says: 95 %, the
least of each place, and all of a dry room are common practice, no single source.
"""

CELSIUS = 20.0
"""The temperature at which humidities are meant, as in EN 1995-1-1; moisture hardly follows it."""
