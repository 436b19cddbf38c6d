"""Lengths that follow sheets: so many mm, and so many times the thickness of each sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from kerfolio.basis.digits import digits
from kerfolio.basis.lengths import INCH

_EXACT = 0.004
"""A number is written rounder where that is so near, mm."""

_STEPS = (1.0, 0.5, 0.1, 0.05, 0.01)


@dataclass(frozen=True, slots=True, kw_only=True)
class Linear:
    """A length, mm: as drawn, and how often it grows by what each sheet grows.

    ``per`` has halves at least; sheets that it does not follow have none.
    """

    drawn: float
    per: Mapping[str, Fraction] = field(default_factory=dict)

    def text(self, unit: str, sheets: Mapping[str, tuple[str, float]]) -> str:
        """Return it as a plan states it; ``sheets`` tell each one's size name and mm as drawn."""
        rest = self.drawn - sum(float(k) * sheets[s][1] for s, k in self.per.items())
        terms = [(k, sheets[s][0]) for s, k in sorted(self.per.items()) if k]
        number = number_text(rest, unit)
        if not terms:
            return number
        words = "" if number in ("0", "-0") else number
        if "-" in words[1:]:  # `2-1/2` alone is a length, in a sum it would be 3/2
            words += " in"
        for k, name in terms:
            size = abs(k)
            times = (
                name if size == 1 else f"{name}/2" if size == Fraction(1, 2) else _times(size, name)
            )
            if not words:
                words = times if k > 0 else f"-{times}"
            else:
                words += f" {'+' if k > 0 else '-'} {times}"
        return words


def _times(size: Fraction, name: str) -> str:
    if size == 1:
        return name
    if size == Fraction(1, 2):
        return f"{name}/2"
    whole = size.numerator if size.denominator == 1 else digits(float(size), 4)
    return f"{whole}*{name}"


def number_text(mm: float, unit: str) -> str:
    """Return a length as a plan in that unit states it, as round as it is drawn."""
    if unit == "in":
        return _inches(mm / float(INCH))
    for step in _STEPS:
        near = round(mm / step) * step
        if abs(near - mm) <= _EXACT:
            return _plain(near)
    return _plain(mm)


def _inches(inches: float) -> str:
    near = round(inches * 64) / 64
    if abs(near - inches) * float(INCH) > _EXACT:
        return digits(inches, 4)
    whole, part = divmod(Fraction(round(abs(near) * 64), 64), 1)
    sign = "-" if near < 0 else ""
    if not part:
        return f"{sign}{int(whole)}"
    fraction = f"{part.numerator}/{part.denominator}"
    return f"{sign}{int(whole)}-{fraction}" if whole else f"{sign}{fraction}"


def _plain(mm: float) -> str:
    return digits(mm, 3)
