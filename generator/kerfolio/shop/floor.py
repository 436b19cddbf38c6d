"""How much wood is to stay below what is cut to a depth."""

from __future__ import annotations

from kerfolio.model.stock import SheetStock

PLIES = 2
"""A single ply splits along its grain; a second one under it lies across (common practice, no
single source)."""

LEAST = 3.0
"""mm of a board without plies, or whose plies are not known (common practice, no single source)."""

UNDER_HEAD = 1 / 3
"""Of the sheet, below a counterbore: its bolt pulls the head through what is left (common practice,
no single source)."""


_SKIN = 1.5
"""mm of a board without plies that hold no head, about a ply of birch plywood (common practice)."""


def skin(stock: SheetStock, thickness: float) -> float:
    """Return how thick one ply of a sheet of a thickness is, mm, or what counts as one."""
    return thickness / stock.plies if stock.plies else _SKIN


def least_floor(stock: SheetStock, thickness: float) -> float:
    """Return the least floor of a recess in a sheet of a thickness, mm: never over half of it."""
    wanted = PLIES * thickness / stock.plies if stock.plies else LEAST
    return min(wanted, thickness / 2)


def least_under_head(thickness: float) -> float:
    """Return the least that stays below a counterbore in a sheet of a thickness, mm."""
    return UNDER_HEAD * thickness
