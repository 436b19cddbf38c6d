"""Checks of screws, dowels, inserts and bores that fastenings state: what holds, what splits."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from kerfolio.assembly.bores import bores_of
from kerfolio.assembly.building import Build
from kerfolio.assembly.fastened import Entry, PosedFastening, room_in
from kerfolio.basis.finding import Axial, Beside, Finding, Measured, Severity, error, note, warning
from kerfolio.basis.measures import length, precise
from kerfolio.basis.said import Text, named, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.rigid import length as size_of
from kerfolio.geometry.shapes import polygon
from kerfolio.model.fastening import BRACKETED, CLAMPED, CROSS_NUT, DOWELLED, INSERTED, SCREWED
from kerfolio.model.feature_kind import BORE, HOLE
from kerfolio.model.stock import SheetStock
from kerfolio.proving.in_place import InPlace, Line, across, along, at_points, beside
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after, together
from kerfolio.proving.screws import BEFORE_FACE, FROM_EDGE
from kerfolio.settling.bored import bores_of_part
from kerfolio.settling.fastened import Seat, fastenings_of
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.shop.pilots import pilot_in, pull_of

SHARE = 0.5
"""Of a sheet's thickness, how wide a bore into its edge is at most (a dowel maker's page)."""

WALL = 2.0
"""Wood beside a bore on every side, mm, at least (common practice, no single source)."""

IN_EDGE = 5.0
"""How many diameters of a screw bite in an edge (common practice, no single source)."""

PILOT_DEEP = 2 / 3
"""How much of a screw's bite its pilot hole reaches (common practice, no single source)."""

DOWEL_WIDER = 0.3
"""A dowel's hole may be wider than the dowel by so much, mm: 8.1 to 8.2 for 8 by dowel makers'
pages, and the step of a drill."""

DOWEL_DEEP = 1.0
"""How many diameters a dowel reaches into either piece (common practice, no single source)."""

INSERT_OFF = 0.5
"""By so much, mm, an insert's hole may differ from what is usual (shop practice, from memory)."""


@after(
    "bore-share",
    reason="A wide bore leaves an edge too little wood.",
    source="never over half of the thickness: a dowel maker's technical page",
    severity=Severity.WARNING,
)
def bores_slim(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bores wider than a share of the sheet is thick."""
    for part, bore in _bores(settled):
        wide = bore.width.value
        if wide > SHARE * part.thickness + SAME:
            sizes = precise("width", wide), precise("thickness", part.thickness)
            called = named(f"{part.name}.{bore.name}")
            message = said("bore {} is {} wide in an edge of {}", called, *sizes)
            most = precise("most", SHARE * part.thickness)
            advice = said("Take a slimmer fastening, {} at most: half of the sheet.", most)
            what = _alone(settled, part, bore, across(0.0, wide, "wide"))
            yield warning("bore-share", message, bore.place, advice, **what)


@after(
    "bore-breaks-out",
    reason="A bore stays in the wood on all sides, whatever a hand is off.",
    source=COMMON_PRACTICE,
    also=("bore-meets-opening",),
)
def bores_stay_in(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bores that come out at a face or at another edge, or run into an opening."""
    for part, bore in _bores(settled):
        place, deep = bore.place, bore.length.value
        called = named(f"{part.name}.{bore.name}")
        assert bore.level is not None, "every bore has its level"
        half = bore.width.value / 2
        off = 0.0 if _guided(settled, part, bore) else settled.plan.hand.at(bore.length.value)
        faces = {"back": bore.level.value, "show face": part.thickness - bore.level.value}
        for face, away in faces.items():
            if away - half < off + SAME:
                left = precise("wood", away - half)
                message = said("{} leaves {} of wood to the " + face, called, left)
                advice: Text = "A hand is off by more: bore half way through, or slimmer."
                side = -1 if face == "back" else 1
                word = "of wood" if away > half else "out of the face"
                line = ((deep, side * half), (deep, side * away), word)
                what = _alone(settled, part, bore, line)
                yield error("bore-breaks-out", message, place, advice, **what)
        solid = Region(part.plain.outer)
        if not contains(solid, _wider(bore, WALL)):
            wall = length("least", WALL)
            message = said("{} comes within {} of another edge", called, wall)
            advice = "Move it along its edge, or bore it less deep."
            what = _alone(settled, part, bore, across(deep, 2 * half, "wide"), flat=True)
            yield error("bore-breaks-out", message, place, advice, **what)
        nuts = _for_nuts(settled, part)
        for other in part.features:
            if other.name not in nuts and _is_met(bore, other, part):
                opening = named(f"{part.name}.{other.name}")
                message = said("{} runs into {} {}", called, other.kind.name, opening)
                advice = "Move one of them: only a hole for a barrel nut is to be met."
                what = _alone(settled, part, bore, along(0.0, deep, "deep"), flat=True)
                yield error("bore-meets-opening", message, place, advice, **what)


def _bores(settled: SettledPlan) -> Iterator[tuple[SettledPart, SettledFeature]]:
    for part in settled.parts:
        yield from ((part, each) for each in bores_of_part(part))


def _alone(
    settled: SettledPlan,
    part: SettledPart,
    bore: SettledFeature,
    line: Line,
    *,
    flat: bool = False,
) -> Beside:
    """Return what a finding on a bore has besides its words, with what its picture measures."""
    axial = Axial(
        bore=f"{part.name}.{bore.name}",
        at=(line[0][0] + line[1][0]) / 2,
        measured=Measured(a=line[0], b=line[1], word=line[2]),
        flat=flat,
        variant=settled.variant.label,
    )
    return {**about(settled, part, bore), "axial": axial}


def _guided(settled: SettledPlan, part: SettledPart, bore: SettledFeature) -> bool:
    stated = settled.plan.part(part.name).features
    name = bore.name.partition(".")[0]
    return any(each.name == name and getattr(each.cutting, "guided", False) for each in stated)


def _wider(bore: SettledFeature, by: float) -> Contour:
    """Return the outline of a bore on the face with so much more beside it, not at its mouth."""
    (x, y), (ux, uy) = bore.at, bore.direction
    half, deep = bore.width.value / 2 + by, bore.length.value + by
    return polygon(
        [
            (x - aside * uy - inward * ux, y + aside * ux - inward * uy, 0.0)
            for aside, inward in ((-half, 0.0), (half, 0.0), (half, deep), (-half, deep))
        ]
    )


def _for_nuts(settled: SettledPlan, part: SettledPart) -> frozenset[str]:
    """Return the holes of a part that barrel nuts lie in: those are to be met.

    Where a nut's own is not known, that is told, and any may be meant.
    """
    labels = {each.label for each in part.pieces}
    nuts = [e for e in fastenings_of(settled) if e.nut is not None and e.nut.kind == CROSS_NUT]
    if any(each.cross is None and each.last.piece in labels for each in nuts):
        return frozenset(each.name for each in part.features if each.kind is HOLE)
    crosses = (each.cross for each in nuts if each.cross and each.cross.piece in labels)
    named_for = (e.feature for e in bores_of(settled, part) if e.item.kind == CROSS_NUT)
    features = (*(each.feature for each in crosses), *named_for)
    return frozenset(each.name for each in features if each is not None)


def _is_met(bore: SettledFeature, other: SettledFeature, part: SettledPart) -> bool:
    """Tell whether a bore runs into something else that is taken away, or into another bore."""
    if other is bore or other.kind.interlocks:
        return False
    assert bore.level is not None, "every bore has its level"
    if other.kind is BORE:
        assert other.level is not None, "every bore has its level"
        high = abs(other.level.value - bore.level.value)
        reach = (bore.width.value + other.width.value) / 2
        return (
            high < reach - SAME
            and bore.name < other.name
            and intersects(_wider(bore, 0.0), _wider(other, 0.0))
        )
    if not (other.kind.opens or other.depth is not None):
        return False
    floor = part.thickness - other.depth.value if other.depth is not None else 0.0
    return bore.level.value + bore.width.value / 2 > floor + SAME and any(
        each.closed and intersects(_wider(bore, 0.0), each) for each in other.shape
    )


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


@together(
    "dowel-unfit",
    reason="A dowel is as wide as its holes, and reaches into both pieces.",
    source="dowel makers' technical pages; common practice, no single source",
    severity=Severity.WARNING,
    also=("insert-unfit",),
)
def dowels_fit(build: Build) -> Iterator[Finding]:
    """Look for dowels and inserts in holes that are not for them."""
    return at_points(build, _dowelled)


def _dowelled(there: InPlace) -> Iterator[Finding]:
    settled, place = there.posed.settled, there.posed.settled.stated.place
    thread = settled.item.thread or 0.0
    for seat in settled.seats if settled.kind is DOWELLED else ():
        if seat.diameter is None:
            continue
        joint = there.posed.entries[-1].along if there.posed.entries else 0.0
        deep = -room_in(seat) if seat == settled.first else room_in(seat)
        what = there.about(seat, across(joint + deep / 2, seat.diameter, "wide"))
        wide = precise("width", seat.diameter)
        if not -SAME <= seat.diameter - thread <= DOWEL_WIDER + SAME:
            message = said("{} is {} wide for `{}`", seat.called, wide, there.item)
            least, most = precise("least", thread), precise("most", thread + DOWEL_WIDER)
            advice = said("Bore {} to {}.", least, most)
            yield warning("dowel-unfit", message, place, advice, **what)
        if room_in(seat) < DOWEL_DEEP * thread - SAME:
            depth = length("depth", room_in(seat))
            message = said("{} is {} deep for `{}`", seat.called, depth, there.item)
            advice = said("Bore {} at least, one diameter.", length("least", DOWEL_DEEP * thread))
            what = there.about(seat, along(joint, joint + deep, "deep"))
            yield warning("dowel-unfit", message, place, advice, **what)
    inserts = [settled.item] if settled.kind is INSERTED else []
    inserts += [settled.nut] if settled.nut is not None and settled.nut.kind == "insert" else []
    for item in inserts:
        seat = settled.last
        usual = item.pilot or item.clearance
        if usual is None or seat.diameter is None:
            continue
        if abs(seat.diameter - usual) > INSERT_OFF + SAME:
            sizes = precise("width", seat.diameter), precise("usual", usual)
            message = said("{} is {} wide for `{}`", seat.called, sizes[0], item.name)
            advice = said("{} is usual; take what its maker states.", sizes[1])
            yield warning("insert-unfit", message, place, advice, **there.about(seat))
