"""Masses and forces as people read them, in both systems."""

from __future__ import annotations

import math
from fractions import Fraction

from kerfolio.basis.reader import Reader

KG_PER_POUND = Fraction("0.45359237")
"""The international avoirdupois pound (1959)."""

KG_PER_MM3 = 1e-9
"""Of a density of 1 kg/m3."""

GRAVITY = 9.80665
"""Standard gravity in m/s2 (3rd CGPM, 1901): what a kilogram weighs in N."""


def mass_pair(kg: float, reader: Reader) -> tuple[str, str]:
    """Return a mass in kg and in pounds, the system of the workshop's first unit in front."""
    first, other = (f"{mass_number(kg, each)} {mass_unit(each)}" for each in reader.both)
    return first, other


def mass_in(kg: float, reader: Reader) -> str:
    """Return a mass in the system of a plan's unit: ``8.2 kg``, ``18.1 lb``."""
    return f"{reader.digits(in_mass_unit(kg, reader), 1)} {mass_unit(reader)}"


def own_mass_in(kg: float, reader: Reader) -> str:
    """Return a small mass in the system of a plan's unit: ``0.75 kg``, ``1.65 lb``."""
    return f"{reader.digits(in_mass_unit(kg, reader), 2)} {mass_unit(reader)}"


def mass_unit(reader: Reader) -> str:
    """Return the unit of masses beside lengths in mm or in inches: ``kg``, ``lb``."""
    return "lb" if reader.unit == "in" else "kg"


def mass_number(kg: float, reader: Reader) -> str:
    """Return a mass in that unit as a number: a tenth from 1 kg up, else a hundredth."""
    return reader.fixed(in_mass_unit(kg, reader), _places(kg))


def in_mass_unit(kg: float, reader: Reader) -> float:
    """Return a mass in that unit."""
    return kg / float(KG_PER_POUND) if reader.unit == "in" else kg


def _places(kg: float) -> int:
    return 1 if kg >= 1 else 2


def mass_text(kg: float, reader: Reader) -> str:
    """Return a mass in both on one line: ``8.2 kg (18.1 lb)``."""
    one, other = mass_pair(kg, reader)
    return f"{one} ({other})"


def force_text(newtons: float, reader: Reader) -> str:
    """Return a force in whole N and in pounds-force: ``16 N (3.7 lbf)``."""
    metric = f"{reader.digits(newtons, 0)} N"
    pounds = f"{reader.fixed(newtons / (GRAVITY * float(KG_PER_POUND)), 1)} lbf"
    one, other = (metric, pounds) if reader.unit == "mm" else (pounds, metric)
    return f"{one} ({other})"


def load_pair(kg: float, reader: Reader) -> tuple[str, str]:
    """Return a load in the first system and the other, whole from 10 up: ``60 kg``, ``132 lb``.

    It is rounded down, so that no figure is kinder than what was reckoned.
    """
    metric = f"{_down(kg, reader)} kg"
    pounds = f"{_down(kg / float(KG_PER_POUND), reader)} lb"
    return (metric, pounds) if reader.unit == "mm" else (pounds, metric)


def _down(value: float, reader: Reader) -> str:
    scale = 1 if value >= 10 else 10
    return reader.digits(math.floor(value * scale + 1e-6) / scale, 1)
