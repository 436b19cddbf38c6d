"""Spans as stated: what a part carries, between which supports, and how far it may sag."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Amount, Named


@dataclass(frozen=True, slots=True, kw_only=True)
class Support:
    """Where a span ends: at an ``edge`` of the part as cut, tabs included, or ``at`` a distance."""

    edge: str = ""
    at: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class SpanLoad:
    """A load in kg, or in kg a metre of span where ``per_metre``.

    ``where`` it lies: ``even`` (spread evenly), ``middle``, or ``end`` (of an overhang).
    """

    kg: float
    per_metre: bool = False
    where: str = "even"
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class SagLimit:
    """How far a span may sag: its length over ``share`` (``span/300``), or a ``length``."""

    share: float | None = None
    length: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Under:
    """Parts under a panel along its span; ``joined`` (``loose`` or ``glued``) to what is over them.

    ``lies`` is ``edge`` (a web: it stands upright, its lower edge the bottom as drawn) or ``flat``
    (a flange). The part's length lies along its x.
    """

    part: Named
    count: int = 1
    lies: str = "edge"
    joined: str = "loose"
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A span the maker wants reckoned: of a ``part``, or of a ``board`` of the plan.

    ``kind`` is ``shelf`` (lies flat on two supports), ``rail`` (stands on edge on two supports),
    ``overhang`` (lies flat, held at the first support, hangs out to the second) or ``leg`` (pressed
    lengthwise). ``supports`` are two places along ``along`` (x or y of the part); empty: its ends.
    ``safety`` divides the strength; ``lasting`` says that the load stays. ``under`` are the members
    below it, from the top down. ``held`` is ``lying`` (nothing holds it down) or ``fixed``; empty:
    an overhang lies, all else is fixed.
    """

    name: str
    load: SpanLoad
    part: Named | None = None
    board: Named | None = None
    kind: str = "shelf"
    supports: tuple[Support, ...] = ()
    along: str = ""
    limit: SagLimit = SagLimit(share=300.0)
    safety: float = 3.0
    lasting: bool = True
    under: tuple[Under, ...] = ()
    held: str = ""
    place: Place = NOWHERE

    @property
    def axis(self) -> str:
        """``x`` or ``y``: stated, told by an edge that is named, else y for a part that is a leg.

        A board's length is its x.
        """
        edges = {support.edge for support in self.supports} - {""}
        if self.along or not edges:
            return self.along or ("y" if self.kind == "leg" and self.board is None else "x")
        return "x" if edges & {"left", "right"} else "y"
