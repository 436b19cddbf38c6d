"""How damp wood gets in a place, and how much it swells there."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from kerfolio.model.climate import CELSIUS, Climate
from kerfolio.model.stock import AS_WOOD, Movement

_BOARDS = ((30.0, 7.0), (45.0, 8.0), (65.0, 10.0), (75.0, 11.0), (90.0, 15.5))
"""Moisture of particleboard and MDF at relative humidities, both in per cent.

Facts About Particleboard and MDF (a trade body's booklet), the middle of each range.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Swelling:
    """How a material moves in a place, in shares of a size.

    ``thickness`` and ``plane`` are by how much it grows from the moisture it was ``bought`` at to
    the ``most`` it has there; ``across`` by how much solid wood moves across its grain between the
    ``least`` and the most. Moistures are in per cent.
    """

    thickness: float
    plane: float
    across: float
    bought: float
    least: float
    most: float


STILL = Swelling(thickness=0.0, plane=0.0, across=0.0, bought=0.0, least=0.0, most=0.0)
"""What a material does of which nothing is known."""


def equilibrium_moisture(humidity: float, celsius: float = CELSIUS) -> float:
    """Return the moisture in per cent that wood comes to in air of a relative humidity in per cent.

    Equation of Hailwood and Horrobin for two hydrates, with the constants of the Wood Handbook
    FPL-GTR-190, Chapter 4, and of Simpson, FPL-RN-0268 (1998), for degrees Celsius.
    """
    t, h = celsius, humidity / 100
    w = 349 + 1.29 * t + 0.0135 * t * t
    k = 0.805 + 0.000736 * t - 0.00000273 * t * t
    k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
    k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
    once, twice = k1 * k * h, k1 * k2 * k * k * h * h
    return 1800 / w * (k * h / (1 - k * h) + (once + 2 * twice) / (1 + once + twice))


def board_moisture(humidity: float) -> float:
    """Return the moisture of fibreboard and particleboard in per cent, at a humidity in per cent.

    Between the rows of the table, and beyond them, it follows a straight line.
    """
    (x0, y0), (x1, y1) = next(
        (each for each in pairwise(_BOARDS) if humidity <= each[1][0]), _BOARDS[-2:]
    )
    return y0 + (humidity - x0) * (y1 - y0) / (x1 - x0)


def grown(size: float, percent: float, moisture: float) -> float:
    """Return by how much a size grows that takes up so many per cent of moisture.

    ``percent`` of it for each of them: Wood Handbook FPL-GTR-190, equation 13-2, which holds within
    6 to 14 % and is taken beyond as well; what is wetter grows somewhat less.
    """
    return size * percent / 100 * moisture


def swelling_in(climate: Climate, movement: Movement | None) -> Swelling:
    """Return how a material swells in a place; what is dried out there swells by nothing."""
    if movement is None:
        return STILL
    taken = equilibrium_moisture if movement.takes_up == AS_WOOD else board_moisture
    least, most = taken(climate.least), taken(climate.most)
    more = max(0.0, most - movement.bought)
    return Swelling(
        thickness=grown(1.0, movement.thickness, more),
        plane=grown(1.0, movement.plane, more),
        across=grown(1.0, movement.plane, most - least),
        bought=movement.bought,
        least=least,
        most=most,
    )
