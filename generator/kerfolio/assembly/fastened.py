"""Fastenings in their place: the axis of each in the whole, and where its hardware sits on it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import takewhile
from math import asin, degrees, fsum

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.bracketed import PosedBracket, posed_bracket
from kerfolio.assembly.clamped import PosedClamp, posed_clamp
from kerfolio.assembly.frames import side_line
from kerfolio.assembly.plates import bracket_plate, clamp_plate, clamp_screw
from kerfolio.geometry.plated import Plated
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
from kerfolio.geometry.turned import Turned
from kerfolio.model.fastening import (
    BOLTED,
    BRACKETED,
    CLAMPED,
    CROSS_NUT,
    DOWELLED,
    SCREWED,
    SUNK_NUTS,
    TEE_NUT,
    Fastening,
)
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.fastened import Seat, SettledFastening, fastenings_of, step_number
from kerfolio.settling.settled import SettledBoard, SettledPlan

_BACK = "back"
_NOWHERE: Vector = (0.0, 0.0, 0.0)
_SLANTED = 0.5


class Role(Enum):
    """What a piece of hardware does in its fastening."""

    SHANK = "shank"
    NUT = "nut"
    WASHER = "washer"
    FITTING = "fitting"
    BOARD = "board"


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A piece of hardware in its place.

    ``frame`` in the world: z is the way that the fastening goes in, mm. Its origin is, of a shank,
    where its head's underside bears (of a countersunk screw or a dowel its very end), of a washer
    or a nut on its bolt the face nearer to the head. Of a barrel nut it is its middle, and z runs
    along the nut, x along the bolt. Brackets and clamps have a ``shape``, and lie in its frame.
    """

    item: HardwareStock
    role: Role
    frame: Rigid
    shape: Plated | Turned | None = None


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


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedFastening:
    """A fastening as it stands in the whole; x to the right, y to the back, z up; mm.

    ``frame``: origin where head or washer bears on the wood (of a dowel where its end is), z the
    way it goes in. ``tip`` is how far along that its end lies, ``entries`` are its further seats.
    ``nut_at`` is how far along the axis the middle of its nut lies, None without one; ``nut_aside``
    from the axis to the middle of a barrel nut. ``step`` counts from 1, 0 in a plan without steps.
    ``bracket`` and ``clamp`` are it in its place where it is one of these.
    """

    settled: SettledFastening
    frame: Rigid
    tip: float
    entries: tuple[Entry, ...]
    bodies: tuple[Body, ...]
    nut_at: float | None = None
    nut_aside: Vector = (0.0, 0.0, 0.0)
    step: int = 0
    bracket: PosedBracket | None = None
    clamp: PosedClamp | None = None

    @property
    def direction(self) -> Vector:
        """The way that it goes in (unit)."""
        return self.frame.z

    def start_of(self, seat: Seat) -> float:
        """Return how far along the axis a seat begins, mm: 0 where its head is."""
        return next((each.along for each in self.entries if each.seat == seat), 0.0)


def posed_fastenings(settled: SettledPlan, assembled: Assembled) -> tuple[PosedFastening, ...]:
    """Return the fastenings whose pieces have a place, in the order of the plan."""
    pieces = {each.label: each for each in assembled.pieces}
    steps = settled.plan.steps
    placed = [
        each
        for each in fastenings_of(settled)
        if each.pieces
        and all(label in pieces for label in each.pieces)
        and (each.first.piece or _through_board(each))
    ]
    brackets = _brackets(placed, pieces)
    found: list[PosedFastening] = []
    for each in placed:
        number = step_number(each, steps)
        step = 0 if number is None else number + 1
        if each.kind is CLAMPED and (each.first.face or each.first.side):
            found += _clamped(each, pieces, step)
        else:
            found.append(_posed(each, pieces, step, brackets.get(each.stated)))
    return tuple(found)


def _brackets(
    placed: Sequence[SettledFastening], pieces: Mapping[str, PosedPiece]
) -> dict[Fastening, PosedBracket | None]:
    """Return the bracket of each statement of one, None where its place is not known."""
    alike: dict[Fastening, list[SettledFastening]] = {}
    for each in placed:
        if each.kind is BRACKETED:
            alike.setdefault(each.stated, []).append(each)
    return {stated: posed_bracket(each, pieces) for stated, each in alike.items()}


def _clamped(
    fastening: SettledFastening, pieces: Mapping[str, PosedPiece], step: int
) -> Iterator[PosedFastening]:
    """Yield a clamp in its place, none where its faces leave it no hold."""
    clamp = posed_clamp(fastening, pieces)
    if clamp is None:
        return
    frame = clamp.frame
    along = Rigid(frame.origin, frame.z, frame.x, frame.y)
    screwed = along.moved(scaled(along.z, clamp.grip))
    shapes = (
        (clamp_plate(clamp.item, clamp.grip), frame),
        (clamp_screw(clamp.item), screwed),
    )
    bodies = (
        Body(item=clamp.item, role=Role.FITTING, frame=at, shape=shape)
        for shape, at in shapes
        if shape
    )
    yield PosedFastening(
        settled=fastening,
        frame=along,
        tip=clamp.grip,
        entries=(),
        bodies=tuple(bodies),
        step=step,
        clamp=clamp,
    )


def _posed(
    fastening: SettledFastening,
    pieces: dict[str, PosedPiece],
    step: int,
    bracket: PosedBracket | None,
) -> PosedFastening:
    frame = _frame(fastening, pieces)
    entries = () if fastening.kind is BRACKETED else tuple(_entries(fastening, frame, pieces))
    washer = fastening.washer.height or 0.0 if fastening.washer else 0.0
    tip = (fastening.item.length or 0.0) - washer
    if fastening.kind is DOWELLED:
        frame, tip = _dowel(fastening, frame, entries)
        entries = tuple(_entries(fastening, frame, pieces))
    nut_at, aside, nuts = _nut(fastening, frame, entries, pieces)
    held = _bracketed(fastening, bracket, pieces) if bracket else ()
    bodies = (*held, *_head_bodies(fastening, frame, washer), *nuts)
    return PosedFastening(
        settled=fastening,
        frame=frame,
        tip=tip,
        entries=entries,
        bodies=bodies,
        nut_at=nut_at,
        nut_aside=aside,
        step=step,
        bracket=bracket,
    )


def _frame(fastening: SettledFastening, pieces: dict[str, PosedPiece]) -> Rigid:
    """Return the frame of the axis: its origin where the head bears, z the way it goes in."""
    first = fastening.first
    if _through_board(fastening):
        return _over_board(fastening, pieces)
    assert first.part is not None, "the first seat has been looked at"
    pose = pieces[first.piece].pose
    if not first.is_hole:
        at = _edge_point(first) if first.side else first.mouth
        return _along(pose.point(at), pose.vector(scaled(first.inward, _outward(fastening))))
    back = _goes_to_show(fastening, pieces)
    x, y, top = first.mouth
    level = 0.0 if back else top - first.sunk
    return _along(pose.point((x, y, level)), pose.vector((0.0, 0.0, 1.0 if back else -1.0)))


def _through_board(fastening: SettledFastening) -> bool:
    """Tell whether the head of a bolt or a screw bears on a board."""
    return fastening.kind in (BOLTED, SCREWED) and fastening.first.board is not None


def _over_board(fastening: SettledFastening, pieces: dict[str, PosedPiece]) -> Rigid:
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
    return _along(added(pose.point(at), scaled(inward, -deep)), inward)


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


def _along(origin: Vector, way: Vector) -> Rigid:
    """Return a frame at a point, z along a way; x lies level where the way does not."""
    z = scaled(way, 1.0 / length(way))
    up: Vector = (0.0, 0.0, 1.0) if abs(z[2]) < 0.9 else (1.0, 0.0, 0.0)
    x = cross(up, z)
    x = scaled(x, 1.0 / length(x))
    return Rigid(origin, x, cross(z, x), z)


def _entries(
    fastening: SettledFastening, frame: Rigid, pieces: dict[str, PosedPiece]
) -> Iterator[Entry]:
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


def _dowel(
    fastening: SettledFastening, frame: Rigid, entries: tuple[Entry, ...]
) -> tuple[Rigid, float]:
    """Return the frame of a dowel at its end, as far from the bottom as at its other end."""
    long = fastening.item.length or 0.0
    if not entries:
        return frame, long
    first, last = room_in(fastening.first), room_in(entries[-1].seat)
    start = entries[-1].along - first + (first + last - long) / 2
    return frame.moved(scaled(frame.z, start)), long


def _nut(
    fastening: SettledFastening,
    frame: Rigid,
    entries: tuple[Entry, ...],
    pieces: dict[str, PosedPiece],
) -> tuple[float | None, Vector, tuple[Body, ...]]:
    """Return how far along the axis the nut's middle is, how far beside it, and its bodies."""
    nut, cross_hole = fastening.nut, fastening.cross
    if nut is None:
        return None, (0.0, 0.0, 0.0), ()
    if nut.kind == CROSS_NUT:
        if cross_hole is None or cross_hole.part is None:
            return None, (0.0, 0.0, 0.0), ()
        pose = pieces[cross_hole.piece].pose
        x, y, _ = cross_hole.mouth
        way = pose.vector((0.0, 0.0, 1.0))
        middle = pose.point((x, y, cross_hole.part.thickness / 2))
        gone = between(frame.origin, middle)
        along = dot(gone, frame.z)
        beside = between(scaled(frame.z, along), gone)
        aside = between(scaled(way, dot(beside, way)), beside)  # along its hole a nut slides
        lying = Rigid(middle, frame.z, cross(way, frame.z), way)
        return along, aside, (Body(item=nut, role=Role.NUT, frame=lying),)
    if nut.kind in SUNK_NUTS:
        return _sunk_nut(nut, fastening, frame, entries)
    high = nut.height or 0.0
    under = fastening.under_nut.height or 0.0 if fastening.under_nut else 0.0
    face = _far_face(fastening, entries)
    seated = frame.moved(scaled(frame.z, face + under))
    bodies = [Body(item=nut, role=Role.NUT, frame=seated)]
    if fastening.under_nut is not None:
        at = frame.moved(scaled(frame.z, face))
        bodies.append(Body(item=fastening.under_nut, role=Role.WASHER, frame=at))
    return face + under + high / 2, (0.0, 0.0, 0.0), tuple(bodies)


def sunk_length(nut: HardwareStock) -> float:
    """Return how long an insert or a tee nut is, mm: 2 or 1.5 threads where none is stated."""
    usual = 1.5 if nut.kind == TEE_NUT else 2.0
    return nut.length or usual * (nut.thread or 0.0)


def _sunk_nut(
    nut: HardwareStock, fastening: SettledFastening, frame: Rigid, entries: tuple[Entry, ...]
) -> tuple[float, Vector, tuple[Body, ...]]:
    """Return the same of an insert, in from where the bolt comes, or of a tee nut, from behind."""
    long = sunk_length(nut)
    if nut.kind == TEE_NUT:
        face = _far_face(fastening, entries)
        turned = Rigid(frame.origin, frame.x, scaled(frame.y, -1.0), scaled(frame.z, -1.0))
        seated = turned.moved(scaled(frame.z, face))
        return face - long / 2, _NOWHERE, (Body(item=nut, role=Role.NUT, frame=seated),)
    start = entries[-1].along if entries else _far_face(fastening, entries) - long
    seated = frame.moved(scaled(frame.z, start))
    return start + long / 2, _NOWHERE, (Body(item=nut, role=Role.NUT, frame=seated),)


def _far_face(fastening: SettledFastening, entries: tuple[Entry, ...]) -> float:
    """Return how far along the axis the wood ends that a bolt goes through, mm."""
    if entries:
        return entries[-1].along + room_in(entries[-1].seat)
    return room_in(fastening.first) - fastening.first.sunk


def _head_bodies(fastening: SettledFastening, frame: Rigid, washer: float) -> Iterator[Body]:
    if fastening.kind in (BRACKETED, CLAMPED):
        return  # they have no axis
    if fastening.washer is not None:
        back = frame.moved(scaled(frame.z, -washer))
        yield Body(item=fastening.washer, role=Role.WASHER, frame=back)
        frame = back
    yield Body(item=fastening.item, role=Role.SHANK, frame=frame)


def _bracketed(
    fastening: SettledFastening, bracket: PosedBracket, pieces: Mapping[str, PosedPiece]
) -> Iterator[Body]:
    """Yield a bracket, with the first of its statement, and the screws in this one's holes."""
    if fastening.number == 1:
        shape = bracket_plate(bracket.item)
        yield Body(item=bracket.item, role=Role.FITTING, frame=bracket.frame, shape=shape)
    if fastening.by is None:
        return
    over = bracket.item.thickness or 0.0
    for leg in bracket.legs:
        for seat in fastening.seats:
            if seat in leg.seats:
                x, y, _ = seat.mouth
                at = pieces[seat.piece].pose.point((x, y, leg.level))
                frame = _along(added(at, scaled(leg.normal, over)), scaled(leg.normal, -1.0))
                yield Body(item=fastening.by, role=Role.SHANK, frame=frame)
