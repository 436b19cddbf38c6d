"""Clamps in their place: two jaws on two faces that look away from each other, and a bar beside."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.extent import Box, box_around, box_of, corners
from kerfolio.assembly.frames import side_line
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, dot, length, scaled
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.fastened import OUTWARD, SHOW, Seat, SettledFastening

_BESIDE, _HALF = 6.0, 3.0
"""How far from what it clamps the middle of a clamp's bar and of its jaws passes, and half of what
has to be free there, mm (common practice, no single source)."""

_OPPOSED = -0.999
"""Cosine between two faces that a clamp does not slip off: within 2.5 degrees of parallel (common
practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedClamp:
    """A clamp in its place.

    ``frame`` is that of its plate (``plates.clamp_plate``): its first jaw presses at the origin
    towards y, its bar is on the side of x. ``grip`` mm is what it spans, ``deep`` how far the place
    is from where its bar can pass. ``other`` is where its second jaw presses, in the world.
    """

    item: HardwareStock
    frame: Rigid
    grip: float
    deep: float
    other: Vector


def posed_clamp(fastening: SettledFastening, pieces: Mapping[str, PosedPiece]) -> PosedClamp | None:
    """Return a clamp in its place; None where its two faces do not look away from each other.

    It presses ``at`` its place on the first face, else over the middle of the second one; its bar
    passes where that is nearest and no other piece of the whole stands.
    """
    first, last = fastening.first, fastening.last
    if not _is_face(first) or not _is_face(last):
        return None
    one, other = (_facing(seat, pieces[seat.piece].pose) for seat in (first, last))
    if dot(one.z, other.z) > _OPPOSED:
        return None
    start = other.origin
    if fastening.at is not None:
        start = pieces[first.piece].pose.point(_spot(first, fastening.at))
    inward = scaled(one.z, -1.0)
    spot = added(start, scaled(inward, dot(between(start, one.origin), inward)))
    grip = dot(between(spot, other.origin), inward)
    named = [pieces[each] for each in fastening.pieces]
    others = [box_around([each]) for each in pieces.values() if each not in named]
    ways = (one.x, scaled(one.x, -1.0), one.y, scaled(one.y, -1.0))
    reaches = sorted((round(_past(named, spot, way), 6), n) for n, way in enumerate(ways))
    free = [
        (deep, number)
        for deep, number in reaches
        if not _blocked(others, spot, scaled(ways[number], deep + _BESIDE), scaled(inward, grip))
    ]
    deep, number = (free or reaches)[0]
    x = ways[number]
    frame = Rigid(spot, x, inward, cross(x, inward))
    pressed = added(spot, scaled(inward, grip))
    return PosedClamp(item=fastening.item, frame=frame, grip=grip, deep=deep, other=pressed)


def _blocked(others: Sequence[Box], spot: Vector, way: Vector, across: Vector) -> bool:
    """Tell whether a jaw or the bar of a clamp would stand in the box of another piece.

    The bar is ``way`` beside the spot, and ``across`` leads from the first face to the other one.
    """
    over = scaled(across, -_BESIDE / max(length(across), _BESIDE))
    near, far = added(spot, over), added(spot, added(across, scaled(over, -1.0)))
    rods = ((near, added(near, way)), (far, added(far, way)), (added(near, way), added(far, way)))
    return any(_meets(box_of(rod), other) for rod in rods for other in others)


def _meets(one: Box, other: Box) -> bool:
    (low, high), (least, most) = one, other
    return all(
        least[axis] < high[axis] + _HALF and low[axis] - _HALF < most[axis] for axis in range(3)
    )


def _is_face(seat: Seat) -> bool:
    return bool(seat.face or seat.side)


def _facing(seat: Seat, pose: Rigid) -> Rigid:
    """Return the frame of a face or a side in the world: its middle, z the way it looks."""
    part = seat.part
    assert part is not None, "a clamp presses on pieces"
    if seat.side:
        middle, (ox, oy), _ = side_line(part, seat.side)
        inner = Rigid((*middle, part.thickness / 2), (-oy, ox, 0.0), (0.0, 0.0, 1.0), (ox, oy, 0.0))
        return pose.after(inner)
    box = bounds(part.plain.outer)
    level, way = (part.thickness, 1.0) if seat.face == SHOW else (0.0, -1.0)
    at = ((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2, level)
    return pose.after(Rigid(at, (way, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, way)))


def _spot(seat: Seat, at: tuple[float, float]) -> Vector:
    """Return a stated place on a face or a side, in the part's frame, mm."""
    part = seat.part
    assert part is not None, "a clamp presses on pieces"
    if not seat.side:
        return (*at, part.thickness if seat.face == SHOW else 0.0)
    middle, *_ = side_line(part, seat.side)
    along, level = at
    upright = OUTWARD[seat.side][1] == 0.0
    return (middle[0], along, level) if upright else (along, middle[1], level)


def _past(named: list[PosedPiece], spot: Vector, way: Vector) -> float:
    """Return how far pieces reach from a spot along a way, mm."""
    return max(dot(between(spot, each), way) for piece in named for each in corners(piece))
