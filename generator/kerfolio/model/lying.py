"""How the work lies while a step is done, as a maker states it."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Named

FACE_DOWN, FACE_UP = "face down", "face up"
OUTER, INNER = "on its outer face", "on its inner face"
LEFT, RIGHT, FRONT, BACK = "on its left", "on its right", "on its front", "on its back"
OVER = "upside down"
LIES = (FACE_DOWN, FACE_UP, OUTER, INNER, LEFT, RIGHT, FRONT, BACK, OVER)
"""How a piece may lie: by its show face; by which of its faces looks out of the finished whole; by
the side of the finished whole that it lies on, with all that is joined to it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """That a piece lies some ``way`` (a word of ``LIES``), and so all that joins it."""

    piece: Named
    way: str
    place: Place = NOWHERE
