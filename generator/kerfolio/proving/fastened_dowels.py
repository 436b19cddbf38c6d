"""Checks of dowels and inserts: as wide as their holes, and deep enough in them."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.building import Build
from kerfolio.assembly.fastening_axis import room_in
from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length, precise
from kerfolio.basis.said import said
from kerfolio.basis.tolerance import SAME
from kerfolio.model.fastening import DOWELLED, INSERTED
from kerfolio.proving.in_place import InPlace, across, along, at_points
from kerfolio.proving.rule import together

DOWEL_WIDER = 0.3
"""A dowel's hole may be wider than the dowel by so much, mm: 8.1 to 8.2 for 8 by dowel makers'
pages, and the step of a drill."""

DOWEL_DEEP = 1.0
"""How many diameters a dowel reaches into either piece (common practice, no single source)."""

INSERT_OFF = 0.5
"""By so much, mm, an insert's hole may differ from what is usual (shop practice, from memory)."""


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
