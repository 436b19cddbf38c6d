"""The statics of beams and columns: sag with its shear part, moments, stress, creep, buckling.

Lengths mm, forces N, stiffness and stress N/mm2; any other consistent set of units serves as well.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

G = 9.80665
"""Standard gravity, m/s2: newtons of a kilogram (ISO 80000-3)."""
SHEAR_SHARE = 5 / 6
"""Share of a rectangle's area that counts in shear (Wood Handbook, chapter 9)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Loading:
    """How a load lies on a beam and how the beam is held.

    ``bending`` and ``shear`` are kb and ks of the deflection formula.
    """

    load: str
    ends: str
    bending: float
    shear: float

    def moment_at(self, share: float) -> float:
        """Return the moment at a share of the span over W L; of an overhang from its held end.

        Statics: W L s (1 - s) / 2 under an even load, W L min(s, 1 - s) / 2 under one in the
        middle, both lowered by 1/12 and 1/8 where the ends are clamped (Roark's Formulas, table of
        beams with both ends fixed; from memory); W L (1 - s)2 / 2 and W L (1 - s) where it hangs
        out. Below zero it hogs.
        """
        rest = 1 - share
        if self.ends == "one":
            return rest if self.load == "end" else rest**2 / 2
        sagging = share * rest / 2 if self.load == "even" else min(share, rest) / 2
        held = 0.0 if self.ends == "free" else 1 / 12 if self.load == "even" else 1 / 8
        return sagging - held

    def force_at(self, share: float) -> float:
        """Return the shear force at a share of the span over W, without its sign (statics)."""
        if self.ends == "one":
            return 1.0 if self.load == "end" else 1 - share
        return abs(0.5 - share) if self.load == "even" else 0.5


LOADINGS: tuple[Loading, ...] = (
    Loading(load="even", ends="free", bending=5 / 384, shear=1 / 8),
    Loading(load="even", ends="clamped", bending=1 / 384, shear=1 / 8),
    Loading(load="middle", ends="free", bending=1 / 48, shear=1 / 4),
    Loading(load="middle", ends="clamped", bending=1 / 192, shear=1 / 4),
    Loading(load="even", ends="one", bending=1 / 8, shear=1 / 2),
    Loading(load="end", ends="one", bending=1 / 3, shear=1.0),
)
"""Wood Handbook FPL-GTR-190, Table 9-1 (constants from memory, each derived again in the tests).

``free`` ends lie on their supports, ``clamped`` ends cannot turn, ``one`` end is clamped and the
other hangs out. Sag is at mid-span, of an overhang at its end; moments by statics.
"""


def loading(load: str, ends: str) -> Loading:
    """Return the constants of a loading; KeyError when the table has none."""
    for each in LOADINGS:
        if (each.load, each.ends) == (load, ends):
            return each
    raise KeyError((load, ends))


def sag(case: Loading, force: float, span: float, bending: float, shear: float) -> float:
    """Return the deflection kb W L3 / (E I) + ks W L / (G A').

    ``bending`` is E I, ``shear`` is G A' (Wood Handbook FPL-GTR-190, equation 9-2).
    """
    return case.bending * force * span**3 / bending + case.shear * force * span / shear


def rectangle_inertia(width: float, height: float) -> float:
    """Return the second moment of area b h3 / 12, bending across ``height``."""
    return width * height**3 / 12


def long_term(first: float, creep: float) -> float:
    """Return the deflection under lasting load, u (1 + kdef) (EN 1995-1-1, 2.2.3)."""
    return first * (1 + creep)


def buckling_load(stiffness: float, inertia: float, length: float, held: float = 1.0) -> float:
    """Return Euler's load pi2 E I / (K L)2.

    ``held`` is K: 1 for two ends that turn and stay in place, 2 for one clamped and one free end,
    0.7 clamped and turning, 0.5 both clamped (mechanics of materials; least inertia governs).
    """
    return math.pi**2 * stiffness * inertia / (held * length) ** 2


RECTANGLE_PEAK = 1.5
"""Greatest shear stress of a rectangle over its mean (statics: 1.5 V / A)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """One member of a built-up section: E, area, own inertia, its middle's height, half height.

    A member that does not reach a place has no area there and carries nothing.
    """

    stiffness: float
    area: float
    inertia: float
    middle: float
    half: float


@dataclass(frozen=True, slots=True)
class BuiltUp:
    """A built-up section: E I in all, and each member's stress under a moment of 1."""

    bending: float
    stresses: tuple[float, ...]


def built_up(layers: Sequence[Layer], glued: Sequence[bool]) -> BuiltUp:
    """Return a pile of members; ``glued`` tells of each but the first whether it holds to the last.

    Those that hold to one another bend as one, and the groups bend alike, each about its own
    middle: E I adds up. A moment of 1 brings E z / (E I) into each (statics of built-up sections).
    """
    groups: list[list[int]] = [[]]
    for index, each in enumerate(layers):
        if index and not (glued[index - 1] and each.area and layers[index - 1].area):
            groups.append([])
        groups[-1].append(index)
    made = [
        (group, together([layers[index] for index in group]))
        for group in groups
        if layers[group[0]].area
    ]
    bending = math.fsum(each.bending for _, each in made)
    stresses = [0.0] * len(layers)
    for group, as_one in made:
        for index, stress in zip(group, as_one.stresses, strict=True):
            stresses[index] = stress * as_one.bending / bending
    return BuiltUp(bending, tuple(stresses))


def together(layers: Sequence[Layer]) -> BuiltUp:
    """Return members that cannot slip: all bend about one axis (transformed-section method)."""
    weight = math.fsum(each.stiffness * each.area for each in layers)
    axis = math.fsum(each.stiffness * each.area * each.middle for each in layers) / weight
    bending = math.fsum(
        each.stiffness * (each.inertia + each.area * (each.middle - axis) ** 2) for each in layers
    )
    return BuiltUp(
        bending,
        tuple(each.stiffness * (abs(each.middle - axis) + each.half) / bending for each in layers),
    )
