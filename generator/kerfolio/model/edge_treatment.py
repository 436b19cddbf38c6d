"""What is done to the edges of a part after it is cut, as stated."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.feature import EdgeLine
from kerfolio.model.statement import Amount, Named


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeKind:
    """A kind of treatment; one is told from another by identity.

    ``name`` is its word in a plan, ``letter`` stands for it in drawings (marks of parts are
    capitals), ``says`` what is done.
    """

    name: str
    letter: str
    says: str

    def __str__(self) -> str:
        return self.name


SQUARE = EdgeKind(name="square", letter="s", says="left square, as cut")
EASE = EdgeKind(name="ease", letter="e", says="eased: fine paper takes the sharpness off")
ROUND_OVER = EdgeKind(name="round-over", letter="r", says="rounded over")
BAND = EdgeKind(name="band", letter="b", says="banded")
MASK = EdgeKind(name="mask", letter="m", says="masked: left square, no finish on it")
EDGE_KINDS = (SQUARE, EASE, ROUND_OVER, BAND, MASK)
"""Every kind, in the order in which keys of drawings and lists have them."""

BOTH_FACES, SHOW_FACE, BACK_FACE = "both", "show", "back"
FACES = (BOTH_FACES, SHOW_FACE, BACK_FACE)
"""The faces at which an edge may be rounded over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeTreatment:
    """A treatment: of a rounding its ``radius`` and ``faces``, of a banding what it is ``of``.

    ``thickness`` is the banding's, None where the plan does not say.
    """

    kind: EdgeKind
    radius: Amount | None = None
    faces: str = BOTH_FACES
    of: str = ""
    thickness: Amount | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class TreatedEdge:
    """An edge, or the rim of an ``opening``, with what is done to it; neither: all other edges."""

    treatment: EdgeTreatment
    line: EdgeLine | None = None
    opening: Named | None = None
    place: Place = NOWHERE
