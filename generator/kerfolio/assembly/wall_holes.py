"""Holes by which a thing is fixed to the wall behind it, and the studs they meet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.extent import Box, box_around
from kerfolio.geometry.rigid import Vector
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.fastened import fastenings_of
from kerfolio.settling.settled import SettledPlan

METRIC_STUDS = (400.0, 600.0, 625.0)
"""How far apart studs stand from middle to middle, mm (common practice, no single source; 625 in
frames of central Europe)."""
INCH_STUDS = (16 * 25.4, 24 * 25.4)
"""The same in North America, 16 and 24 in: the spacings of table R602.3(5) of the International
Residential Code, from memory."""
STUDS = METRIC_STUDS + INCH_STUDS

OFF = 10.0
"""Two holes may be so much, mm, nearer or farther than studs are: these are 38 mm wide or wider,
and a screw stays some 10 mm inside (common practice, no single source)."""

_FACING = 0.99
_NEAR = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingHole:
    """A hole of a ``piece`` through which a screw goes into the wall; ``across`` and ``up`` mm."""

    piece: str
    feature: str
    across: float
    up: float


def fixing_holes(settled: SettledPlan, assembled: Assembled) -> tuple[FixingHole, ...]:
    """Return the through holes of pieces that face the wall with nothing behind, from the left.

    Where fastenings end in the wall these are their holes. Else
    left out are those that a joint names, or a fastening that ends elsewhere, and those that
    another piece touches in front: what goes through them holds that piece.
    """
    screwed = _screwed(settled, assembled)
    if screwed:
        return screwed
    boxes = {each.label: box_around([each]) for each in assembled.pieces}
    joined = {end for each in assembled.joints for end in each.ends}
    joined |= {
        seat.name
        for each in fastenings_of(settled)
        if not each.last.is_wall
        for seat in (*each.seats, each.cross)
        if seat is not None
    }
    found = [
        hole
        for piece in assembled.pieces
        if abs(piece.pose.z[1]) > _FACING
        for hole in _through(piece, settled)
        if f"{piece.label}.{hole.feature}" not in joined and _is_free(hole, boxes)
    ]
    return tuple(sorted(found, key=lambda each: (each.across, each.up)))


def _screwed(settled: SettledPlan, assembled: Assembled) -> tuple[FixingHole, ...]:
    """Return the holes whose fastenings are stated to end in the wall, from the left."""
    pieces = {each.label: each for each in assembled.pieces}
    found = []
    for each in fastenings_of(settled):
        if each.last.is_wall and each.first.is_hole and each.first.piece in pieces:
            x, _, z = pieces[each.first.piece].pose.point(each.first.mouth)
            assert each.first.feature is not None, "a hole is a feature"
            name = each.first.feature.name
            found.append(FixingHole(piece=each.first.piece, feature=name, across=x, up=z))
    return tuple(sorted(found, key=lambda each: (each.across, each.up)))


def studs_met(holes: Sequence[FixingHole]) -> tuple[float, ...]:
    """Return the spacings of studs of which two holes meet two, mm."""
    apart = [abs(a.across - b.across) for a, b in combinations(holes, 2)]
    return tuple(each for each in STUDS if any(_meets(gap, each) for gap in apart))


def _meets(gap: float, spacing: float) -> bool:
    times = round(gap / spacing)
    return times > 0 and abs(gap - times * spacing) <= OFF


def _through(piece: PosedPiece, settled: SettledPlan) -> Iterator[FixingHole]:
    for each in settled.part(piece.part).features:
        if each.kind is HOLE and each.depth is None:
            x, _, z = piece.pose.point((*each.at, 0.0))
            yield FixingHole(piece=piece.label, feature=each.name, across=x, up=z)


def _is_free(hole: FixingHole, boxes: dict[str, Box]) -> bool:
    (_, front, _), (_, back, _) = boxes[hole.piece]
    for label, (low, high) in boxes.items():
        if label != hole.piece and _covers(low, high, hole):
            behind = high[1] > back + _NEAR
            before = low[1] < front and high[1] > front - _NEAR
            if behind or before:
                return False
    return True


def _covers(low: Vector, high: Vector, hole: FixingHole) -> bool:
    return low[0] < hole.across < high[0] and low[2] < hole.up < high[2]
