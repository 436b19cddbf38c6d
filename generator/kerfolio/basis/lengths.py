"""Lengths: one table of unit factors, and the one place where lengths are rounded for people.

Every text is made from the exact length in mm, never from another text, by the rule of
``basis/digits.py``: halves go up. A size of a thing has a tenth of a millimetre or 1/32 in; what
is read off a calliper (a thickness, a fit, a cutter) a hundredth or a thousandth of an inch.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from kerfolio.basis.digits import digits, fixed, rounded, steps

MM_PER_UNIT: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction(254, 10),
    "ft": Fraction(3048, 10),
}
"""Exact millimetres per unit (the international inch, 1959: 25.4 mm)."""

_INCH = 25.4
_FRACTION = 0.0005
"""Inches by which a length may be off that is told as a fraction to a reader of callipers."""

_NEAR = 0.02
"""Share of a length by which a fraction of an inch may be off and still tell it."""


def mm_number(mm: float, places: int = 1) -> str:
    """Return a length in mm as a number for people: at most ``places`` decimals, none trailing."""
    return digits(mm, places)


def mm_text(mm: float, places: int = 1) -> str:
    """Return ``17.8 mm``."""
    return f"{mm_number(mm, places)} mm"


def inch_number(mm: float, denominator: int = 32) -> str:
    """Return a length in inches to the nearest 1/``denominator``, reduced: ``14 3/16``."""
    units = steps(mm / _INCH * denominator, 0)
    whole, rest = divmod(abs(units), denominator)
    sign = "-" if units < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    head = f"{whole} " if whole else ""
    return f"{sign}{head}{Fraction(rest, denominator)}"


def inch_text(mm: float, denominator: int = 32) -> str:
    """Return a length in inches to the nearest 1/``denominator``, reduced: ``14 3/16 in``."""
    return f"{inch_number(mm, denominator)} in"


def both_text(mm: float, first: str = "mm", denominator: int = 32) -> str:
    """Return a length in both units, the reader's first one in front: ``360 mm (14 3/16 in)``."""
    return _both(_pair(mm_text(mm), inch_text(mm, denominator), first))


def size_numbers(sides: Sequence[float], first: str) -> tuple[str, str]:
    """Return a size without units, in the first unit and in the other: ``360 × 450``, ``14 3/16 ×
    17 23/32``.
    """
    metric, inch = (" × ".join(map(number, sides)) for number in (mm_number, inch_number))
    return _pair(metric, inch, first)


def size_pair(sides: Sequence[float], first: str) -> tuple[str, str]:
    """Return a size in the first unit and in the other: ``360 × 450 mm``, ``14 3/16 × ... in``."""
    one, other = size_numbers(sides, first)
    unit, other_unit = _pair("mm", "in", first)
    return f"{one} {unit}", f"{other} {other_unit}"


def size_text(sides: Sequence[float], first: str) -> str:
    """Return a size in both units on one line: ``360 × 450 mm (14 3/16 × 17 23/32 in)``."""
    return _both(size_pair(sides, first))


def caliper_inches(mm: float) -> str:
    """Return a thickness as a caliper shows it: ``0.701 in``.

    Fractions of 1/64 in (0.4 mm) cannot tell the steps of a ladder apart.
    """
    return f"{fixed(mm / _INCH, 3)} in"


def thickness_text(mm: float, first: str) -> str:
    """Return a sheet's thickness in both units: ``17.8 mm (0.701 in)``."""
    return _both(thickness_pair(mm, first))


def thickness_pair(mm: float, first: str) -> tuple[str, str]:
    """Return a sheet's thickness in the first unit and in the other: ``17.8 mm``, ``0.701 in``."""
    return _pair(mm_text(mm, 2), caliper_inches(mm), first)


def range_text(least: float, most: float, first: str) -> str:
    """Return a range of thicknesses: ``17.2 to 18.6 mm (0.677 to 0.732 in)``."""
    if least == most:
        return thickness_text(least, first)
    return _both(_pair(range_in(least, most, "mm"), range_in(least, most, "in"), first))


def about_text(mm: float, first: str = "mm") -> str:
    """Return a place that is reckoned rather than measured: whole mm, 1/16 in."""
    return _both(_pair(mm_text(mm, 0), inch_text(mm, 16), first))


def cut_text(mm: float, first: str = "mm") -> str:
    """Return a size that a cutter makes (a slot's width, a hole, a depth): ``6.35 mm (1/4 in)``.

    It is told to a hundredth and to 1/64 in, since what is put into it is measured so.
    """
    return _both(_pair(mm_text(mm, 2), inch_text(mm, 64), first))


def tool_pair(mm: float, first: str) -> tuple[str, str]:
    """Return a size by which tools and fasteners are sold: ``3.175 mm``, ``0.125 in``."""
    return _pair(mm_text(mm, 3), caliper_inches(mm), first)


def chip_pair(mm: float, first: str) -> tuple[str, str]:
    """Return the thickness of a chip: ``0.050 mm``, ``0.0020 in``."""
    return _pair(f"{fixed(mm, 3)} mm", f"{fixed(mm / _INCH, 4)} in", first)


def sag_pair(mm: float, first: str) -> tuple[str, str]:
    """Return a sag in the first unit and in the other: ``2.4 mm``, ``0.10 in``.

    What would round to nothing is less than the least shown.
    """
    metric = f"{fixed(mm, 1)} mm" if steps(mm, 1) else "under 0.1 mm"
    inch = f"{fixed(mm / _INCH, 2)} in" if steps(mm / _INCH, 2) else "under 0.01 in"
    return _pair(metric, inch, first)


def length_in(mm: float, unit: str) -> str:
    """Return a length in a plan's own unit, ``mm`` or ``in``: ``2.3 mm``, ``3/32 in``.

    In mm one decimal, two below 1 mm. In inches the nearest 1/32, as drawings and tables say it,
    where that is off by no more than 2 % of the length; else the nearest 1/64 if that is; else
    three decimals: ``0.005 in``. From 25/32 in up it is always 1/32. What would round to nothing
    is ``under 0.01 mm`` or ``under 0.001 in``; nothing itself is ``0``.
    """
    if unit != "in":
        return _least(mm, "mm", 1 if abs(mm) >= 1 else 2, "0.01")
    inches = mm / _INCH
    for denominator in (32, 64):
        off = abs(steps(inches * denominator, 0) / denominator - inches)
        if off <= _NEAR * abs(inches):
            return inch_text(mm, denominator)
    return _least(inches, "in", 3, "0.001")


def reading_in(mm: float, unit: str) -> str:
    """Return what a calliper reads (a thickness, a fit, what it lacks) in a plan's unit.

    In mm two decimals, none trailing: ``17.82 mm``; in inches three: ``0.702 in``. What would
    round to nothing is told as by ``length_in``.
    """
    if unit != "in":
        return _least(mm, "mm", 2, "0.01")
    return caliper_inches(mm) if steps(mm / _INCH, 3) else _least(mm / _INCH, "in", 3, "0.001")


def precise_in(mm: float, unit: str) -> str:
    """Return a width, a depth or a diameter in a plan's unit, close enough to tell it by.

    In mm as ``reading_in``; in inches the fraction that it is, to half a thousandth: ``1/4 in``,
    ``5/64 in``; else three decimals: ``0.729 in``.
    """
    sixty_fourths = mm / _INCH * 64
    off = abs(steps(sixty_fourths, 0) - sixty_fourths) / 64
    return inch_text(mm, 64) if unit == "in" and off < _FRACTION else reading_in(mm, unit)


def size_in(sides: Sequence[float], unit: str) -> str:
    """Return a size in a plan's own unit: ``360 x 450 mm``, ``14 3/16 x 6 1/2 in``."""
    number = inch_number if unit == "in" else mm_number
    return f"{' x '.join(number(side) for side in sides)} {'in' if unit == 'in' else 'mm'}"


def spot_in(x: float, y: float, unit: str) -> str:
    """Return a place in a plan's own unit: ``120.5, 40 mm``, ``4 3/4, 1 9/16 in``."""
    if unit == "in":
        return f"{inch_number(x)}, {inch_text(y)}"
    return f"{mm_number(x)}, {mm_text(y)}"


def range_in(least: float, most: float, unit: str) -> str:
    """Return what a calliper reads at both ends, in a plan's unit: ``17.2 to 18.6 mm``."""
    if unit == "in":
        return f"{fixed(least / _INCH, 3)} to {caliper_inches(most)}"
    return f"{mm_number(least, 2)} to {mm_text(most, 2)}"


def chip_in(mm: float, unit: str) -> str:
    """Return a chip load in a plan's unit: ``0.127 mm``, ``0.005 in``; a tenth of a mil at most."""
    return f"{digits(mm / _INCH, 4)} in" if unit == "in" else mm_text(mm, 3)


def chip_range_in(least: float, most: float, unit: str) -> str:
    """Return a range of chip loads in a plan's unit: ``0.05 to 0.1 mm``."""
    first = digits(least / _INCH, 4) if unit == "in" else mm_number(least, 3)
    return f"{first} to {chip_in(most, unit)}"


def feed_in(mm_per_min: float, unit: str) -> str:
    """Return a feed in a plan's unit: ``4500 mm/min``, ``177 in/min``."""
    if unit == "in":
        return f"{digits(mm_per_min / _INCH, 0)} in/min"
    return f"{mm_number(mm_per_min, 0)} mm/min"


def _pair(metric: str, inch: str, first: str) -> tuple[str, str]:
    """Return both, that of the reader's first unit in front."""
    return (metric, inch) if first == "mm" else (inch, metric)


def _both(pair: tuple[str, str]) -> str:
    return f"{pair[0]} ({pair[1]})"


def _least(value: float, unit: str, places: int, least: str) -> str:
    if value and not steps(value, places):
        return f"under {least} {unit}"
    return f"{digits(value, places)} {unit}"


def read_off(mm: float) -> float:
    """Return a thickness as a person reads it off a calliper: to 0.01 mm, halves up.

    23/32 in, 18.25625 mm, is 18.26 mm. What is read is rounded before anything is made of it, so
    that a file filled in elsewhere from the same reading is the same file.
    """
    return rounded(mm, 2)
