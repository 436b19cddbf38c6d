"""Whether panels pushed along straight lines hit others, exactly.

A panel pushed within its plane, or along its normal, sweeps a panel: a greater polygon, or higher
slabs. So such a push is a question of overlap. Where the line is oblique to the mover, the other
panel is pushed the opposite way instead; where it is oblique to both, the mover is cut into prisms
and each sweeps the convex hull of itself and its moved copy.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import manifold3d
import numpy as np
import shapely

from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_solid import Numbers, PanelSolid, Posed, Slab, moved, rings, slab
from kerfolio.geometry.rigid import Vector, scaled

FREE = 1.0
"""A swept panel that shares no more than this with another, mm3, only touches it."""

FAR = 1e5
"""A push to infinity: further than any plan reaches, mm."""

_ALONG = 1e-6
"""A direction counts as in a panel's plane, or along its normal, within this, radians: so panels
that slide along one another stay in contact, whatever the rounding of their poses."""

_DIGITS = 9


@dataclass(frozen=True, slots=True)
class Push:
    """A panel pushed along a direction (unit, world) by a distance, mm, and one in its way."""

    mover: Posed
    other: Posed
    direction: Vector
    distance: float = FAR


def sweep_volumes(pushes: Sequence[Push]) -> Numbers:
    """Return the volume (mm3) that what each pushed panel sweeps shares with the other.

    No more than ``FREE`` counts as free: the panels at most touch on the way. Where the other is
    pushed back instead, it is the mover's share in what that sweeps: as free, or as hit.
    """
    pairs = [_swept_pair(each) for each in pushes]
    flat = [number for number, pair in enumerate(pairs) if pair]
    volumes = np.zeros(len(pushes))
    volumes[flat] = overlap_volumes([pair for pair in pairs if pair])
    for number, pair in enumerate(pairs):
        if pair is None:
            volumes[number] = _hull_volume(pushes[number])
    return volumes


def swept(solid: PanelSolid, direction: Vector, distance: float) -> PanelSolid | None:
    """Return what a panel sweeps along a direction (unit, in its own frame), as a panel.

    None when the direction is oblique to the panel. Distance in mm, above 0.
    """
    x, y, z = direction
    key = (round(x, _DIGITS) + 0.0, round(y, _DIGITS) + 0.0, round(z, _DIGITS) + 0.0, distance)
    if key in solid.sweeps:
        return solid.sweeps[key]
    if abs(z) < _ALONG:
        by = np.array([x, y]) * distance
        made = PanelSolid(tuple(slab(s.low, s.high, _shadow(s.area, by)) for s in solid.slabs))
    elif np.hypot(x, y) < _ALONG:
        made = PanelSolid(_lengthened(solid.slabs, distance if z > 0 else -distance))
    else:
        return None
    solid.sweeps[key] = made
    return made


def _swept_pair(push: Push) -> tuple[Posed, Posed] | None:
    """Return the pair whose overlap answers a push, None when it is oblique to both panels."""
    mover, other = push.mover, push.other
    made = swept(mover.solid, mover.pose.inverse.vector(push.direction), push.distance)
    if made:
        return Posed(made, mover.pose), other
    back = scaled(push.direction, -1.0)
    made = swept(other.solid, other.pose.inverse.vector(back), push.distance)
    return (mover, Posed(made, other.pose)) if made else None


def _shadow(area: Any, by: Numbers) -> Any:
    """Return what polygons sweep when moved: themselves, and what each leading chain sweeps."""
    chains = [chain for ring in rings(area.geoms) for chain in _leading(ring, by)]
    made = [shapely.Polygon(np.vstack([each, each[::-1] + by])) for each in chains]
    return shapely.union_all([*area.geoms, *made])


def _leading(ring: Numbers, by: Numbers) -> list[Numbers]:
    """Return the chains of a ring (rows x, y, material on the left) that lead when it moves.

    No chain turns back across the move, so it and its moved copy bound one polygon.
    """
    run = np.diff(ring, axis=0)
    # Material is on the left, so an edge leads when the move points to its right.
    off = run[:, 1] * by[0] - run[:, 0] * by[1]
    leads = off > _ALONG * np.hypot(*run.T) * np.hypot(*by)
    if not leads.any():
        return []
    start = int(np.argmin(leads))
    turned = np.append(np.roll(leads, -start), False)
    points = np.roll(ring[:-1], -start, axis=0)
    points = np.vstack([points, points[:1]])
    begins = np.flatnonzero(turned[1:] & ~turned[:-1]) + 1
    ends = np.flatnonzero(turned[:-1] & ~turned[1:]) + 1
    return [points[begin : end + 1] for begin, end in zip(begins, ends, strict=True)]


def _lengthened(slabs: Sequence[Slab], by: float) -> tuple[Slab, ...]:
    """Return the slabs a panel sweeps along its normal, up or (below 0) down, mm.

    An upper slab lies within those below it. So downwards only the lowest one reaches further;
    upwards it covers all that the moved panel leaves, and the others follow on top of it.
    """
    first, *rest = slabs
    if by < 0:
        return (Slab(first.low + by, first.high, first.area, first.edges), *rest)
    return (
        Slab(first.low, first.high + by, first.area, first.edges),
        *(Slab(each.low + by, each.high + by, each.area, each.edges) for each in rest),
    )


def _hull_volume(push: Push) -> float:
    if len(push.mover.solid.prisms) > len(push.other.solid.prisms):
        # The one of fewer prisms is pushed: as free, or as hit.
        back = scaled(push.direction, -1.0)
        return _hull_volume(Push(push.other, push.mover, back, push.distance))
    inverse = push.mover.pose.inverse
    by = np.array(scaled(inverse.vector(push.direction), push.distance))
    target = moved(push.other.solid.solid, inverse.after(push.other.pose))
    hulls = [
        manifold3d.Manifold.hull_points(np.vstack([each, each + by])) ^ target
        for each in push.mover.solid.prisms
    ]
    shared = manifold3d.Manifold.batch_boolean(hulls, manifold3d.OpType.Add)
    return float(shared.volume())
