"""Things drawn beside each other: where each goes so that all of them stand in a row."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.drawing.lettering import Box
from kerfolio.geometry.rigid import Vector, added, scaled
from kerfolio.geometry.view import View

APART = 30.0
"""How far things in a row stand from each other, mm of the world."""


def in_row(boxes: Sequence[Box], look: View, apart: float = APART, *, down: bool) -> list[Vector]:
    """Return how far things move, given their boxes in the picture plane, to stand in a row.

    They stand side by side on one line, or one ``down`` under another with their left ends level.
    """
    moves, edge = [], 0.0
    for left, bottom, right, top in boxes:
        across, up = (-left, -edge - top) if down else (edge - left, -bottom)
        moves.append(added(scaled(look.right, across), scaled(look.up, up)))
        edge += (top - bottom if down else right - left) + apart
    return moves
