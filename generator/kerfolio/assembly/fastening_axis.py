"""The axis of a fastening in the whole: where its head bears, which way it goes, what it enters."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import takewhile
from math import asin, degrees, fsum

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.frames import side_line
from kerfolio.geometry.rigid import (
    Rigid,
    Vector,
    added,
    between,
    cross,
    dot,
    length,
    scaled,
)
from kerfolio.model.fastening import (
    BOLTED,
    SCREWED,
)
from kerfolio.settling.fastened import Seat, SettledFastening
from kerfolio.settling.settled import SettledBoard

_BACK = "back"
_NOWHERE: Vector = (0.0, 0.0, 0.0)
_SLANTED = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """How a fastening meets one of its seats after the first, in the world, mm.

    ``at`` is where it enters the seat, ``along`` how far that is from where its head bears.
    ``aside`` is from its axis to the middle of the seat there, ``tilt`` the degrees between both.
    """

    seat: Seat
    at: Vector
    along: float
    aside: Vector
    tilt: float

    @property
    def off(self) -> float:
        """How far the seat's middle lies beside the axis, mm."""
        return length(self.aside)


def axis_of(fastening: SettledFastening, pieces: dict[str, PosedPiece]) -> Rigid:
    """Return the frame of the axis: its origin where the head bears, z the way it goes in."""
    first = fastening.first
    if over_board(fastening):
        return _onto_board(fastening, pieces)
    assert first.part is not None, "the first seat has been looked at"
    pose = pieces[first.piece].pose
    if not first.is_hole:
        at = _edge_point(first) if first.side else first.mouth
        return along(pose.point(at), pose.vector(scaled(first.inward, _outward(fastening))))
    back = _goes_to_show(fastening, pieces)
    x, y, top = first.mouth
    level = 0.0 if back else top - first.sunk
    return along(pose.point((x, y, level)), pose.vector((0.0, 0.0, 1.0 if back else -1.0)))


def over_board(fastening: SettledFastening) -> bool:
    """Tell whether the head of a bolt or a screw bears on a board."""
    return fastening.kind in (BOLTED, SCREWED) and fastening.first.board is not None


def _onto_board(fastening: SettledFastening, pieces: dict[str, PosedPiece]) -> Rigid:
    """Return the frame of what goes through a board into the first piece under it.

    That is entered from the face on which the board lies: the one stated, else the show face.
    """
    before = [*takewhile(lambda seat: seat.part is None, fastening.seats)]
    seat = fastening.seats[len(before)]
    assert seat.part is not None, "a fastening without a piece has no place"
    pose, boards = pieces[seat.piece].pose, [each.board for each in before if each.board]
    if seat.is_hole:
        lying = (each for board in boards for each in board.places if each.piece == seat.piece)
        back = any(each.face == _BACK for each in lying) or fastening.stated.head_on == _BACK
        x, y, top = seat.mouth
        at, way = (x, y, 0.0 if back else top), (0.0, 0.0, 1.0 if back else -1.0)
    else:
        at, way = _edge_point(seat) if seat.side else seat.mouth, seat.inward
    inward = pose.vector(way)
    deep = fsum(map(board_depth, boards))
    return along(added(pose.point(at), scaled(inward, -deep)), inward)


def board_depth(board: SettledBoard) -> float:
    """Return how far a board reaches from what it lies on, mm."""
    on_edge = any(each.stated.on_edge for each in board.places)
    return board.stock.width if on_edge else board.stock.thickness


def _outward(fastening: SettledFastening) -> float:
    """Return -1 where a fastening leaves the edge of its first seat for another piece, else 1."""
    return -1.0 if len(fastening.pieces) > 1 else 1.0


def _edge_point(seat: Seat) -> Vector:
    """Return the middle of a side of a part, in its frame."""
    assert seat.part is not None
    middle, *_ = side_line(seat.part, seat.side)
    return (*middle, seat.part.thickness / 2)


def _goes_to_show(fastening: SettledFastening, pieces: dict[str, PosedPiece]) -> bool:
    """Tell whether a fastening enters a hole from the back, towards the show face."""
    first, last = fastening.first, fastening.last
    if last.part is None or last.piece == first.piece:
        return fastening.stated.head_on == _BACK
    pose, other = pieces[first.piece].pose, pieces[last.piece].pose
    normal = pose.vector((0.0, 0.0, 1.0))
    way = other.vector(last.inward) if last.into_edge else _NOWHERE
    if abs(dot(way, normal)) < _SLANTED:  # what is bored crosswise does not tell
        assert first.part is not None
        x, y, _ = _edge_point(last) if last.side else last.mouth
        there = other.point((x, y, last.part.thickness / 2))
        here = pose.point((*first.mouth[:2], first.part.thickness / 2))
        way = between(here, there)
    return dot(way, normal) > 0


def along(origin: Vector, way: Vector) -> Rigid:
    """Return a frame at a point, z along a way; x lies level where the way does not."""
    z = scaled(way, 1.0 / length(way))
    up: Vector = (0.0, 0.0, 1.0) if abs(z[2]) < 0.9 else (1.0, 0.0, 0.0)
    x = cross(up, z)
    x = scaled(x, 1.0 / length(x))
    return Rigid(origin, x, cross(z, x), z)


def entries_of(
    fastening: SettledFastening, frame: Rigid, pieces: dict[str, PosedPiece]
) -> Iterator[Entry]:
    """Yield how a fastening meets each of its seats after the first."""
    for seat in fastening.seats[1:]:
        if seat.part is None:
            continue
        pose = pieces[seat.piece].pose
        way = pose.vector(seat.inward)
        middle = _entered(seat, pose, frame)
        if seat.side:  # a plain side: wherever the axis meets it
            gone = between(frame.origin, middle)
            along = dot(gone, way) / (dot(frame.z, way) or 1.0)
            at = added(frame.origin, scaled(frame.z, along))
            yield Entry(
                seat=seat, at=at, along=along, aside=(0.0, 0.0, 0.0), tilt=_tilt(frame, way)
            )
            continue
        gone = between(frame.origin, middle)
        along = dot(gone, frame.z)
        aside = between(scaled(frame.z, along), gone)
        yield Entry(seat=seat, at=middle, along=along, aside=aside, tilt=_tilt(frame, way))


def _entered(seat: Seat, pose: Rigid, frame: Rigid) -> Vector:
    """Return the middle of a seat where a fastening enters it, in the world."""
    if seat.side:
        return pose.point(_edge_point(seat))
    x, y, z = seat.mouth
    if seat.is_hole and dot(pose.vector((0.0, 0.0, -1.0)), frame.z) < 0:
        z = 0.0
    return pose.point((x, y, z))


def _tilt(frame: Rigid, way: Vector) -> float:
    """Return the degrees between two axes, whichever way they run."""
    return degrees(asin(min(1.0, length(cross(frame.z, way)))))


def room_in(seat: Seat) -> float:
    """Return how deep a seat is, mm: of what goes through a face, the sheet's thickness."""
    if seat.feature is not None and seat.feature.depth is not None:
        return seat.feature.depth.value
    if seat.board is not None:
        return board_depth(seat.board)
    assert seat.part is not None
    return seat.part.thickness
