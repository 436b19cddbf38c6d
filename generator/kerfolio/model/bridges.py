"""What holds a piece in its sheet until it is freed, as stated."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Amount, Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class Bridges:
    """Bridges of each piece: ``count``, or as many as its size asks for (None), or places ``at``.

    A bridge is left standing for ``width`` along the edge and for ``height`` above the lower face.
    """

    count: int | None = None
    at: tuple[Spot, ...] = ()
    width: Amount | None = None
    height: Amount | None = None
    place: Place = NOWHERE
