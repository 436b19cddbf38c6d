"""Lengths: one table of unit factors, and the one place where lengths are rounded for people."""

from __future__ import annotations

from fractions import Fraction

MM_PER_UNIT: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction(254, 10),
    "ft": Fraction(3048, 10),
}
"""Exact millimetres per unit (the international inch, 1959: 25.4 mm)."""


def mm_number(mm: float, places: int = 1) -> str:
    """Return a length in mm as a number for people: at most ``places`` decimals, none trailing."""
    text = f"{mm:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def mm_text(mm: float, places: int = 1) -> str:
    """Return ``17.8 mm``."""
    return f"{mm_number(mm, places)} mm"


def inch_text(mm: float, denominator: int = 32) -> str:
    """Return a length in inches to the nearest 1/``denominator``, reduced: ``14 3/16 in``."""
    units = round(Fraction(abs(mm)) / MM_PER_UNIT["in"] * denominator)
    whole, rest = divmod(units, denominator)
    sign = "-" if mm < 0 and units else ""
    if not rest:
        return f"{sign}{whole} in"
    fraction = Fraction(rest, denominator)
    head = f"{whole} " if whole else ""
    return f"{sign}{head}{fraction.numerator}/{fraction.denominator} in"


def both_text(mm: float, first: str = "mm", denominator: int = 32) -> str:
    """Return a length in both units, the reader's first one in front: ``360 mm (14 3/16 in)``."""
    metric, inch = mm_text(mm), inch_text(mm, denominator)
    return f"{metric} ({inch})" if first == "mm" else f"{inch} ({metric})"


def caliper_inches(mm: float) -> str:
    """Return a thickness as a caliper shows it: ``0.701 in``.

    Fractions of 1/64 in (0.4 mm) cannot tell the steps of a ladder apart.
    """
    return f"{float(Fraction(mm) / MM_PER_UNIT['in']):.3f} in"


def thickness_text(mm: float, first: str) -> str:
    """Return a sheet's thickness in both units: ``17.8 mm (0.701 in)``."""
    metric, inch = mm_text(mm, 2), caliper_inches(mm)
    return f"{metric} ({inch})" if first == "mm" else f"{inch} ({metric})"


def sag_pair(mm: float, first: str) -> tuple[str, str]:
    """Return a sag in the first unit and in the other: ``2.4 mm``, ``0.10 in``.

    What would round to nothing is less than the least shown.
    """
    inches = float(Fraction(mm) / MM_PER_UNIT["in"])
    metric = f"{mm:.1f} mm" if mm >= 0.05 else "under 0.1 mm"
    inch = f"{inches:.2f} in" if inches >= 0.005 else "under 0.01 in"
    return (metric, inch) if first == "mm" else (inch, metric)
