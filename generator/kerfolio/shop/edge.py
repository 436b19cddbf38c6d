"""What the cut edge of a sheet material looks like and asks for, by its family."""

from __future__ import annotations

from kerfolio.model.stock import SheetStock

_PLY = "plies show: sand and seal them, or band what is seen"
_FIBRE = "even and without a grain, but they drink paint: seal or fill them first, coat them twice"
_EDGES = {
    "hardwood-plywood": _PLY,
    "softwood-plywood": f"{_PLY}; gaps in the core may want filling",
    "mdf": _FIBRE,
    "hardboard": _FIBRE,
    "particleboard": "open and crumbling: band them",
    "osb": "open flakes: band them, or leave them where nobody touches them",
    "hardwood": "end grain drinks finish: seal it first",
    "softwood": "end grain drinks finish: seal it first",
    "laminate": "the brown core shows: polish it, or band it",
}
"""Common practice, no single source."""


def edge_words(stock: SheetStock) -> str:
    """Return what is to be known of its edges; empty where nothing is known of its family."""
    return _EDGES.get(stock.family, "")
