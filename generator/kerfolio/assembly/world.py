"""The pieces of a plan put together, as panels made ready for questions in space."""

from __future__ import annotations

from kerfolio.assembly.assembled import Assembled
from kerfolio.geometry.panel_solid import PanelSolid, Posed, solid_of


def posed_panels(assembled: Assembled) -> tuple[Posed, ...]:
    """Return every piece's panel in its place, in the order of the pieces.

    Pieces that share a panel object share what is worked out for it.
    """
    solids: dict[int, PanelSolid] = {}
    for piece in assembled.pieces:
        if id(piece.panel) not in solids:
            solids[id(piece.panel)] = solid_of(piece.panel)
    return tuple(Posed(solids[id(piece.panel)], piece.pose) for piece in assembled.pieces)
