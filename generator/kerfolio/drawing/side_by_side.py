"""Things drawn beside each other: where each goes so that all of them fill their page."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.drawing.page_plan import RIM
from kerfolio.drawing.scene import Scene
from kerfolio.geometry.arranged import arranged
from kerfolio.geometry.facing import extent_of, spots_of
from kerfolio.geometry.rigid import Vector, added, scaled
from kerfolio.geometry.view import View

_APART = 6.0
"""How far things stand from each other on paper, mm: room for a mark between them."""


def side_by_side(things: Sequence[Scene], look: View, room: tuple[float, float]) -> list[Vector]:
    """Return how far each of some things moves, level with the picture plane, to stand alone."""
    solids = [each.solids() for each in things]
    inner = (room[0] - 2 * RIM, room[1] - 2 * RIM)
    boxes = [extent_of(each, look) for each in solids]
    rough = min(
        *(inner[0] / (right - left) for left, _, right, _ in boxes),
        *(inner[1] / (top - bottom) for _, bottom, _, top in boxes),
        1.0,
    )
    moves = arranged([spots_of(each, look) for each in solids], inner, _APART / rough)
    return [added(scaled(look.right, x), scaled(look.up, y)) for x, y in moves]
