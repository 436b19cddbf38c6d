"""A build order gone through backwards with solids, apart from the program's own sweeps.

Each move is undone in small steps. At every step the solid of what moves may share no more than a
touch with the solid of what it leaves. The solids are the test's own, made by the boolean library
from the flat shapes.
"""

from __future__ import annotations

import numpy as np
from manifold3d import CrossSection, FillRule, Manifold, OpType

from kerfolio.assembly.assembled import Assembled, BuildOrder, PosedPiece
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.rigid import Vector, scaled

TOUCH = 1.0
"""mm3"""
WAYS: tuple[Vector, ...] = (
    *((1.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    *((0.0, -1.0, 0.0), (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)),
)
STRIDE = 6.0
"""mm: a third of the thinnest panel of these tests, so that none is stepped over."""


def solid(piece: PosedPiece) -> Manifold:
    panel, pose = piece.panel, piece.pose
    made = _prism(panel.shape, 0.0, panel.thickness)
    for each in panel.recesses:
        made -= _prism(each.shape, panel.thickness - each.depth, panel.thickness + 1.0)
    return made.transform(np.array([pose.x, pose.y, pose.z, pose.origin]).T)


def _prism(flat: Flat, low: float, high: float) -> Manifold:
    rings = [list(flat.outer), *(list(each) for each in flat.openings)]
    made = CrossSection(rings, FillRule.EvenOdd).extrude(high - low)
    return made.translate((0.0, 0.0, low))


def hits(mover: Manifold, other: Manifold, way: Vector, stride: float = STRIDE) -> bool:
    """Tell whether a solid hits another on its way until their boxes have parted."""
    gone = 0.0
    while gone == 0.0 or _may_meet(mover, other, way, gone):
        if (mover.translate(scaled(way, gone)) ^ other).volume() > TOUCH:
            return True
        gone += stride
    return False


def _may_meet(mover: Manifold, other: Manifold, way: Vector, gone: float) -> bool:
    """Tell whether boxes overlap, or still may further on."""
    near, far = _reach(mover, way), _reach(other, way)
    return near[0] + gone < far[1]


def _reach(given: Manifold, way: Vector) -> tuple[float, float]:
    low, high = np.array(given.bounding_box()).reshape(2, 3)
    ends = np.stack([low, high])
    corners = np.array([[ends[a][0], ends[b][1], ends[c][2]] for a, b, c in np.ndindex(2, 2, 2)])
    along = corners @ np.array(way)
    return float(along.min()), float(along.max())


def faults(assembled: Assembled, order: BuildOrder) -> list[str]:
    """Return what goes wrong when an order is undone, in words; nothing when it is right."""
    solids = {piece.label: solid(piece) for piece in assembled.pieces}
    added = [label for step in order.steps for label in step.added]
    found = [] if sorted(added) == sorted(solids) else [f"pieces added: {added}"]
    tied = _ties(assembled)
    heaps = _lots(set(solids), tied)
    for step in reversed(order.steps):
        for move in reversed(step.moves):
            moving = set(move.pieces)
            heap = next((each for each in heaps if moving < each), None)
            if heap is None:
                found.append(f"step {step.number}: {move.pieces} are not together with others")
                continue
            one, rest = _one(solids, moving), _one(solids, heap - moving)
            if hits(one, rest, scaled(move.direction, -1.0)):
                found.append(f"step {step.number}: {move.pieces} hit what they leave")
            heaps.remove(heap)
            for half in (moving, heap - moving):
                lots = _lots(half, tied)
                heaps += lots
                if not _part([_one(solids, lot) for lot in lots]):
                    found.append(f"step {step.number}: {sorted(half)} cannot lie beside each other")
    together = [each for each in assembled.joints if any({each.a, each.b} <= h for h in heaps)]
    return [*found, *(f"{each.a} and {each.b} never parted" for each in together)]


def _ties(assembled: Assembled) -> set[tuple[str, str]]:
    """Return who is tied to whom: by a joint, or as lots that no chain of joints connects."""
    joined = {pair for each in assembled.joints for pair in ((each.a, each.b), (each.b, each.a))}
    lots = _lots({piece.label for piece in assembled.pieces}, joined)
    apart = {(a, b) for one in lots for other in lots if one != other for a in one for b in other}
    return joined | apart


def _lots(labels: set[str], ties: set[tuple[str, str]]) -> list[set[str]]:
    lots: list[set[str]] = []
    for label in sorted(labels):
        near = [lot for lot in lots if any((label, each) in ties for each in lot)]
        lots = [lot for lot in lots if lot not in near] + [{label}.union(*near)]
    return lots


def _part(solids: list[Manifold]) -> bool:
    """Tell whether solids that nothing joins can be moved apart one after the other."""
    if len(solids) < 2:
        return True
    for index, each in enumerate(solids):
        others = [*solids[:index], *solids[index + 1 :]]
        rest = Manifold.batch_boolean(others, OpType.Add)
        if any(not hits(each, rest, way) for way in WAYS):
            return _part(others)
    return False


def _one(solids: dict[str, Manifold], labels: set[str]) -> Manifold:
    return Manifold.batch_boolean([solids[each] for each in sorted(labels)], OpType.Add)
