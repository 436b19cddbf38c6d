"""Figures for people that are neither lengths nor masses: money, times, shares, angles, speeds.

All are rounded by the rule of ``basis/digits.py``; each kind has one rounding.
"""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from kerfolio.basis.digits import digits, fixed, steps
from kerfolio.basis.figured import Figure, Figured, figured
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.style import Rule, Style

_CENT = Decimal("0.01")
_HARDLY_ONE = 0.95
_METRES_PER_FOOT = 0.3048
_MM2_PER_IN2 = 645.16


def figure(value: float, places: int = 4, reader: Reader = METRIC) -> str:
    """Return a stated figure (a speed, a factor, a share) with at most so many decimals."""
    return reader.digits(value, places)


def whole_figure(value: float) -> str:
    """Return a figure whose decimals say nothing: mm/min, rpm, N/mm², kg/m³."""
    return digits(value, 0)


def degrees_text(angle: float) -> str:
    """Return ``12°``."""
    return f"{digits(angle, 0)}°"


def area_unit(reader: Reader) -> str:
    """Return what areas are told in beside lengths in mm or in inches."""
    return "in2" if reader.unit == "in" else "cm2"


def area_number(mm2: float, reader: Reader) -> str:
    """Return an area in mm2 in that unit, to a tenth."""
    return reader.fixed(mm2 / _MM2_PER_IN2 if reader.unit == "in" else mm2 / 100, 1)


def way_unit(reader: Reader) -> str:
    """Return what a cutter's way is told in beside lengths in mm or in inches."""
    return "feet" if reader.unit == "in" else "metres"


def way_words(reader: Reader) -> str:
    """Return that in words."""
    return reader.says(f"figures-{way_unit(reader)}")


def way_number(metres: float, reader: Reader) -> str:
    """Return a way of the cutter for a table, in metres or in feet: ``23.4``, ``76.8``."""
    return reader.fixed(in_way_unit(metres, reader), 1)


def in_way_unit(metres: float, reader: Reader) -> float:
    """Return a way of the cutter in metres, or in feet beside lengths in inches."""
    return metres / _METRES_PER_FOOT if reader.unit == "in" else metres


def minutes_text(minutes: float, reader: Reader = METRIC) -> str:
    """Return ``25 minutes`` or ``1 h 20 min``; never less than a minute."""
    whole = max(1, steps(minutes, 0))
    if whole < 60:
        return reader.says("figures-minutes", minutes=whole)
    hours, rest = divmod(whole, 60)
    return reader.says("figures-hours", hours=hours, minutes=rest)


def minutes_short(minutes: float, reader: Reader = METRIC) -> str:
    """Return a time for a table: ``7 min``, ``under 1 min``."""
    least = minutes < _HARDLY_ONE
    return reader.says("figures-minutes-short", minutes=0 if least else steps(minutes, 0))


def summed(value: float) -> str:
    """Return a figure for a list whose rows are added up, to a thousandth: kg, metres, minutes.

    Rows rounded for reading would not add up to the total beside them.
    """
    return fixed(value, 3)


def money_number(amount: Decimal, reader: Reader = METRIC) -> str:
    """Return money to the cent, without its currency: ``92.50``."""
    return reader.number(str(amount.quantize(_CENT, ROUND_HALF_UP)))


def money_text(amount: Decimal, currency: str, reader: Reader = METRIC) -> str:
    """Return ``92.50 EUR``."""
    return f"{money_number(amount, reader)} {currency}"


def bytes_text(size: int, reader: Reader = METRIC) -> str:
    """Return a file's size as people read it: ``640 kB``, ``3.2 MB`` (1 kB = 1000 bytes)."""
    if size < 1000:
        return reader.says("figures-bytes", bytes=size)
    if size < 1_000_000:
        return f"{reader.digits(size / 1000, 0)} kB"
    return f"{reader.fixed(size / 1_000_000, 1)} MB"


def run_text(mm: float, reader: Reader) -> str:
    """Return how long paths are together: ``8.42 m``, ``27.6 ft``."""
    return str(run_figure(mm, reader))


def run_figure(mm: float, reader: Reader) -> Figured:
    """Return the same as a figure."""
    value, decimals, unit = (mm / 1000, 2, " m") if reader.unit == "mm" else (mm / 304.8, 1, " ft")
    style = Style(rule=Rule.FIXED, decimals=decimals, after=unit, mark=reader.mark)
    return Figured(Figure(value, style))


def cleared_figure(mm2: float, reader: Reader) -> Figured:
    """Return an area that is cleared as a figure."""
    value, unit = (mm2 / _MM2_PER_IN2, "in²") if reader.unit == "in" else (mm2 / 100, "cm²")
    style = Style(rule=Rule.FIXED, decimals=1, mark=reader.mark)
    return figured("{} {}", Figure(value, style), unit)


def cleared_text(mm2: float, reader: Reader) -> str:
    """Return an area that is cleared: ``12.6 cm²``, ``2.0 in²``."""
    return f"{area_number(mm2, reader)} {'in' if reader.unit == 'in' else 'cm'}²"
