"""What the cut edge of a sheet material looks like and asks for, by its family."""

from __future__ import annotations

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.model.stock import SheetStock

_EDGES = {
    "hardwood-plywood": "ply",
    "softwood-plywood": "soft-ply",
    "mdf": "fibre",
    "hardboard": "fibre",
    "particleboard": "particle",
    "osb": "flakes",
    "hardwood": "end-grain",
    "softwood": "end-grain",
    "laminate": "core",
}
"""Common practice, no single source."""


def edge_words(stock: SheetStock, reader: Reader) -> str:
    """Return what is to be known of its edges; empty where nothing is known of its family."""
    kind = _EDGES.get(stock.family, "")
    return say(reader, f"sheetedges-{kind}") if kind else ""
