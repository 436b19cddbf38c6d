"""Sizes of sheets and lengths of boards, which are sold by the inch or by the millimetre."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from kerfolio.basis.digits import steps
from kerfolio.basis.lengths import (
    INCH,
    both,
    both_text,
    in_order,
    inch_number,
    mm_number,
    side_number,
    size_numbers,
)
from kerfolio.basis.reader import Reader

_SHEET = 2
"""Parts of an inch to which a sheet is told that is sold by the millimetre."""

_WHOLE = 0.01
"""mm by which a size may be off that is whole in its unit."""


def sheet_numbers(sides: Sequence[float], reader: Reader) -> tuple[str, str]:
    """Return a sheet's size without units, in the first unit and in the other.

    A sheet of 2440 x 1220 mm is sold by no inch, so that its inches are ``about 96 × 48``.
    """
    if _sold_to(sides, reader).unit == "in":
        return size_numbers(sides, reader)
    inch = " × ".join(inch_number(each, _SHEET) for each in sides)
    metric = " × ".join(mm_number(each, reader=reader) for each in sides)
    return in_order(metric, reader.says("figures-about", figure=inch), reader)


def sheet_pair(sides: Sequence[float], reader: Reader) -> tuple[str, str]:
    """Return a sheet's size in the first unit and the other: ``2440 × 1220 mm``."""
    one, other = sheet_numbers(sides, reader)
    unit, other_unit = in_order("mm", "in", reader)
    return f"{one} {unit}", f"{other} {other_unit}"


def sheet_text(sides: Sequence[float], reader: Reader) -> str:
    """Return a sheet's size on one line: ``96 × 48 in (2438.4 × 1219.2 mm)``."""
    return both(sheet_pair(sides, reader))


def sheet_sides(sides: Sequence[float], reader: Reader) -> tuple[str, ...]:
    """Return each side of a sheet by itself: ``2440 mm (about 96 in)``, ``96 in (2438.4 mm)``."""
    if _sold_to(sides, reader).unit == "in":
        return tuple(both_text(each, reader) for each in sides)
    return tuple(sheet_text((each,), reader) for each in sides)


def sizes_as_sold(sizes: Sequence[Sequence[float]], reader: Reader) -> str:
    """Return sizes in the unit each is sold in: ``96 × 48, 120 × 48 in``, ``2440 × 1220 mm``."""
    runs = groupby(sizes, key=lambda sides: _sold_to(sides, reader))
    return ", ".join(_listed(list(members), each) for each, members in runs)


def _listed(sizes: Sequence[Sequence[float]], reader: Reader) -> str:
    listed = ", ".join(" × ".join(side_number(each, reader) for each in sides) for sides in sizes)
    return f"{listed} {reader.unit}"


def _sold_to(sides: Sequence[float], reader: Reader) -> Reader:
    """Return the reader told in what a size is whole in, to 1/8 in or 1 mm, as is if both."""
    inch, metric = (
        all(abs(side - steps(side / step, 0) * step) < _WHOLE for side in sides)
        for step in (INCH / 8, 1.0)
    )
    if inch == metric:
        return reader
    return reader.inches if inch else reader.metric
