"""One piece by itself on an offcut: whether it fits, which way, and what it would take at least."""

from __future__ import annotations

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
    for turn, needed in ways_to_lie(part, sheet):
        if all(want <= have + TOLERANCE for want, have in zip(needed, size, strict=True)):
            box = _box(part, turn)
            spot = Placement(
                piece=part.pieces[0].label,
                part=part.name,
                x=rounded(sheet.margin - box.x0, COORDINATE_DECIMALS),
                y=rounded(sheet.margin - box.y0, COORDINATE_DECIMALS),
                turn=turn,
            )
            return SheetLayout(number=1, sheet=sheet.name, size=size, placements=(spot,))
    return None


def ways_to_lie(part: SettledPart, sheet: SettledSheet) -> tuple[tuple[float, SheetSize], ...]:
    """Return the turns that a part may take, each with the size, mm, that it takes with its margin.

    Quarter turns come first, the least before others.
    """
    turns = sorted(turns_of(part, sheet), key=lambda each: (each % 90 != 0, each))
    return tuple((turn, _needed(_box(part, turn), sheet)) for turn in turns)


def least_sizes(part: SettledPart, sheet: SettledSheet, step: float) -> tuple[SheetSize, ...]:
    """Return the sizes, mm, that a part takes with its margin, for each quarter turn it may take.

    They are whole steps, of ``step`` mm each, upwards.
    """
    found = (size for turn, size in ways_to_lie(part, sheet) if turn % 90 == 0)
    return tuple(dict.fromkeys((_up(along, step), _up(across, step)) for along, across in found))


def _up(mm: float, step: float) -> float:
    return ceil(mm / step - NOISE) * step


def _box(part: SettledPart, turn: float) -> Box:
    return bounds(turned(part.routed.outer, turn))


def _needed(box: Box, sheet: SettledSheet) -> SheetSize:
    return box.width + 2 * sheet.margin, box.height + 2 * sheet.margin
