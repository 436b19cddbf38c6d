"""Figures for people that are neither lengths nor masses: money, times, shares, angles, speeds.

All are rounded by the rule of ``basis/digits.py``; each kind has one rounding.
"""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from kerfolio.basis.digits import digits, fixed, steps
from kerfolio.basis.figured import Figure, Figured, figured
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.words import counted

_CENT = Decimal("0.01")
_HARDLY_ONE = 0.95
_METRES_PER_FOOT = 0.3048
_MM2_PER_IN2 = 645.16


def figure(value: float, places: int = 4) -> str:
    """Return a stated figure (a speed, a factor, a share) with at most so many decimals."""
    return digits(value, places)


def whole_figure(value: float) -> str:
    """Return a figure whose decimals say nothing: mm/min, rpm, N/mm², kg/m³."""
    return digits(value, 0)


def percent_text(share: float) -> str:
    """Return ``40 %``."""
    return f"{digits(100 * share, 0)} %"


def degrees_text(angle: float) -> str:
    """Return ``12°``."""
    return f"{digits(angle, 0)}°"


def area_unit(reader: Reader) -> str:
    """Return what areas are told in beside lengths in mm or in inches."""
    return "in2" if reader.unit == "in" else "cm2"


def area_number(mm2: float, reader: Reader) -> str:
    """Return an area in mm2 in that unit, to a tenth."""
    return fixed(mm2 / _MM2_PER_IN2 if reader.unit == "in" else mm2 / 100, 1)


def way_unit(reader: Reader) -> str:
    """Return what a cutter's way is told in beside lengths in mm or in inches."""
    return "feet" if reader.unit == "in" else "metres"


def way_number(metres: float, reader: Reader) -> str:
    """Return a way of the cutter for a table, in metres or in feet: ``23.4``, ``76.8``."""
    return fixed(in_way_unit(metres, reader), 1)


def in_way_unit(metres: float, reader: Reader) -> float:
    """Return a way of the cutter in metres, or in feet beside lengths in inches."""
    return metres / _METRES_PER_FOOT if reader.unit == "in" else metres


def minutes_text(minutes: float) -> str:
    """Return ``25 minutes`` or ``1 h 20 min``; never less than a minute."""
    whole = max(1, steps(minutes, 0))
    if whole < 60:
        return counted(whole, "minute")
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def minutes_short(minutes: float) -> str:
    """Return a time for a table: ``7 min``, ``under 1 min``."""
    return "under 1 min" if minutes < _HARDLY_ONE else f"{digits(minutes, 0)} min"


def summed(value: float) -> str:
    """Return a figure for a list whose rows are added up, to a thousandth: kg, metres, minutes.

    Rows rounded for reading would not add up to the total beside them.
    """
    return fixed(value, 3)


def money_number(amount: Decimal, reader: Reader = METRIC) -> str:
    """Return money to the cent, without its currency: ``92.50``."""
    return reader.number(str(amount.quantize(_CENT, ROUND_HALF_UP)))


def money_text(amount: Decimal, currency: str) -> str:
    """Return ``92.50 EUR``."""
    return f"{money_number(amount)} {currency}"


def bytes_text(size: int) -> str:
    """Return a file's size as people read it: ``640 kB``, ``3.2 MB`` (1 kB = 1000 bytes)."""
    if size < 1000:
        return counted(size, "byte")
    if size < 1_000_000:
        return f"{digits(size / 1000, 0)} kB"
    return f"{fixed(size / 1_000_000, 1)} MB"


def run_text(mm: float, reader: Reader) -> str:
    """Return how long paths are together: ``8.42 m``, ``27.6 ft``."""
    return f"{fixed(mm / 1000, 2)} m" if reader.unit == "mm" else f"{fixed(mm / 304.8, 1)} ft"


def run_figure(mm: float, reader: Reader) -> Figured:
    """Return the same as a figure."""
    value, decimals, unit = (mm / 1000, 2, " m") if reader.unit == "mm" else (mm / 304.8, 1, " ft")
    return Figured(Figure(value, Style(rule=Rule.FIXED, decimals=decimals, after=unit)))


def cleared_figure(mm2: float, reader: Reader) -> Figured:
    """Return an area that is cleared as a figure."""
    value, unit = (mm2 / _MM2_PER_IN2, "in²") if reader.unit == "in" else (mm2 / 100, "cm²")
    return figured("{} {}", Figure(value, Style(rule=Rule.FIXED, decimals=1)), unit)


def cleared_text(mm2: float, reader: Reader) -> str:
    """Return an area that is cleared: ``12.6 cm²``, ``2.0 in²``."""
    return f"{area_number(mm2, reader)} {'in' if reader.unit == 'in' else 'cm'}²"
