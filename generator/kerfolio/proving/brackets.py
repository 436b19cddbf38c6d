"""Checks of brackets and clamps in their place: what they lie on, what they span."""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

from kerfolio.assembly.bracketed import Leg, PosedBracket
from kerfolio.assembly.building import Build
from kerfolio.basis.finding import Beside, Finding, Severity, error, warning
from kerfolio.basis.measures import length
from kerfolio.basis.said import Text, Words, enumerated, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.boolean import contains, intersects
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds, point_in
from kerfolio.geometry.near import line_distance
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.shapes import circle, polygon
from kerfolio.model.fastening import BRACKETED, CLAMPED
from kerfolio.proving.in_place import InPlace, about_seat, at_points
from kerfolio.proving.marks import about_spots
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, together
from kerfolio.proving.screws import FROM_EDGE
from kerfolio.settling.fastened import Seat, SettledFastening, fastenings_of
from kerfolio.settling.settled import SettledPart, SettledPlan

OFF = 0.5
"""A bracket's hole may lie so far beside the hole under it, mm, besides the screw's play in it: it
is marked and drilled by hand (common practice, no single source)."""

PAD = 8.0
"""How wide the wood is, mm, that a jaw presses on at least (common practice, no single source)."""


@together(
    "bracket-askew",
    reason="A bracket is bent at a right angle: it holds in a square corner of two faces.",
    source=OWN_FIGURES,
)
def corners_square(build: Build) -> Iterator[Finding]:
    """Look for brackets without a square corner before their holes."""
    for each in build.placed.fastenings:
        settled = each.settled
        bare = settled.item.leg is None or each.bracket is not None or settled.number > 1
        if settled.kind is BRACKETED and not bare:
            first, last = settled.first.called, settled.last.called
            message = said("`{}` has no square corner at {} and {}", settled.item.name, first, last)
            advice = (
                "Its legs lie on two faces at a right angle, the holes of both before the other: "
                "move the holes, or take screws."
            )
            what = about_seat(build.settled, settled.first)
            yield error("bracket-askew", message, settled.stated.place, advice, **what)


@together(
    "bracket-off-face",
    reason="A leg holds by the face under it.",
    source=OWN_FIGURES,
    also=("bracket-over-opening", "bracket-hole-off"),
)
def legs_lie(build: Build) -> Iterator[Finding]:
    """Look for legs past an edge or over an opening, and for holes that miss those under them."""
    return at_points(build, _lying)


def _lying(there: InPlace) -> Iterator[Finding]:
    bracket = there.posed.bracket
    if bracket is None or there.posed.settled.number > 1:
        return
    for leg in bracket.legs:
        yield from _seated(there, bracket, leg)
        yield from _bored(there, bracket, leg)


def _seated(there: InPlace, bracket: PosedBracket, leg: Leg) -> Iterator[Finding]:
    seat, place = leg.seats[0], there.posed.settled.stated.place
    part = seat.part
    assert part is not None, "a leg lies on a part"
    corners = leg.outline((bracket.item.width or 0.0) - 2 * SAME)
    over = _past_edge(corners, part)
    if over > SAME:
        out = length("over", over)
        message = said("a leg of `{}` reaches {} past `{}`", there.item, out, seat.piece)
        advice = "Move its holes in from the edge, or take a smaller bracket."
        yield error("bracket-off-face", message, place, advice, **there.about(seat))
    under = polygon([(x, y, 0.0) for x, y in corners])
    own = {each.feature.name for each in leg.seats if each.feature}
    for name, opening in _openings(part, leg):
        if name not in own and intersects(under, opening):
            message = said("a leg of `{}` lies over `{}.{}`", there.item, seat.piece, name)
            advice = "Move one of them: the metal wants wood under all of it."
            yield error("bracket-over-opening", message, place, advice, **there.about(seat))


def _past_edge(corners: tuple[Point, ...], part: SettledPart) -> float:
    """Return how far the corners of a leg lie past the edge of its part, mm."""
    outer = part.plain.outer
    if contains(Region(outer), polygon([(x, y, 0.0) for x, y in corners])):
        return 0.0
    out = (line_distance(each, outer) for each in corners if not point_in(outer, each))
    return max(out, default=2 * SAME)


def _openings(part: SettledPart, leg: Leg) -> Iterator[tuple[str, Contour]]:
    """Yield what opens the face that a leg lies on; what a joint fills is none."""
    for each in part.features:
        through = each.kind.opens and each.depth is None
        cut_there = each.depth is not None and leg.level > 0
        if not each.kind.interlocks and (through or cut_there):
            yield from ((each.name, contour) for contour in each.shape if contour.closed)


def _bored(there: InPlace, bracket: PosedBracket, leg: Leg) -> Iterator[Finding]:
    item, by = bracket.item, there.posed.settled.by
    spots = [leg.hole(at) for at in item.holes if at < leg.reach]
    play = max(0.0, (item.clearance or 0.0) - ((by.thread if by else None) or 0.0)) / 2
    for seat in leg.seats if spots else ():
        x, y, _ = seat.mouth
        off = min(dist((x, y), each) for each in spots)
        if off > OFF + play + SAME:
            away = length("off", off)
            message = said("{} is {} from the hole of `{}`", seat.called, away, item.name)
            places = [said("{}", length("at", at)) for at in item.holes if at < leg.reach]
            advice = said("Bore {} from the corner, in its middle.", enumerated(places))
            place = there.posed.settled.stated.place
            yield error("bracket-hole-off", message, place, advice, **there.about(seat))


@together(
    "bracket-splits",
    reason="A screw near an edge splits it.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def screws_keep_off_edges(build: Build) -> Iterator[Finding]:
    """Look for screws of brackets with too little wood beside them."""
    return at_points(build, _splitting)


def _splitting(there: InPlace) -> Iterator[Finding]:
    posed = there.posed
    by = posed.settled.by
    if posed.bracket is None or by is None or by.thread is None:
        return
    least = FROM_EDGE * by.thread
    for seat in posed.settled.seats:
        if not seat.is_hole or seat.part is None:
            continue
        x, y, _ = seat.mouth
        near = line_distance((x, y), seat.part.plain.outer)
        if near < least - SAME:
            away = length("distance", near)
            message = said("`{}` is {} from an edge at {}", by.name, away, seat.called)
            advice = said("Keep {}, two diameters of the screw.", length("least", least))
            place = posed.settled.stated.place
            yield warning("bracket-splits", message, place, advice, **there.about(seat))


@together(
    "clamp-askew",
    reason="A clamp holds between two faces that look away from each other.",
    source=OWN_FIGURES,
)
def jaws_face(build: Build) -> Iterator[Finding]:
    """Look for clamps on faces that do not look away from each other."""
    posed = build.placed.fastenings
    held = {each.settled.stated.place for each in posed if each.clamp and each.clamp.grip > SAME}
    there = {each.label for each in build.drawn.assembled.pieces}
    for each in fastenings_of(build.settled):
        first = each.first
        placed = there.issuperset(each.pieces) and (first.face or first.side)
        if each.kind is CLAMPED and placed and each.stated.place not in held:
            message = said("`{}` slips: {} and {} look not away from each other", *_ends(each))
            advice = "Name the outer faces of what it clamps: `joins: [top.show, rail.bottom]`."
            what = _on_face(build.settled, first, each.at)
            yield error("clamp-askew", message, each.stated.place, advice, **what)


def _on_face(settled: SettledPlan, seat: Seat, at: Point | None) -> Beside:
    """Return what a finding on a face has besides its words: a ring where a jaw presses."""
    assert seat.part is not None, "a clamp presses on pieces"
    box = bounds(seat.part.plain.outer)
    spot = at or ((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2)
    return about_spots(settled, seat.part, (spot,), PAD / 2)


def _ends(each: SettledFastening) -> tuple[str, Words, Words]:
    return each.item.name, each.first.called, each.last.called


@together(
    "clamp-narrow",
    reason="A clamp opens so far, and reaches so far in from an edge.",
    source=OWN_FIGURES,
    also=("clamp-short", "clamp-in-air"),
)
def jaws_span(build: Build) -> Iterator[Finding]:
    """Look for clamps that do not span what they clamp, do not reach it, or press on no wood."""
    return at_points(build, _spanned)


def _spanned(there: InPlace) -> Iterator[Finding]:
    clamp, settled = there.posed.clamp, there.posed.settled
    if clamp is None or clamp.grip <= SAME:
        return
    place, first = settled.stated.place, settled.first
    x, y, _ = there.pose(first).pose.inverse.point(clamp.frame.origin)
    what = _on_face(there.settled, first, (x, y))
    opening, reach = clamp.item.opening, clamp.item.reach
    if opening is not None and clamp.grip > opening + SAME:
        sizes = length("grip", clamp.grip), length("opening", opening)
        message = said("`{}` is to span {} and opens {}", there.item, *sizes)
        advice: Text = "Take a larger clamp, or clamp fewer pieces at once."
        yield error("clamp-narrow", message, place, advice, **what)
    if reach is not None and clamp.deep > reach + SAME:
        sizes = length("deep", clamp.deep), length("reach", reach)
        message = said("`{}` is to press {} in from an edge and reaches {}", there.item, *sizes)
        advice = "Move it towards an edge with `at`, or take a deeper clamp."
        yield error("clamp-short", message, place, advice, **what)
    for seat, spot in ((first, clamp.frame.origin), (settled.last, clamp.other)):
        if not _bears(there, seat, spot):
            message = said("a jaw of `{}` presses on no wood of {}", there.item, seat.called)
            advice = said("Move it with `at`: {} of wood round it.", length("pad", PAD))
            x, y, _ = there.pose(seat).pose.inverse.point(spot)
            what = _on_face(there.settled, seat, (x, y))
            yield error("clamp-in-air", message, place, advice, **what)


def _bears(there: InPlace, seat: Seat, spot: Vector) -> bool:
    """Tell whether a jaw has wood under it, on a face so wide all round, on a side along it."""
    part = seat.part
    assert part is not None, "a clamp presses on pieces"
    x, y, level = there.pose(seat).pose.inverse.point(spot)
    if seat.side:
        on = line_distance((x, y), part.plain.outer) < PAD / 2
        return on and -SAME < level < part.thickness + SAME
    return contains(part.plain, circle((x, y), PAD))
