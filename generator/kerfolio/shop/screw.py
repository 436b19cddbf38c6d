"""How much pull a wood screw bears before it is drawn out of side grain."""

from __future__ import annotations

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
