"""How much pull a wood screw bears before it is drawn out: of wood, of a board's face or edge."""

from __future__ import annotations

from kerfolio.model.stock import SheetStock

_ULTIMATE_N = 108.25  # N/mm2; 15 700 in lb and inches
_ALLOWABLE_N = 2850 * 4.4482216 / 25.4**2  # N/mm2; 2850 in lb and inches


def ultimate_withdrawal(gravity: float, diameter: float, threaded: float) -> float:
    """Return the pull in N that draws a screw out of dry side grain, on average.

    ``gravity`` is the wood's specific gravity, ``diameter`` the shank's and ``threaded`` the length
    of thread in the wood, mm (Wood Handbook FPL-GTR-190, chapter 8: 15 700 G2 D L in lb and in).
    """
    return _ULTIMATE_N * gravity**2 * diameter * threaded


def allowable_withdrawal(gravity: float, diameter: float, threaded: float) -> float:
    """Return the pull in N that designers allow: 2850 G2 D L in lb and in (NDS for wood screws).

    It is about a fifth of the ultimate one; the two must never be mixed.
    """
    return _ALLOWABLE_N * gravity**2 * diameter * threaded


BOARDS = ("mdf", "particleboard", "hardboard")
"""Families of boards of fibres or particles."""

_FACE_N, _EDGE_N = 41.1, 31.8
"""N and mm; 2655 and 2055 in lb and in."""

_OVER = 5.0
"""What of an ultimate pull is allowed: a fifth, as for wood (common practice, no single source)."""

_PLY_EDGE = 0.75
"""How much of a plywood's face hold its edge has (common practice, no single source)."""

_WATER = 0.1
"""Share of moisture in what a density is stated for (common practice, no single source)."""


def ultimate_in_board(
    gravity: float, diameter: float, threaded: float, *, edge: bool = False
) -> float:
    """Return the pull in N that draws a screw out of a board of fibres or particles.

    K sqrt(D) (L - D/3)^(5/4) G^2 with K for its face or its edge; mm (from memory: Wood Handbook
    FPL-GTR-190, chapter 8, for particleboard; nothing there is told of MDF by itself).
    """
    factor = _EDGE_N if edge else _FACE_N
    length = max(0.0, threaded - diameter / 3)
    return float(factor * diameter**0.5 * length**1.25 * gravity**2)


def allowable_hold(
    stock: SheetStock, diameter: float, threaded: float, *, edge: bool = False
) -> float:
    """Return the pull in N that a screw is allowed in a sheet material, for comparing stock.

    ``threaded`` is the length in it, mm. Plywood counts as wood of its density, dried.
    """
    gravity = stock.density / 1000 / (1 + _WATER)
    if stock.family in BOARDS:
        return ultimate_in_board(gravity, diameter, threaded, edge=edge) / _OVER
    return allowable_withdrawal(gravity, diameter, threaded) * (_PLY_EDGE if edge else 1)
