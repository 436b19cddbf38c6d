"""The edges that make a joint, on either of its pieces, and how much of them a picture shows."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from math import dist

from kerfolio.drawing.scene import OpenJoint, Scene
from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.rigid import between, length
from kerfolio.geometry.shown import Line, edges_near

_REACH = 2.0
"""How far beyond a joint its edges may lie, mm."""

Edges = tuple[tuple[Line, ...], tuple[Line, ...]]


def joint_edges(joint: OpenJoint, solids: Mapping[str, PosedPanel]) -> Edges:
    """Return the edges of both pieces that make a joint: those wholly beside its middle.

    None of a piece that is not among the ``solids``.
    """
    frame, (along, across) = joint.joint.frame, joint.joint.size

    def beside(label: str, away: tuple[float, float, float]) -> tuple[Line, ...]:
        if label not in solids:
            return ()
        thick = solids[label].panel.thickness
        reach = (along / 2 + _REACH, across / 2 + _REACH, max(across, thick) + _REACH)
        return edges_near(solids[label], frame.moved(away), reach)

    return beside(joint.joint.a, joint.a), beside(joint.joint.b, joint.b)


def edges_of(scene: Scene, joints: Sequence[OpenJoint]) -> list[Edges]:
    """Return the edges of each of some joints of a scene."""
    solids = {piece.label: scene.posed(piece) for piece in scene.pieces}
    return [joint_edges(each, solids) for each in joints]


def shares_seen(
    edges: Sequence[Edges], seen: Sequence[tuple[int, Point, Point]], first: int
) -> list[float]:
    """Return for each joint how much is seen of its edges on that piece which shows less.

    ``seen`` are stretches with the numbers of their lines, those of ``edges`` in a row from
    ``first`` on. A piece without edges of its own there counts nothing.
    """
    drawn: dict[int, float] = {}
    for number, a, b in seen:
        drawn[number] = drawn.get(number, 0.0) + dist(a, b)
    found, number = [], first
    for each in edges:
        shares = []
        for lines in each:
            true = math.fsum(length(between(a, b)) for a, b in lines)
            shown = math.fsum(drawn.get(number + at, 0.0) for at in range(len(lines)))
            number += len(lines)
            shares += [shown / true] if true else []
        found.append(min(shares, default=1.0))
    return found
