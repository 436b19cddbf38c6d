"""Checks of screws: what holds, what splits, what comes out."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from kerfolio.assembly.building import Build
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.fastening_axis import Entry, room_in
from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.measures import length, precise
from kerfolio.basis.said import Text, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.rigid import length as size_of
from kerfolio.model.fastening import BRACKETED, CLAMPED, SCREWED
from kerfolio.model.stock import SheetStock
from kerfolio.proving.in_place import InPlace, across, along, at_points, beside
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, together
from kerfolio.proving.screws import BEFORE_FACE, FROM_EDGE
from kerfolio.settling.fastened import Seat
from kerfolio.shop.pilots import pilot_in, pull_of

IN_EDGE = 5.0
"""How many diameters of a screw bite in an edge (common practice, no single source)."""

PILOT_DEEP = 2 / 3
"""How much of a screw's bite its pilot hole reaches (common practice, no single source)."""


@together(
    "screw-out",
    reason="A screw's point stays in the wood.",
    source=OWN_FIGURES,
)
def points_stay_in(build: Build) -> Iterator[Finding]:
    """Look for screws that come out at the far face."""
    return at_points(build, _coming_out)


def _coming_out(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    place = settled.stated.place
    if settled.kind in (BRACKETED, CLAMPED) and settled.by is not None:
        for seat in settled.seats:
            metal = settled.item.thickness or 0.0
            over = (settled.by.length or 0.0) - metal + BEFORE_FACE - room_in(seat)
            if not seat.into_edge and over > SAME:
                out = length("over", over)
                message = said("`{}` is {} too long for {}", settled.by.name, out, seat.called)
                advice: Text = "Take a shorter screw: it comes out at the other face."
                yield error("screw-out", message, place, advice, **there.about(seat))
        return
    if settled.kind is SCREWED and settled.last.board is not None:
        yield from _through_board(there)
    for entry in _bitten(posed):
        if entry.seat.into_edge:
            continue
        over = posed.tip - entry.along - _thickness(entry.seat) + BEFORE_FACE
        if over > SAME:
            out = length("over", over)
            message = said("`{}` is {} too long for {}", there.item, out, entry.seat.called)
            advice = "It comes out at the far face: take a shorter one, or sink its head less."
            face = entry.along + _thickness(entry.seat)
            word = "left" if face > posed.tip else "out"
            what = there.about(entry.seat, along(posed.tip, face, word))
            yield error("screw-out", message, place, advice, **what)


def _through_board(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    grip = room_in(settled.first) - settled.first.sunk
    over = posed.tip - grip - room_in(settled.last) + BEFORE_FACE
    if over > SAME:
        message = said(
            "`{}` is {} too long for {}", there.item, length("over", over), settled.last.called
        )
        advice = "It comes out at the far face: take a shorter one."
        place = settled.stated.place
        yield error("screw-out", message, place, advice, **there.about(settled.first))


def _thickness(seat: Seat) -> float:
    assert seat.part is not None, "boards have no place"
    return seat.part.thickness


def _bitten(posed: PosedFastening) -> tuple[Entry, ...]:
    """Return how a screw meets what it holds in; nothing of what is no screw."""
    settled = posed.settled
    in_piece = settled.kind is SCREWED and settled.last.part is not None
    return posed.entries[-1:] if in_piece else ()


def _bite(posed: PosedFastening, entry: Entry) -> float:
    return posed.tip - entry.along


@together(
    "screw-bites-little",
    reason="A screw holds by the thread that is in the second piece.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
    also=("pilot-shallow",),
)
def screws_hold(build: Build) -> Iterator[Finding]:
    """Look for screws with little thread in what they hold on."""
    return at_points(build, _biting)


def _biting(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    for entry in _bitten(posed):
        seat, place, thread = entry.seat, settled.stated.place, settled.item.thread or 0.0
        bite = _bite(posed, entry)
        least = IN_EDGE * thread if seat.into_edge else _thickness(seat) / 2
        if bite < least - SAME:
            figures = length("short", least - bite), length("bite", max(0.0, bite))
            message = said(
                "`{}` bites {} too little in {}: {}",
                there.item,
                figures[0],
                seat.called,
                figures[1],
            )
            wanted = "five diameters into an edge" if seat.into_edge else "half of the sheet"
            advice = said(
                "Take a longer one, or sink its head: " + wanted + ", {}.", length("least", least)
            )
            bitten = along(entry.along, posed.tip, "in it" if bite > 0 else "short")
            what = there.about(seat, bitten)
            yield warning("screw-bites-little", message, place, advice, **what)
        elif seat.is_bore and room_in(seat) < PILOT_DEEP * bite - SAME:
            deep = length("depth", room_in(seat)), length("bite", bite)
            message = said("{} is {} deep for a bite of {}", seat.called, *deep)
            advice = said("Bore {} at least, or it splits.", length("least", PILOT_DEEP * bite))
            bottom = along(entry.along, entry.along + room_in(seat), "deep")
            yield warning("pilot-shallow", message, place, advice, **there.about(seat, bottom))


@together(
    "pilot-unfit",
    reason="A narrow pilot splits, a wide one does not hold; a board's edge is no softwood.",
    source="a plate of pilot holes citing AWC; edges of boards: common practice, no published rule",
    severity=Severity.WARNING,
    also=("pilot-unbored",),
)
def pilots_fit(build: Build) -> Iterator[Finding]:
    """Look for pilot holes too narrow or too wide for the material, or missing."""
    return at_points(build, _piloted)


def _piloted(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    for entry in _bitten(posed):
        seat, place, thread = entry.seat, settled.stated.place, settled.item.thread
        stock = _stock(there, seat)
        if thread is None or stock is None:
            continue
        pilot = pilot_in(stock, edge=seat.into_edge)
        least, most = precise("least", pilot.least * thread), precise("most", pilot.most * thread)
        usual = settled.item.pilot if settled.item.kind != "screw" else None
        if seat.diameter is None:
            message = said("`{}` goes into {} without a pilot hole", there.item, seat.called)
            advice = said("State a `bore` there, {} to {} wide: " + pilot.why + ".", least, most)
            yield warning("pilot-unbored", message, place, advice, **there.about(seat))
            continue
        if usual is not None:  # a connector: its own pilot, whatever the material
            least, most = precise("least", usual - 0.25), precise("most", usual + 0.25)
            fits = abs(seat.diameter - usual) <= 0.25 + SAME
        else:
            fits = pilot.least - 1e-3 <= seat.diameter / thread <= pilot.most + 1e-3
        if not fits:
            wide = precise("width", seat.diameter)
            narrow = "narrow" if seat.diameter < pilot.least * thread else "wide"
            message = said("{} is too " + narrow + " for `{}`: {}", seat.called, there.item, wide)
            advice = said("Bore {} to {} here (" + pilot.why + ").", least, most)
            opening = across(entry.along, seat.diameter, "wide")
            yield warning("pilot-unfit", message, place, advice, **there.about(seat, opening))


def _stock(there: InPlace, seat: Seat) -> SheetStock | None:
    return there.settled.sheet(seat.part.sheet).stock if seat.part else None


@together(
    "screw-splits",
    reason="A screw near a face or an end of the edge it goes into splits it.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def edges_hold(build: Build) -> Iterator[Finding]:
    """Look for screws into edges with too little wood on either side."""
    return at_points(build, _splitting)


def _splitting(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    for entry in _bitten(posed):
        seat, thread = entry.seat, settled.item.thread or 0.0
        if not seat.into_edge or seat.part is None:
            continue
        x, y, level = there.pose(seat).pose.inverse.point(
            posed.frame.point((0.0, 0.0, entry.along))
        )
        least = FROM_EDGE * thread
        to_end = _to_end(seat, (x, y))
        ways = {
            (0.0, 0.0, -1.0): level,
            (0.0, 0.0, 1.0): seat.part.thickness - level,
            to_end: size_of(to_end),
        }
        way = min(ways, key=lambda each: ways[each])
        away = ways[way]
        if away < least - SAME:
            near = length("distance", away)
            message = said("`{}` is {} from an edge of {}", there.item, near, seat.called)
            advice = said("Keep {}, two diameters: take a thinner screw.", length("least", least))
            place = settled.stated.place
            aside = there.pose(seat).pose.vector(way)
            what = there.about(seat, beside(entry.along, away, "away"), aside=aside)
            yield warning("screw-splits", message, place, advice, **what)


def _to_end(seat: Seat, at: tuple[float, float]) -> Vector:
    """Return the way from a point on a straight edge to the nearer end of that, mm, in its part."""
    assert seat.part is not None
    ux, uy, _ = seat.inward
    along_edge = (-uy, ux)
    found = [
        (vx - at[0]) * along_edge[0] + (vy - at[1]) * along_edge[1]
        for vx, vy, _ in seat.part.plain.outer.vertices
        if abs((vx - at[0]) * ux + (vy - at[1]) * uy) < 0.01
    ]
    far = min(found, key=abs, default=hypot(*seat.part.size))
    return along_edge[0] * far, along_edge[1] * far, 0.0


@together(
    "screw-pull-unknown",
    reason="Where nobody has published how a screw holds, nobody should reckon with it.",
    source="NDS for wood screws and the Wood Handbook tell side and end grain of wood alone",
    severity=Severity.NOTE,
)
def pulls_known(build: Build) -> Iterator[Finding]:
    """Look for screws into what no published rule covers, such as the edge of plywood."""
    return at_points(build, _pulled)


def _pulled(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    for entry in _bitten(posed) if settled.number == 1 else ():
        stock, thread = _stock(there, entry.seat), settled.item.thread
        if stock is None or thread is None:
            continue
        pull = pull_of(stock, thread, _bite(posed, entry), edge=entry.seat.into_edge)
        if pull.allowed is None:
            message = said("how `{}` holds in {} is not known", there.item, entry.seat.called)
            advice = f"{pull.source[:1].upper()}{pull.source[1:]}: let tabs or dowels bear, try it."
            what = there.about(entry.seat)
            yield note("screw-pull-unknown", message, settled.stated.place, advice, **what)
