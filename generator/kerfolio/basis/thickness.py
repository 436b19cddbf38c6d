"""Thicknesses and other readings of a calliper as people read them, and what folders call them.

A sheet is told by the fraction it is sold as, ``23/32 in``, where that is what was read; a calliper
shows three decimals of an inch.
"""

from __future__ import annotations

from fractions import Fraction

from kerfolio.basis.digits import rounded, steps
from kerfolio.basis.lengths import (
    INCH,
    at_least,
    both,
    in_order,
    inch_number,
    inch_text,
    mm_number,
    mm_text,
)
from kerfolio.basis.reader import METRIC, Reader

_FRACTION = 0.0005
"""Inches by which a length may be off that is told as a fraction to a reader of callipers."""


def read_off(mm: float) -> float:
    """Return a thickness as a person reads it off a calliper: to 0.01 mm, halves up.

    23/32 in, 18.25625 mm, is 18.26 mm. What is read is rounded before anything is made of it, so
    that a file filled in elsewhere from the same reading is the same file.
    """
    return rounded(mm, 2)


def caliper_inches(mm: float, reader: Reader = METRIC) -> str:
    """Return a thickness as a caliper shows it: ``0.701 in``.

    Fractions of 1/64 in (0.4 mm) cannot tell the steps of a ladder apart. What is 11/16 in to
    0.01 mm is 0.688 in, though 17.46 mm alone would be 0.687 in.
    """
    return f"{calliper_number(mm, reader)} in"


def calliper_number(mm: float, reader: Reader = METRIC) -> str:
    """Return inches as a caliper shows them, without the unit: ``0.701``."""
    exact = _as_sold(mm)
    return reader.fixed(mm / INCH if exact is None else float(exact), 3)


def _as_sold(mm: float) -> Fraction | None:
    """Return the 64ths of an inch that a thickness read to 0.01 mm is, None where it is none."""
    sixty_fourths = Fraction(steps(mm / INCH * 64, 0), 64)
    same = read_off(float(sixty_fourths) * INCH) == read_off(mm)
    return sixty_fourths if sixty_fourths and same else None


def reading_in(mm: float, reader: Reader) -> str:
    """Return what a calliper reads (a thickness, a fit, what it lacks) in a plan's unit.

    In mm two decimals, none trailing: ``17.82 mm``; in inches three: ``0.702 in``. What would
    round to nothing is told as by ``length_in``.
    """
    if reader.unit != "in":
        return at_least(mm, "mm", 2, "0.01", reader)
    if steps(mm / INCH, 3):
        return caliper_inches(mm, reader)
    return at_least(mm / INCH, "in", 3, "0.001", reader)


def reading_number(mm: float, reader: Reader) -> str:
    """Return what a calliper reads in one unit without the unit: ``17.82``, ``0.702``."""
    return calliper_number(mm, reader) if reader.unit == "in" else mm_number(mm, 2, reader)


def range_in(least: float, most: float, reader: Reader) -> str:
    """Return what a calliper reads at both ends, in a plan's unit: ``17.2 to 18.6 mm``."""
    if reader.unit == "in":
        low, high = calliper_number(least, reader), caliper_inches(most, reader)
    else:
        low, high = mm_number(least, 2, reader), mm_text(most, 2, reader)
    return reader.says("figures-to", least=low, most=high)


def precise_in(mm: float, reader: Reader) -> str:
    """Return a width, a depth or a diameter in a plan's unit, close enough to tell it by.

    In mm as ``reading_in``; in inches the fraction that it is, to half a thousandth: ``1/4 in``,
    ``5/64 in``; else three decimals: ``0.729 in``.
    """
    sixty_fourths = mm / INCH * 64
    off = abs(steps(sixty_fourths, 0) - sixty_fourths) / 64
    return inch_text(mm, 64) if reader.unit == "in" and off < _FRACTION else reading_in(mm, reader)


def thickness_pair(mm: float, reader: Reader) -> tuple[str, str]:
    """Return a sheet's thickness in the first unit and in the other: ``17.8 mm``, ``0.701 in``."""
    return in_order(mm_text(mm, 2, reader), caliper_inches(mm, reader), reader)


def thickness_text(mm: float, reader: Reader) -> str:
    """Return a thickness as a calliper shows it, in both units: ``17.8 mm (0.701 in)``."""
    return both(thickness_pair(mm, reader))


def thickness_label(mm: float, unit: str) -> str:
    """Return what a thickness is called in the name of a folder or a file.

    In mm ``18.0mm`` or ``17.86mm``: one decimal at least, so that folders sort by thickness. In
    inches the fraction it is sold as, ``23-32in``, else as a calliper shows it, ``0.709in``.
    """
    number = sold_number(mm, Reader(unit=unit))
    if unit == "in":
        return f"{number.replace(' ', '-').replace('/', '-')}in"
    return f"{number}mm" if "." in number else f"{number}.0mm"


def sold_in(mm: float, reader: Reader) -> str:
    """Return a thickness that sheets are sold in or a plan is published for, in one unit.

    ``17.8 mm``; the fraction that it is to 0.01 mm, ``23/32 in``, else as a calliper shows it.
    """
    return f"{sold_number(mm, reader)} {reader.unit}"


def sold_pair(mm: float, reader: Reader) -> tuple[str, str]:
    """Return such a thickness in the first unit and the other: ``23/32 in``, ``18.26 mm``."""
    return sold_range_pair(mm, mm, reader)


def sold_text(mm: float, reader: Reader) -> str:
    """Return such a thickness in both units: ``17.8 mm (0.701 in)``, ``23/32 in (18.26 mm)``."""
    return both(sold_pair(mm, reader))


def sold_range_in(least: float, most: float, reader: Reader) -> str:
    """Return a range of such thicknesses in one unit: ``11/16 to 23/32 in``."""
    end = sold_in(most, reader)
    if least == most:
        return end
    return reader.says("figures-to", least=sold_number(least, reader), most=end)


def sold_range_text(least: float, most: float, reader: Reader) -> str:
    """Return a range of such thicknesses in both units: ``17.2 to 18.6 mm (0.677 to 0.732 in)``."""
    return both(sold_range_pair(least, most, reader))


def sold_number(mm: float, reader: Reader) -> str:
    """Return such a thickness in one unit without the unit: ``17.8``, ``23/32``, ``0.709``."""
    if reader.unit != "in":
        return mm_number(mm, 2, reader)
    exact = _as_sold(mm)
    return calliper_number(mm, reader) if exact is None else inch_number(float(exact) * INCH, 64)


def sold_range_pair(least: float, most: float, reader: Reader) -> tuple[str, str]:
    """Return a range in the first unit and the other; beside mm, inches are a calliper's."""
    metric = sold_range_in(least, most, reader.metric)
    if reader.unit == "in":
        return sold_range_in(least, most, reader.inches), metric
    return metric, caliper_inches(most, reader) if least == most else range_in(
        least, most, reader.inches
    )
