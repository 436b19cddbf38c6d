"""Whether what stands out of a part breaks off along its grain."""

from __future__ import annotations

from kerfolio.model.stock import SheetStock

_SOLID = ("hardwood", "softwood")
"""Families of sheets glued up of solid wood: all their fibres run one way."""

FEW_PLIES = 3
"""So few plies leave one thin ply along a tab whose face grain runs across it: in equal plies 1/27
of the section's stiffness (second moments of its plies about the middle of the sheet)."""

_WEAK = 0.5
"""A sheet less strong across its face grain than this share of its strength along it."""


def splits_across(stock: SheetStock) -> bool:
    """Tell whether what a sheet is made of splits along its grain wherever it is short."""
    if not stock.grain:
        return False
    if stock.family in _SOLID:
        return True
    if stock.strength_along and stock.strength_across:
        return stock.strength_across < _WEAK * stock.strength_along
    return stock.plies is not None and stock.plies <= FEW_PLIES


def slender(stock: SheetStock) -> float:
    """Return how far what stands out across the grain may reach, in widths of its root.

    Nothing where the sheet splits; in plywood of more plies, which run both ways, as far as it is
    wide (common practice, no single source).
    """
    return 0.0 if splits_across(stock) else 1.0
