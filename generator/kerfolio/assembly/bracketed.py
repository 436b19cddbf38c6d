"""Brackets in their place: in the corner of two pieces, one leg on a face of each."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, dot, scaled
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.fastened import Seat, SettledFastening

_SQUARE = 0.02
"""Cosine between the normals of two faces that still make a square corner: about 1 degree."""
_NEAR = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class Leg:
    """A leg of a bracket on a face of a piece.

    ``normal`` is the way that face looks in the world (unit), ``seats`` the holes it is screwed
    into. In the part's frame its ``level`` is that of the face, ``corner`` the middle of its end in
    the corner, ``along`` (unit) the way it runs from there; ``reach`` mm is how far.
    """

    seats: tuple[Seat, ...]
    normal: Vector
    level: float
    corner: Point
    along: Point
    reach: float

    def hole(self, at: float) -> Point:
        """Return where a hole so far from the corner lies in the part's frame, mm."""
        (x, y), (ux, uy) = self.corner, self.along
        return x + at * ux, y + at * uy

    def outline(self, wide: float) -> tuple[Point, ...]:
        """Return the corners of what it covers of its face, in the part's frame."""
        (ux, uy), half = self.along, wide / 2
        (x0, y0), (x1, y1) = self.corner, self.hole(self.reach)
        nx, ny = -uy * half, ux * half
        return (
            (x0 - nx, y0 - ny),
            (x1 - nx, y1 - ny),
            (x1 + nx, y1 + ny),
            (x0 + nx, y0 + ny),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedBracket:
    """A bracket in its place: ``frame`` is that of its plate (``plates.bracket_plate``)."""

    item: HardwareStock
    frame: Rigid
    legs: tuple[Leg, Leg]


def posed_bracket(
    alike: Sequence[SettledFastening], pieces: Mapping[str, PosedPiece]
) -> PosedBracket | None:
    """Return the bracket of a statement, ``alike`` all that it stands for.

    It lies where a face of the one piece and a face of the other make a square corner with the
    holes of both before them; None where there is no such corner, or the bracket's legs are not
    known. Holes right through leave open which face that is, others begin on the show face.
    """
    item = alike[0].item
    sets: dict[str, list[Seat]] = {}
    for seat in (seat for each in alike for seat in each.seats):
        if seat.is_hole and seat not in sets.setdefault(seat.piece, []):
            sets[seat.piece].append(seat)
    if len(sets) != 2 or item.leg is None or not all(sets.values()):
        return None
    one, other = ((pieces[name], tuple(seats)) for name, seats in sets.items())
    for a, b in product(_levels(one[1]), _levels(other[1])):
        found = _in_corner(item, (*one, a), (*other, b))
        if found is not None:
            return found
    return None


_Side = tuple[PosedPiece, tuple[Seat, ...], float]
"""A piece, the holes in it, and the level of the face that a leg may lie on."""


def _levels(seats: Sequence[Seat]) -> Iterator[float]:
    part, feature = seats[0].part, seats[0].feature
    assert part is not None, "a hole is in a part"
    assert feature is not None, "a hole is a feature"
    yield part.thickness
    if feature.depth is None:
        yield 0.0


def _in_corner(item: HardwareStock, one: _Side, other: _Side) -> PosedBracket | None:
    y, x = (_normal(piece, level) for piece, _, level in (one, other))
    if abs(dot(x, y)) > _SQUARE:
        return None
    first, second = _middle(one), _middle(other)
    if dot(between(first, second), y) < _NEAR or dot(between(second, first), x) < _NEAR:
        return None
    z = cross(x, y)
    across = (dot(first, z) + dot(second, z)) / 2
    # The corner lies in both faces: in the one of the first as deep as its holes, and so the other.
    corner = added(scaled(z, across), added(scaled(y, dot(first, y)), scaled(x, dot(second, x))))
    frame = Rigid(corner, x, y, z)
    legs = (
        _leg(one, corner, x, item.leg or 0.0),
        _leg(other, corner, y, item.other_leg or item.leg or 0.0),
    )
    return PosedBracket(item=item, frame=frame, legs=legs)


def _leg(side: _Side, corner: Vector, along: Vector, reach: float) -> Leg:
    piece, seats, level = side
    back = piece.pose.inverse
    x, y, _ = back.point(corner)
    ux, uy, _ = back.vector(along)
    long = math.hypot(ux, uy)
    return Leg(
        seats=seats,
        normal=_normal(piece, level),
        level=level,
        corner=(x, y),
        along=(ux / long, uy / long),
        reach=reach,
    )


def _normal(piece: PosedPiece, level: float) -> Vector:
    return piece.pose.z if level > 0 else scaled(piece.pose.z, -1.0)


def _middle(side: _Side) -> Vector:
    """Return the middle of the holes of a side, on its face, in the world."""
    piece, seats, level = side
    spots = [piece.pose.point((*seat.mouth[:2], level)) for seat in seats]
    return scaled(
        (
            math.fsum(each[0] for each in spots),
            math.fsum(each[1] for each in spots),
            math.fsum(each[2] for each in spots),
        ),
        1 / len(spots),
    )
