"""What one picture of a plan shows: pieces in their places, some moved away from home."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import (
    Assembled,
    BuildOrder,
    BuildStep,
    PosedJoint,
    PosedPiece,
)
from kerfolio.assembly.explode import apart
from kerfolio.assembly.extent import corners
from kerfolio.geometry.facing import Posed, PosedPanel, Solids, solids_of
from kerfolio.geometry.rigid import Vector, added, between, dot, length, scaled

HOME: Vector = (0.0, 0.0, 0.0)
_STILL = 1e-6
_STRAIGHT = 0.996
"""Cosine of 5 degrees."""


@dataclass(frozen=True, slots=True)
class Scene:
    """Pieces of a plan as shown: ``away`` says how far each is moved from home, mm.

    ``new`` are the labels of the pieces that are coloured. ``fittings`` are the hardware as shown.
    """

    assembled: Assembled
    pieces: tuple[PosedPiece, ...]
    away: Mapping[str, Vector]
    new: frozenset[str]
    fittings: tuple[ShownFitting, ...] = ()

    def solids(self) -> Solids:
        """Return the pieces as solids, in order, and after them the hardware."""
        return solids_of(
            [*(self.posed(each) for each in self.pieces), *(each.posed for each in self.fittings)]
        )

    def posed(self, piece: PosedPiece) -> PosedPanel:
        """Return a piece as a posed panel."""
        return PosedPanel(piece.panel, piece.pose.moved(self.away[piece.label]))

    def nearer(self, share: float) -> Scene:
        """Return the scene with its pieces as far from home as a share of what they are."""
        return replace(self, away={label: scaled(far, share) for label, far in self.away.items()})

    @property
    def coloured(self) -> tuple[int, ...]:
        """The places of what is new among the solids."""
        count = len(self.pieces)
        return (
            *(i for i, each in enumerate(self.pieces) if each.label in self.new),
            *(count + i for i, each in enumerate(self.fittings) if each.new),
        )

    def corners(self, labels: Collection[str] | None = None) -> Iterable[Vector]:
        """Yield the corners of the pieces as shown, of all or of the ones named."""
        for piece in self.pieces:
            if labels is None or piece.label in labels:
                yield from corners(replace(piece, pose=piece.pose.moved(self.away[piece.label])))

    def open_joints(self) -> tuple[OpenJoint, ...]:
        """Return the joints whose pieces are both shown and not at home with each other."""
        found = []
        for joint in self.assembled.joints:
            if joint.a in self.away and joint.b in self.away:
                a, b = self.away[joint.a], self.away[joint.b]
                if length(between(a, b)) > _STILL:
                    found.append(OpenJoint(joint, a, b))
        return tuple(found)


@dataclass(frozen=True, slots=True)
class ShownFitting:
    """Hardware or a board as shown; ``guide`` leads from it to where it enters the wood."""

    posed: Posed
    new: bool
    guide: tuple[Vector, Vector] | None = None


@dataclass(frozen=True, slots=True)
class OpenJoint:
    """A joint drawn apart: how far its pieces ``a`` and ``b`` are moved away."""

    joint: PosedJoint
    a: Vector
    b: Vector

    @property
    def straight(self) -> bool:
        """Whether the pieces part along an axis of the joint, as they come together.

        Pieces that are moved two ways lie askew, and a line between them would mislead.
        """
        way, frame = between(self.a, self.b), self.joint.frame
        most = max(abs(dot(way, axis)) for axis in (frame.x, frame.y, frame.z))
        return most > _STRAIGHT * length(way)

    @property
    def ends(self) -> tuple[Vector, Vector]:
        """Where the middle of the joint lies on its piece a and on its piece b."""
        middle = self.joint.frame.origin
        return added(middle, self.a), added(middle, self.b)


def step_scene(assembled: Assembled, step: BuildStep, share: float = 1.0) -> Scene:
    """Return what a step shows: what stands, and the new pieces drawn out along their moves.

    ``share`` is how much of each move is still to come.
    """
    labels = {*step.standing, *step.added}
    pieces = tuple(each for each in assembled.pieces if each.label in labels)
    if share == 0:
        at_home = {each.label: HOME for each in pieces}
        return Scene(assembled, pieces, at_home, frozenset(step.added))
    away = _away(replace(assembled, pieces=pieces), BuildOrder(steps=(step,)), share)
    return Scene(assembled, pieces, away, frozenset(step.added))


def apart_scene(assembled: Assembled, order: BuildOrder) -> Scene:
    """Return all pieces drawn apart, none of them coloured."""
    return Scene(assembled, assembled.pieces, _away(assembled, order, 1.0), frozenset())


def home_scene(assembled: Assembled) -> Scene:
    """Return all pieces in their places."""
    away = {each.label: HOME for each in assembled.pieces}
    return Scene(assembled, assembled.pieces, away, frozenset())


def _away(assembled: Assembled, order: BuildOrder, share: float) -> dict[str, Vector]:
    return {label: scaled(far, share) for label, far in apart(assembled, order).items()}
