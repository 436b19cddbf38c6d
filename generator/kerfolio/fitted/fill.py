"""Fitted files filled in at a point: ``themes/workbench/fitted.js`` does the same, to the byte.

1. Each number of the point is rounded to its decimals; what then is the drawn one, to the same
   decimals, or is left out is as drawn.
2. The first cell whose box holds the point is taken, its ends included.
3. A slot is its constant plus slope times number, added one after the other in the order of the
   numbers in IEEE 754 binary64; what there is none of counts as 0. Its style tells it, or says
   ``none`` where it has words for that and a number with a slope is none.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.digits import digits
from kerfolio.basis.style import told_as
from kerfolio.fitted.form import Cell, Fitted, FittedFile, Number, Point, Slot, Text


class PointError(ValueError):
    """Says why nothing can be filled in at a point."""


Filled = tuple[str, str]
"""A file's name and its text."""


def fill(fitted: Fitted, point: Point) -> tuple[Filled, ...]:
    """Return every file at a point. Raises PointError for one that they are not made for."""
    exact = tuple(_exact(each, point) for each in fitted.numbers)
    named = {each.name: value for each, value in zip(fitted.numbers, exact, strict=True)}
    for name in point:
        if name not in named:
            raise PointError(f"No file depends on {name}.")
    cells = (_cell(each, named) for each in fitted.files)
    return tuple((filled(each.name, exact), filled(each.text, exact)) for each in cells)


def filled(text: Text, values: Sequence[float | None]) -> str:
    """Return a text at the values of all numbers, None for what there is none of."""
    return "".join(
        each if isinstance(each, str) else told_as(value_of(each, values), each.style)
        for each in text
    )


def value_of(slot: Slot, values: Sequence[float | None]) -> float | None:
    """Return the value of a slot; None where its style has words for none and there is none."""
    value = slot.constant
    for slope, number in zip(slot.slopes, values, strict=False):
        if number is not None:
            value += slope * number
        elif slope and slot.style.none:
            return None
    return value


def _exact(number: Number, point: Point) -> float | None:
    value = point.get(number.name, number.drawn)
    if value is None:
        if number.none:
            return None
        raise PointError(f"{number.name} must be a number.")
    try:
        exact = number.exact(value)
    except ValueError:
        raise PointError(f"{number.name} must be a number.") from None
    if not number.least <= exact <= number.most:
        raise PointError(" ".join(_outside(number, exact)))
    return exact


def _outside(number: Number, value: float) -> Iterator[str]:
    least, most, told = (
        digits(each, number.decimals) for each in (number.least, number.most, value)
    )
    yield f"{number.name} may be {least} to {most} mm, not {told} mm."
    why = number.below if value < number.least else number.above
    if why:
        yield why


def _cell(file: FittedFile, point: Point) -> Cell:
    found = next((each for each in file.cells if _holds(each, point)), None)
    if found is None:
        told = ", ".join(f"{name} {_told(value)}" for name, value in point.items())
        raise PointError(f"There is no file for {told}.")
    return found


def _told(value: float | None) -> str:
    return "none" if value is None else f"{digits(value)} mm"


def _holds(cell: Cell, point: Point) -> bool:
    for name, within in cell.box:
        value = point[name]
        if within is None or value is None:
            if within is not None or value is not None:
                return False
        elif not within[0] <= value <= within[1]:
            return False
    return True
