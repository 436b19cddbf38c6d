"""Lengths as figures of fixed decimals, so that words keep to their places whatever they say."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.digits import fixed
from kerfolio.basis.figured import Figure, Figured, figured, joined
from kerfolio.basis.lengths import INCH
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Measure, Message, Part, Text, Words, told
from kerfolio.basis.saying import say
from kerfolio.basis.style import Rule, Style
from kerfolio.basis.thickness import sold_in

_OVERALL = {"mm": 1, "in": 2}
_EXACT = {"mm": 2, "in": 3}
_FIT = {"mm": 3, "in": 4}


def exact_in(mm: float, reader: Reader) -> Figured:
    """Return what a cutter makes: ``18.00 mm``, ``0.709 in``."""
    return Figured(_figure(mm, reader, _EXACT))


def measured_in(mm: float, reader: Reader) -> Figured:
    """Return a sheet's thickness as a calliper shows it: ``17.80 mm``, ``0.701 in``."""
    return Figured(_thickness(mm, reader))


def measured_text(mm: float, reader: Reader) -> Figured:
    """Return the same in both units: ``17.80 mm (0.701 in)``."""
    return figured("{} ({})", *(measured_in(mm, each) for each in reader.both))


def exact_text(mm: float, reader: Reader) -> Figured:
    """Return what a cutter makes in both units: ``18.00 mm (0.709 in)``."""
    return figured("{} ({})", *(exact_in(mm, each) for each in reader.both))


def overall_text(mm: float, reader: Reader) -> Figured:
    """Return a size over all in both units: ``360.0 mm (14.17 in)``."""
    return figured("{} ({})", *(Figured(_figure(mm, each, _OVERALL)) for each in reader.both))


def overall_size(
    sides: Sequence[float], ends: Sequence[Sequence[float]], reader: Reader
) -> Figured:
    """Return a size over all in both units: ``360.0 × 450.0 mm (14.17 × 17.72 in)``.

    ``ends`` are the same sides at the ends of a range: a figure that gets another sign there has a
    blank for it.
    """
    within = tuple(zip(sides, *ends, strict=True))
    sizes = (
        figured("{} {}", joined(" × ", (Figured(_side(each, to)) for each in within)), to.unit)
        for to in reader.both
    )
    return figured("{} ({})", *sizes)


def _side(within: Sequence[float], reader: Reader) -> Figure:
    values = [mm / INCH if reader.unit == "in" else mm for mm in within]
    decimals = _OVERALL[reader.unit]
    signs = {len(fixed(each, decimals)) for each in values}
    if len(signs) == 1:
        return Figure(values[0], Style(rule=Rule.FIXED, decimals=decimals, mark=reader.mark))
    style = Style(rule=Rule.PADDED, decimals=decimals, width=max(signs), mark=reader.mark)
    return Figure(values[0], style)


def exactly(text: Text, reader: Reader) -> str:
    """Return words in a plan's unit, their lengths as figures: ``17.80 mm sheet``."""
    if not isinstance(text, Words):
        return told(text, reader)
    return joined("", (_exact_part(each, reader) for each in text.parts))


def _exact_part(part: Part, reader: Reader) -> str:
    if isinstance(part, Measure) and [fact.unit for fact in part.facts] == ["mm"]:
        return Figured(_measured(part, reader))
    if isinstance(part, Message):
        values = {
            key: exactly(each, reader) if isinstance(each, Words) else each
            for key, each in part.values
        }
        return say(reader, part.name, **values)
    return told(Words((part,)), reader)


def _measured(measure: Measure, reader: Reader) -> Figure:
    mm = measure.facts[0].value
    if measure.tell is sold_in:
        return _thickness(mm, reader)
    return _figure(mm, reader, _FIT if measure.tell is fit_in else _EXACT)


def _thickness(mm: float, reader: Reader) -> Figure:
    if reader.unit == "in":
        return Figure(mm, Style(rule=Rule.CALLIPER, after=" in", mark=reader.mark))
    return _figure(mm, reader, _EXACT)


def _figure(mm: float, reader: Reader, decimals: dict[str, int]) -> Figure:
    after, places = f" {reader.unit}", decimals[reader.unit]
    style = Style(rule=Rule.FIXED, decimals=places, after=after, mark=reader.mark)
    return Figure(mm / INCH if reader.unit == "in" else mm, style)
