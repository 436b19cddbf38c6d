"""Fitted files as records: texts whose numbers follow what a maker measured. No format is known.

A plan's files depend on *numbers* (the thickness of a sheet, the diameter of a cutter); a value for
each of them is a *point*, and all points that the files are made for their range. In a *cell*, a
box of that range, a file's text is the same but for its slots, and each slot is a linear function
of the numbers.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.basis.digits import rounded
from kerfolio.basis.style import Style

Point = Mapping[str, float | None]
"""A value in mm for each number by its name; None where there is none of it, as of a cutter."""

Within = tuple[float, float] | None
"""The least and the most of a number, mm; None where there is none of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """One of the numbers that files depend on, mm: ``thickness.ply``, ``cutter.ply``.

    It lies between ``least`` and ``most``, rounded to so many ``decimals``, or there may be
    ``none`` of it (cut by laser or by hand). ``drawn`` is what the plan is drawn for: what is that
    to the decimals is just that. ``below`` and ``above`` say in words what keeps it from being less
    or more; empty where nothing but the plan does.
    """

    name: str
    least: float
    most: float
    drawn: float | None
    decimals: int
    none: bool = False
    below: str = ""
    above: str = ""

    def exact(self, value: float) -> float:
        """Return a value as the files take it. Raises ValueError for what is no number."""
        near = rounded(value, self.decimals)
        drawn = self.drawn
        return drawn if drawn is not None and rounded(drawn, self.decimals) == near else near


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A number in a text: the constant, and one slope for each of the numbers, told in a style.

    Slopes that are left out at the end are 0.
    """

    style: Style
    constant: float
    slopes: tuple[float, ...] = ()


def trimmed(slopes: Sequence[float]) -> tuple[float, ...]:
    """Return slopes without the zeros at their end."""
    last = max((place for place, slope in enumerate(slopes) if slope), default=-1)
    return tuple(slopes[: last + 1])


Piece = str | Slot
Text = tuple[Piece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A file within a box of the range; a number that ``box`` leaves out may have any value."""

    name: Text
    text: Text
    box: tuple[tuple[str, Within], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedFile:
    """A file of a plan: the first of its cells that holds a point is filled in."""

    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """The fitted files of a plan, and the numbers they depend on in the order of all slopes."""

    numbers: tuple[Number, ...]
    files: tuple[FittedFile, ...]
