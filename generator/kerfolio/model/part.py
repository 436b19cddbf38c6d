"""Parts as stated."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.bridges import Bridges
from kerfolio.model.edge_treatment import TreatedEdge
from kerfolio.model.feature import Feature
from kerfolio.model.outline import Drawn, Outline
from kerfolio.model.statement import Named, Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A feature that cannot be read, and what is known of where it is: spots, or a side."""

    name: str
    spots: tuple[Spot, ...] = ()
    side: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A shape cut from a sheet, once for each of its pieces.

    ``pieces`` are the names of its pieces (``left``, ``right``; ``1`` ... ``4`` for a count);
    empty for a part of a single, unnamed piece. ``grain`` is ``along x``, ``along y``, ``any`` for
    a part that quarter turns leave as good, or ``free`` for one that may lie at any slant.
    ``bridges`` are its own, where they are not those of its sheet's cut setting. ``edges`` are
    those that something is done to. ``title`` is what readers know it by, empty where its name
    says that. ``left_out`` are features that cannot be read, or follow one that cannot be.
    """

    name: str
    title: str = ""
    sheet: Named
    shape: Outline | Drawn
    pieces: tuple[str, ...] = ()
    grain: str = "any"
    features: tuple[Feature, ...] = ()
    bridges: Bridges | None = None
    edges: tuple[TreatedEdge, ...] = ()
    note: str = ""
    left_out: tuple[LeftOut, ...] = ()
    place: Place = NOWHERE

    @property
    def labels(self) -> tuple[str, ...]:
        """The labels of its pieces: ``side.left``, or its own name where they have none."""
        return tuple(f"{self.name}.{piece}" for piece in self.pieces) or (self.name,)
