"""What a length that cannot be was perhaps meant to be."""

from __future__ import annotations

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.said import ByUnit, Part, Text, said

_INCH = float(MM_PER_UNIT["in"])
_FACTORS = (0.1, 10.0, 0.01, 100.0)


def meant_length(mm: float, least: float, most: float, *, inches: bool = False) -> Text:
    """Return the length between two, in mm, that a slip turns into ``mm``; empty where none does.

    A point in the wrong place or left out, told in the plan's unit, or the other unit. ``inches``
    looks for the unit first: for a number taken for one of inches that was meant in mm.
    """
    points: list[tuple[float, Part]] = [(mm * by, _in_either(mm * by)) for by in _FACTORS]
    units = [(mm / _INCH, f"{digits(mm / _INCH)} mm"), (mm * _INCH, f"{digits(mm)} in")]
    found = [*units, *points] if inches else [*points, *units]
    return next((said("{}", text) for length, text in found if least <= length <= most), "")


def _in_either(mm: float) -> ByUnit:
    return ByUnit(f"{digits(mm)} mm", f"{digits(mm / _INCH)} in")


def slip_advice(meant: Text, otherwise: Text) -> Text:
    """Return the question whether a length was meant, or other advice where none is likely."""
    return said("Did you mean `{}`?", meant) if meant else otherwise
