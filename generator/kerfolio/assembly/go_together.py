"""Whether the pieces of a plan go together: which of them would need the same space."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, PosedJoint
from kerfolio.assembly.world import posed_panels
from kerfolio.geometry.panel_boxes import boxes, near_pairs
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_shared import shared
from kerfolio.geometry.rigid import Vector, between, length

LEAST_CLASH = 1.0
"""Up to so much shared space, mm3, is a touch."""

LEAST_DEPTH = 0.01
"""Up to so deep, mm, is a touch too, however wide: no sheet is cut that true."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Two pieces that need the same space.

    ``volume`` mm3; ``depth`` mm is how far one is in the other, and ``length`` mm how much of the
    line in which they cross it takes up; ``at`` is the middle of it and ``box`` (least, greatest)
    reaches round it, in the world (see ``panel_shared.Shared``). ``joint`` is the nearest of the
    joints that the two share, None when they share none.
    """

    a: str
    b: str
    volume: float
    depth: float
    length: float
    at: Vector
    box: tuple[Vector, Vector]
    joint: PosedJoint | None = None

    @property
    def ends(self) -> tuple[str, ...]:
        """The two features of the joint as written; empty when the pieces share no joint."""
        return self.joint.ends if self.joint else ()


def clashes(assembled: Assembled) -> tuple[Clash, ...]:
    """Return every pair of pieces that need the same space, in the order of the pieces."""
    panels = posed_panels(assembled)
    pairs = near_pairs(boxes(panels))
    volumes = overlap_volumes([(panels[one], panels[other]) for one, other in pairs])
    found = []
    for (one, other), volume in zip(pairs, volumes.tolist(), strict=True):
        space = shared(panels[one], panels[other]) if volume > LEAST_CLASH else None
        if space and space.depth > LEAST_DEPTH:
            a, b = assembled.pieces[one].label, assembled.pieces[other].label
            clash = Clash(
                a=a,
                b=b,
                volume=volume,
                depth=space.depth,
                length=space.length,
                at=space.at,
                box=space.box,
                joint=_nearest(assembled.joints, a, b, space.at),
            )
            found.append(clash)
    return tuple(found)


def _nearest(joints: tuple[PosedJoint, ...], a: str, b: str, at: Vector) -> PosedJoint | None:
    """Return the joint of two pieces that is nearest to a point, where it reaches that far."""
    theirs = [each for each in joints if {each.a, each.b} == {a, b}]
    reach = {id(each): length(between(each.frame.origin, at)) for each in theirs}
    near = [each for each in theirs if reach[id(each)] <= max(each.size)]
    return min(near, key=lambda each: reach[id(each)], default=None)
