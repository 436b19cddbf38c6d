"""What a length that cannot be was perhaps meant to be."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.said import ByUnit, Part, Text, said

_INCH = float(MM_PER_UNIT["in"])
_FACTORS = (0.1, 10.0, 0.01, 100.0)
_Meant = tuple[float, Callable[[], Part]]
"""A length in mm, and how it is told."""


def meant_length(mm: float, least: float, most: float, *, inches: bool = False) -> Text:
    """Return the length between two, in mm, that a slip turns into ``mm``; empty where none does.

    A point in the wrong place or left out, told in the plan's unit, or the other unit. ``inches``
    looks for the unit first: for a number taken for one of inches that was meant in mm.
    """
    points: list[_Meant] = [(mm * by, partial(_in_either, mm * by)) for by in _FACTORS]
    units: list[_Meant] = [
        (mm / _INCH, lambda: f"{digits(mm / _INCH)} mm"),
        (mm * _INCH, lambda: f"{digits(mm)} in"),
    ]
    found = [*units, *points] if inches else [*points, *units]
    # Only what can be meant is told: numbers far beyond have no digits to be told in.
    return next((said("{}", tell()) for length, tell in found if least <= length <= most), "")


def _in_either(mm: float) -> ByUnit:
    return ByUnit(f"{digits(mm)} mm", f"{digits(mm / _INCH)} in")


def slip_advice(meant: Text, otherwise: Text) -> Text:
    """Return the question whether a length was meant, or other advice where none is likely."""
    return said("Did you mean `{}`?", meant) if meant else otherwise
