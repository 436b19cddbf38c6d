"""Checks of what is fixed to a wall: is it behind, do its holes meet the studs in it?"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from kerfolio.assembly.building import Build
from kerfolio.assembly.extent import box_around
from kerfolio.assembly.fastening_axis import room_in
from kerfolio.assembly.wall import wall_behind
from kerfolio.assembly.wall_holes import (
    INCH_STUDS,
    METRIC_STUDS,
    FixingHole,
    fixing_holes,
    studs_met,
)
from kerfolio.basis.finding import Finding, Severity, error, note
from kerfolio.basis.measures import length
from kerfolio.basis.said import Text, Words, enumerated, said
from kerfolio.model.fastening import INTO_WALL
from kerfolio.model.use import WALL
from kerfolio.proving.in_place import InPlace, along
from kerfolio.proving.naming import pieces_of
from kerfolio.proving.rule import (
    COMMON_PRACTICE,
    OUR_FORM,
    OWN_FIGURES,
    Stated,
    before,
    together,
)

_MOST = 3
_APART = 0.5  # mm: holes over one another are at one place, and what is nearer to a wall is on it
_STRAIGHT_BACK = 0.99


@together(
    "holes-miss-studs",
    reason="A screw beside a stud holds in plaster alone.",
    source=f"{COMMON_PRACTICE}; 16 and 24 in: International Residential Code, table R602.3(5)",
    severity=Severity.NOTE,
)
def holes_meet_studs(build: Build) -> Iterator[Finding]:
    """Look for fixing holes of what hangs on a wall that meet no two studs as commonly spaced."""
    plan = build.settled.plan
    holes = fixing_holes(build.settled, build.drawn.assembled) if plan.placed == WALL else ()
    gaps = _gaps(holes)
    if not gaps or studs_met(holes):
        return
    first = holes[0]
    apart = enumerated([said("{}", length("apart", each)) for each in gaps[:_MOST]])
    message = said("holes for the wall are {} apart, and no two meet studs", apart)
    advice = said(
        "Studs stand {} apart by common practice, and {} by a building code: bore two that far "
        "apart, or fix a batten across the studs.",
        _listed(METRIC_STUDS),
        _listed(INCH_STUDS),
    )
    subject = f"{first.piece}.{first.feature}"
    yield note("holes-miss-studs", message, plan.place, advice, subject=subject)


@before(
    "wall-unsaid",
    reason="What is screwed to a wall is placed at one: cautions and pictures follow that.",
    source=OUR_FORM,
)
def wall_stated(stated: Stated) -> Iterator[Finding]:
    """Look for fastenings into a wall in a plan that is not placed at one."""
    for each in stated.plan.fastenings:
        last = each.joins[-1]
        into_wall = last.name == INTO_WALL and INTO_WALL not in pieces_of(stated.plan)
        if into_wall and stated.plan.placed != WALL:
            message = f"`{each.item.name}` goes into a wall, and the plan stands at none"
            advice = "Write `placed: wall`."
            yield error("wall-unsaid", message, last.place, advice, subject=each.item.name)


@together(
    "wall-not-behind",
    reason="A screw goes back into the wall, from a piece that lies against it.",
    source=OWN_FIGURES,
)
def wall_is_behind(build: Build) -> Iterator[Finding]:
    """Look for fastenings into a wall that is not behind the piece they are in."""
    wall = wall_behind(build.settled, build.drawn.assembled)
    if wall is None:
        return
    for each in build.placed.fastenings:
        settled = each.settled
        if not settled.last.is_wall:
            continue
        piece = build.drawn.assembled.piece(settled.seats[-2].piece)
        place = settled.stated.place
        subject, seat = settled.first.name, settled.seats[-2]
        there = InPlace(posed=each, settled=build.settled, pieces=build.drawn.assembled.pieces)
        away = wall.at - box_around([piece])[1][1]
        if each.direction[1] < _STRAIGHT_BACK:
            message = said("`{}` in {} does not go to the rear", settled.item.name, subject)
            advice: Text = "The wall is behind the whole: write `head: back`, or turn the whole."
            yield error("wall-not-behind", message, place, advice, **there.about(seat))
        elif away > _APART:
            off = length("distance", away)
            message = said("`{}` stands {} off the wall that it is screwed to", piece.label, off)
            advice = "Put a board there and screw into that: `boards:` with `lies`."
            face = room_in(seat) - seat.sunk
            what = there.about(seat, along(face, face + away, "off the wall"))
            yield error("wall-not-behind", message, place, advice, **what)


def _gaps(holes: tuple[FixingHole, ...]) -> list[float]:
    """Return how far holes beside each other are apart, each distance once."""
    places = [holes[0].across] if holes else []
    for each in holes:
        if each.across - places[-1] > _APART:
            places.append(each.across)
    gaps = [b - a for a, b in pairwise(places)]
    return [gap for i, gap in enumerate(gaps) if all(abs(gap - g) > _APART for g in gaps[:i])]


def _listed(spacings: tuple[float, ...]) -> Words:
    return enumerated([said("{}", length("stud", each)) for each in spacings])
