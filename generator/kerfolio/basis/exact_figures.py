"""Lengths as figures of fixed decimals, so that words keep to their places whatever they say."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.digits import fixed
from kerfolio.basis.figured import Figure, Figured, figured, joined
from kerfolio.basis.lengths import INCH, in_order
from kerfolio.basis.said import Measure, Text, Words, told
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import sold_in

_OVERALL = {"mm": 1, "in": 2}
_EXACT = {"mm": 2, "in": 3}
_FIT = {"mm": 3, "in": 4}


def exact_in(mm: float, unit: str) -> Figured:
    """Return what a cutter makes: ``18.00 mm``, ``0.709 in``."""
    return Figured(_figure(mm, unit, _EXACT))


def measured_in(mm: float, unit: str) -> Figured:
    """Return a sheet's thickness as a calliper shows it: ``17.80 mm``, ``0.701 in``."""
    return Figured(_thickness(mm, unit))


def measured_text(mm: float, first: str) -> Figured:
    """Return the same in both units: ``17.80 mm (0.701 in)``."""
    return figured("{} ({})", *in_order(measured_in(mm, "mm"), measured_in(mm, "in"), first))


def exact_text(mm: float, first: str) -> Figured:
    """Return what a cutter makes in both units: ``18.00 mm (0.709 in)``."""
    return figured("{} ({})", *in_order(exact_in(mm, "mm"), exact_in(mm, "in"), first))


def overall_text(mm: float, first: str) -> Figured:
    """Return a size over all in both units: ``360.0 mm (14.17 in)``."""
    metric, inch = (Figured(_figure(mm, unit, _OVERALL)) for unit in ("mm", "in"))
    return figured("{} ({})", *in_order(metric, inch, first))


def overall_size(sides: Sequence[float], ends: Sequence[Sequence[float]], first: str) -> Figured:
    """Return a size over all in both units: ``360.0 × 450.0 mm (14.17 × 17.72 in)``.

    ``ends`` are the same sides at the ends of a range: a figure that gets another sign there has a
    blank for it.
    """
    within = tuple(zip(sides, *ends, strict=True))
    metric, inch = (
        figured("{} {}", joined(" × ", (Figured(_side(each, unit)) for each in within)), unit)
        for unit in ("mm", "in")
    )
    return figured("{} ({})", *in_order(metric, inch, first))


def _side(within: Sequence[float], unit: str) -> Figure:
    values = [mm / INCH if unit == "in" else mm for mm in within]
    decimals = _OVERALL[unit]
    signs = {len(fixed(each, decimals)) for each in values}
    if len(signs) == 1:
        return Figure(values[0], Style(rule=Rule.FIXED, decimals=decimals))
    return Figure(values[0], Style(rule=Rule.PADDED, decimals=decimals, width=max(signs)))


def exactly(text: Text, unit: str) -> str:
    """Return words in a plan's unit, their lengths as figures: ``17.80 mm sheet``."""
    if not isinstance(text, Words):
        return told(text, unit)
    return Figured(
        *(
            _measured(each, unit)
            if isinstance(each, Measure) and [fact.unit for fact in each.facts] == ["mm"]
            else told(Words((each,)), unit)
            for each in text.parts
        )
    )


def _measured(measure: Measure, unit: str) -> Figure:
    mm = measure.facts[0].value
    if measure.tell is sold_in:
        return _thickness(mm, unit)
    return _figure(mm, unit, _FIT if measure.tell is fit_in else _EXACT)


def _thickness(mm: float, unit: str) -> Figure:
    if unit == "in":
        return Figure(mm, Style(rule=Rule.CALLIPER, after=" in"))
    return _figure(mm, unit, _EXACT)


def _figure(mm: float, unit: str, decimals: dict[str, int]) -> Figure:
    style = Style(rule=Rule.FIXED, decimals=decimals[unit], after=f" {unit}")
    return Figure(mm / INCH if unit == "in" else mm, style)
