"""A plan put together: every piece in its place, and the joints as they stand in space."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid, Vector
from kerfolio.model.joint_kind import JointKind
from kerfolio.settling.settled import FitVariant


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedPiece:
    """A piece in its place. World axes: x to the right, y to the back, z up; mm.

    Pieces of one part share one ``panel`` object. ``mass`` in kg.
    """

    label: str
    mark: str
    part: str
    sheet: str
    panel: Panel
    pose: Rigid
    mass: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedJoint:
    """A joint between two pieces as it stands.

    ``frame`` in the world: origin in the middle of the contact, z the direction in which piece
    ``a`` goes into, over or on to piece ``b`` (unit). ``ends`` are the two features as written
    (``rail.left-tabs.1``). ``size`` is (along the joint, across it), mm: what an inset must show.
    """

    kind: JointKind
    a: str
    b: str
    ends: tuple[str, str]
    frame: Rigid
    size: tuple[float, float]
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembled:
    """A plan put together at one fit variant."""

    variant: FitVariant
    pieces: tuple[PosedPiece, ...]
    joints: tuple[PosedJoint, ...]

    def piece(self, label: str) -> PosedPiece:
        """Return the piece of that label; KeyError when it has no place."""
        for each in self.pieces:
            if each.label == label:
                return each
        raise KeyError(label)


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """Pieces that go home together along a straight line.

    ``direction`` (unit, world) is the way they move; ``travel`` mm is how far they must be drawn
    out against it to stand clear of what stands. ``turn`` counts the moves of a step that come one
    after another, from 1; 0 where it does not matter or nothing tells.
    """

    pieces: tuple[str, ...]
    direction: Vector
    travel: float
    turn: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildStep:
    """One step of putting together: ``number`` counts from 1 as the plan's steps do.

    ``added`` are the pieces that are new in it, ``standing`` those in place before it. Each of
    ``moves`` brings some of the new ones home, in order; the first pieces of all are just set
    down and are in no move. A move may carry earlier pieces along (a sub-assembly).
    """

    number: int
    standing: tuple[str, ...]
    added: tuple[str, ...]
    moves: tuple[Move, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildOrder:
    """All steps that add pieces; ``found`` when the program chose the order itself."""

    steps: tuple[BuildStep, ...]
    found: bool = False
