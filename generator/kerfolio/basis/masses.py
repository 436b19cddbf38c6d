"""Masses and forces as people read them, in both systems."""

from __future__ import annotations

import math
from fractions import Fraction

from kerfolio.basis.digits import digits, fixed

KG_PER_POUND = Fraction("0.45359237")
"""The international avoirdupois pound (1959)."""

KG_PER_MM3 = 1e-9
"""Of a density of 1 kg/m3."""

GRAVITY = 9.80665
"""Standard gravity in m/s2 (3rd CGPM, 1901): what a kilogram weighs in N."""


def mass_pair(kg: float, first: str) -> tuple[str, str]:
    """Return a mass in kg and in pounds, the system of the workshop's first unit in front."""
    metric, pounds = (f"{mass_number(kg, unit)} {mass_unit(unit)}" for unit in ("mm", "in"))
    return (metric, pounds) if first == "mm" else (pounds, metric)


def mass_in(kg: float, unit: str) -> str:
    """Return a mass in the system of a plan's unit: ``8.2 kg``, ``18.1 lb``."""
    return f"{digits(in_mass_unit(kg, unit), 1)} {mass_unit(unit)}"


def own_mass_in(kg: float, unit: str) -> str:
    """Return a small mass in the system of a plan's unit: ``0.75 kg``, ``1.65 lb``."""
    return f"{digits(in_mass_unit(kg, unit), 2)} {mass_unit(unit)}"


def mass_unit(first: str) -> str:
    """Return the unit of masses beside lengths in mm or in inches: ``kg``, ``lb``."""
    return "lb" if first == "in" else "kg"


def mass_number(kg: float, first: str) -> str:
    """Return a mass in that unit as a number: a tenth from 1 kg up, else a hundredth."""
    return fixed(in_mass_unit(kg, first), _places(kg))


def in_mass_unit(kg: float, first: str) -> float:
    """Return a mass in that unit."""
    return kg / float(KG_PER_POUND) if first == "in" else kg


def _places(kg: float) -> int:
    return 1 if kg >= 1 else 2


def mass_text(kg: float, first: str) -> str:
    """Return a mass in both on one line: ``8.2 kg (18.1 lb)``."""
    one, other = mass_pair(kg, first)
    return f"{one} ({other})"


def force_text(newtons: float, first: str) -> str:
    """Return a force in whole N and in pounds-force: ``16 N (3.7 lbf)``."""
    metric = f"{digits(newtons, 0)} N"
    pounds = f"{fixed(newtons / (GRAVITY * float(KG_PER_POUND)), 1)} lbf"
    one, other = (metric, pounds) if first == "mm" else (pounds, metric)
    return f"{one} ({other})"


def load_pair(kg: float, first: str) -> tuple[str, str]:
    """Return a load in the first system and the other, whole from 10 up: ``60 kg``, ``132 lb``.

    It is rounded down, so that no figure is kinder than what was reckoned.
    """
    metric = f"{_down(kg)} kg"
    pounds = f"{_down(kg / float(KG_PER_POUND))} lb"
    return (metric, pounds) if first == "mm" else (pounds, metric)


def _down(value: float) -> str:
    scale = 1 if value >= 10 else 10
    return digits(math.floor(value * scale + 1e-6) / scale, 1)
