"""One piece by itself on an offcut: whether it fits, which way, and what it would take at least."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from kerfolio.basis.digits import rounded
from kerfolio.basis.tolerance import NOISE
from kerfolio.geometry.measure import Box, bounds
from kerfolio.geometry.transform import turned
from kerfolio.layouts.layout import COORDINATE_DECIMALS, Placement, SheetLayout
from kerfolio.layouts.turns import turns_of
from kerfolio.layouts.verify import TOLERANCE
from kerfolio.settling.settled import SettledPart, SettledSheet, SheetSize


def laid_alone(part: SettledPart, sheet: SettledSheet, size: SheetSize) -> SheetLayout | None:
    """Return a sheet of a size with a part's first piece in its lower left; None where too small.

    The piece is turned no more than it has to be, and as its grain lets it; the margin of its sheet
    is kept clear all round.
    """
    for turn, box in _ways(part, sheet):
        needed = _needed(box, sheet)
        if all(want <= have + TOLERANCE for want, have in zip(needed, size, strict=True)):
            spot = Placement(
                piece=part.pieces[0].label,
                part=part.name,
                x=rounded(sheet.margin - box.x0, COORDINATE_DECIMALS),
                y=rounded(sheet.margin - box.y0, COORDINATE_DECIMALS),
                turn=turn,
            )
            return SheetLayout(number=1, sheet=sheet.name, size=size, placements=(spot,))
    return None


def least_sizes(part: SettledPart, sheet: SettledSheet, step: float) -> tuple[SheetSize, ...]:
    """Return the sizes, mm, that a part takes with its margin, for each quarter turn it may lie in.

    They are whole steps, of ``step`` mm each, upwards.
    """
    found = (_needed(box, sheet) for turn, box in _ways(part, sheet) if turn % 90 == 0)
    return tuple(dict.fromkeys((_up(along, step), _up(across, step)) for along, across in found))


def _up(mm: float, step: float) -> float:
    return ceil(mm / step - NOISE) * step


def _ways(part: SettledPart, sheet: SettledSheet) -> Iterator[tuple[float, Box]]:
    """Yield the turns a part may take, those by quarters first, with its box."""
    for turn in sorted(turns_of(part, sheet), key=lambda each: (each % 90 != 0, each)):
        yield turn, bounds(turned(part.routed.outer, turn))


def _needed(box: Box, sheet: SettledSheet) -> SheetSize:
    return box.width + 2 * sheet.margin, box.height + 2 * sheet.margin
