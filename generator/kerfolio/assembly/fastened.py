"""Fastenings in their place: the axis of each in the whole, and where its hardware sits on it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.bracketed import PosedBracket, posed_bracket
from kerfolio.assembly.clamped import PosedClamp, posed_clamp
from kerfolio.assembly.fastening_axis import (
    Entry,
    along,
    axis_of,
    entries_of,
    over_board,
    room_in,
)
from kerfolio.assembly.fastening_body import Body, Role
from kerfolio.assembly.fastening_nut import nut_of
from kerfolio.assembly.plates import bracket_plate, clamp_plate, clamp_screw
from kerfolio.geometry.rigid import (
    Rigid,
    Vector,
    added,
    scaled,
)
from kerfolio.model.fastening import (
    BRACKETED,
    CLAMPED,
    DOWELLED,
    Fastening,
)
from kerfolio.settling.fastened import Seat, SettledFastening, fastenings_of, step_number
from kerfolio.settling.settled import SettledPlan


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
        and (each.first.piece or over_board(each))
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
    frame = axis_of(fastening, pieces)
    entries = () if fastening.kind is BRACKETED else tuple(entries_of(fastening, frame, pieces))
    washer = fastening.washer.height or 0.0 if fastening.washer else 0.0
    tip = (fastening.item.length or 0.0) - washer
    if fastening.kind is DOWELLED:
        frame, tip = _dowel(fastening, frame, entries)
        entries = tuple(entries_of(fastening, frame, pieces))
    nut_at, aside, nuts = nut_of(fastening, frame, entries, pieces)
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
                frame = along(added(at, scaled(leg.normal, over)), scaled(leg.normal, -1.0))
                yield Body(item=fastening.by, role=Role.SHANK, frame=frame)
