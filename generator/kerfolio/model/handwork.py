"""Work done by hand in a step, besides boring: marking, sanding, glueing, clamping."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Amount, Named


@dataclass(frozen=True, slots=True, kw_only=True)
class PencilLine:
    """A line across a piece or a part, ``at`` from one of its ``sides`` and along that."""

    on: Named
    sides: tuple[str, ...]
    at: Amount
    place: Place = NOWHERE


Marked = Named | PencilLine
"""What is marked: a feature by its middle, or a line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Handwork:
    """Work on what ``of`` names: pieces or parts, their sides, faces and features, or joints.

    Of clamps, an empty ``of`` means what the step glues; ``count`` is how many they are and
    ``minutes`` how long they stay on. ``grit`` is the paper's. ``note`` are the maker's own words.
    """

    of: tuple[Named, ...] = ()
    grit: int | None = None
    count: int | None = None
    minutes: float | None = None
    note: str = ""
    place: Place = NOWHERE
