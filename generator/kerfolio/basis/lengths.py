"""Lengths: one table of unit factors, and the one place where lengths are rounded for people.

Every text is made from the exact length in mm, never from another text, by the rule of
``basis/digits.py``: halves go up. A size of a thing has a tenth of a millimetre or 1/32 in. What
is read off a calliper stands in ``thickness.py``, what cutters make in ``cutting_lengths.py``, what
sheets are sold by in ``sheet_size.py``.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from kerfolio.basis.digits import digits, steps
from kerfolio.basis.reader import METRIC, Reader

MM_PER_UNIT: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction(254, 10),
    "ft": Fraction(3048, 10),
}
"""Exact millimetres per unit (the international inch, 1959: 25.4 mm)."""

INCH = 25.4
"""Millimetres."""

_NEAR = 0.02
"""Share of a length by which a fraction of an inch may be off and still tell it."""


def mm_number(mm: float, places: int = 1, reader: Reader = METRIC) -> str:
    """Return a length in mm as a number for people: at most ``places`` decimals, none trailing."""
    return reader.digits(mm, places)


def mm_text(mm: float, places: int = 1, reader: Reader = METRIC) -> str:
    """Return ``17.8 mm``."""
    return f"{mm_number(mm, places, reader=reader)} mm"


def inch_number(mm: float, denominator: int = 32) -> str:
    """Return a length in inches to the nearest 1/``denominator``, reduced: ``14 3/16``."""
    units = steps(mm / INCH * denominator, 0)
    whole, rest = divmod(abs(units), denominator)
    sign = "-" if units < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    head = f"{whole} " if whole else ""
    return f"{sign}{head}{Fraction(rest, denominator)}"


def inch_text(mm: float, denominator: int = 32) -> str:
    """Return a length in inches to the nearest 1/``denominator``, reduced: ``14 3/16 in``."""
    return f"{inch_number(mm, denominator)} in"


def both_text(mm: float, reader: Reader = METRIC, denominator: int = 32) -> str:
    """Return a length in both units, the reader's first one in front: ``360 mm (14 3/16 in)``."""
    return both(in_order(mm_text(mm, reader=reader), inch_text(mm, denominator), reader))


def side_number(mm: float, reader: Reader) -> str:
    """Return a side in the reader's unit without it: ``360``, ``14 3/16``."""
    return inch_number(mm) if reader.unit == "in" else mm_number(mm, reader=reader)


def size_numbers(sides: Sequence[float], reader: Reader) -> tuple[str, str]:
    """Return a size without units, in the first unit and in the other: ``360 × 450``, ``14 3/16 ×
    17 23/32``.
    """
    one, other = (" × ".join(side_number(side, each) for side in sides) for each in reader.both)
    return one, other


def size_pair(sides: Sequence[float], reader: Reader) -> tuple[str, str]:
    """Return a size in the first unit and in the other: ``360 × 450 mm``, ``14 3/16 × ... in``."""
    one, other = size_numbers(sides, reader)
    unit, other_unit = in_order("mm", "in", reader)
    return f"{one} {unit}", f"{other} {other_unit}"


def size_text(sides: Sequence[float], reader: Reader) -> str:
    """Return a size in both units on one line: ``360 × 450 mm (14 3/16 × 17 23/32 in)``."""
    return both(size_pair(sides, reader))


def place_number(mm: float, reader: Reader) -> str:
    """Return a place to look at without its unit: whole mm, 1/16 in."""
    return inch_number(mm, 16) if reader.unit == "in" else mm_number(mm, 0, reader)


def place_decimal(mm: float, unit: str) -> str:
    """Return a length for a list without its unit, as a decimal: ``317.5``, ``12.5``."""
    return digits(mm / INCH, 3) if unit == "in" else mm_number(mm)


def about_text(mm: float, reader: Reader = METRIC) -> str:
    """Return a place that is reckoned rather than measured: whole mm, 1/16 in."""
    return both(in_order(mm_text(mm, 0, reader), inch_text(mm, 16), reader))


def sag_pair(mm: float, reader: Reader) -> tuple[str, str]:
    """Return a sag in the first unit and in the other: ``2.4 mm``, ``0.10 in``.

    What would round to nothing is less than the least shown.
    """
    metric = f"{reader.fixed(mm, 1)} mm" if steps(mm, 1) else _under("0.1 mm", reader)
    inch = f"{reader.fixed(mm / INCH, 2)} in" if steps(mm / INCH, 2) else _under("0.01 in", reader)
    return in_order(metric, inch, reader)


def length_in(mm: float, reader: Reader) -> str:
    """Return a length in a plan's own unit, ``mm`` or ``in``: ``2.3 mm``, ``3/32 in``.

    In mm one decimal, two below 1 mm. In inches the nearest 1/32, as drawings and tables say it,
    where that is off by no more than 2 % of the length; else the nearest 1/64 if that is; else
    three decimals: ``0.005 in``. From 25/32 in up it is always 1/32. What would round to nothing
    is ``under 0.01 mm`` or ``under 0.001 in``; nothing itself is ``0``.
    """
    if reader.unit != "in":
        return at_least(mm, "mm", 1 if abs(mm) >= 1 else 2, "0.01", reader)
    inches = mm / INCH
    for denominator in (32, 64):
        off = abs(steps(inches * denominator, 0) / denominator - inches)
        if off <= _NEAR * abs(inches):
            return inch_text(mm, denominator)
    return at_least(inches, "in", 3, "0.001", reader)


def size_in(sides: Sequence[float], reader: Reader) -> str:
    """Return a size in a plan's own unit: ``360 x 450 mm``, ``14 3/16 x 6 1/2 in``."""
    return f"{' x '.join(side_number(side, reader) for side in sides)} {reader.unit}"


def spot_in(x: float, y: float, reader: Reader) -> str:
    """Return a place in a plan's own unit: ``120.5, 40 mm``, ``4 3/4, 1 9/16 in``."""
    if reader.unit == "in":
        return f"{inch_number(x)}, {inch_text(y)}"
    return f"{mm_number(x, reader=reader)}, {mm_text(y, reader=reader)}"


def in_order(metric: str, inch: str, reader: Reader) -> tuple[str, str]:
    """Return both, that of the reader's first unit in front."""
    return (metric, inch) if reader.unit == "mm" else (inch, metric)


def both(pair: tuple[str, str]) -> str:
    """Return two texts on one line, the second in parentheses."""
    return f"{pair[0]} ({pair[1]})"


def at_least(value: float, unit: str, places: int, least: str, reader: Reader = METRIC) -> str:
    """Return a value to so many places, ``under`` the least of them where it would be nothing."""
    if value and not steps(value, places):
        return _under(f"{least} {unit}", reader)
    return f"{reader.digits(value, places)} {unit}"


def _under(least: str, reader: Reader) -> str:
    return reader.says("figures-under", figure=reader.number(least))
