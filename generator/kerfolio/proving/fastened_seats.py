"""Checks of what fastenings share a seat with, bear on and catch in: holes, washers, inserts."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from kerfolio.assembly.building import Build
from kerfolio.assembly.fastening_axis import room_in
from kerfolio.basis.finding import Axial, Beside, Finding, Severity, error, warning
from kerfolio.basis.measures import precise
from kerfolio.basis.said import said
from kerfolio.basis.tolerance import SAME
from kerfolio.model.fastening import BOLTED, BRACKETED, CLAMPED, INSERTED, SCREWED
from kerfolio.proving.in_place import InPlace, about_seat, across, along, at_points
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, after, together
from kerfolio.settling.fastened import Seat, SettledFastening, fastenings_of
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.hardware_size import hardware_size
from kerfolio.shop.screw import BOARDS

WIDE_HEAD = 2.5
"""A head so many diameters of its thread wide needs no washer (common practice)."""

SNUG = 0.1
"""A hole may be narrower than a shank by so much, mm, and still let it through (drills)."""


@after(
    "fastening-shared",
    reason="Two pieces of hardware cannot be in one hole.",
    source=OUR_FORM,
)
def seats_apart(settled: SettledPlan) -> Iterator[Finding]:
    """Look for holes and bores that two fastenings are to go into, both from the same end.

    What is held by screws of its own lies over them, and an insert is there for its bolt.
    """
    alone = [e for e in fastenings_of(settled) if e.kind not in (BRACKETED, CLAMPED, INSERTED)]
    told: set[tuple[object, object]] = set()
    for one, other in combinations(alone, 2):
        seat = next((each for each in other.seats if _is_taken(each, one, other)), None)
        pair = one.stated.place, other.stated.place
        if seat is not None and pair not in told:
            told.add(pair)
            items = one.item.name, other.item.name
            message = said("`{}` and `{}` both go into {}", *items, seat.called)
            advice = "Take one of the two out, or name another hole."
            axial = Axial(
                place=other.stated.place, number=other.number, variant=settled.variant.label
            )
            what: Beside = {**about_seat(settled, seat), "axial": axial}
            yield error("fastening-shared", message, other.stated.place, advice, **what)


def _is_taken(seat: Seat, one: SettledFastening, other: SettledFastening) -> bool:
    """Tell whether a seat of one fastening is filled by another: a through hole from its head."""
    if seat.feature is None or all(each.name != seat.name for each in one.seats):
        return False
    ends = seat.feature.depth is not None
    return ends or seat.name == one.first.name == other.first.name


@together(
    "washer-missing",
    reason="A small head or nut is drawn into a board of fibres, and works loose there.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def washers_bear(build: Build) -> Iterator[Finding]:
    """Look for heads and nuts that bear on fibreboard without a washer."""
    return at_points(build, _bearing)


def _bearing(there: InPlace) -> Iterator[Finding]:
    settled = there.posed.settled
    if settled.kind is not BOLTED:
        return
    size, thread = hardware_size(settled.item), settled.item.thread or 0.0
    head = settled.item.head_diameter or (size.wide if size else 0.0)
    wide = head >= WIDE_HEAD * thread
    bare = [(settled.first, "head", "washer")] if settled.washer is None and not wide else []
    if settled.nut is not None and settled.nut.kind in ("nut", "lock-nut"):
        bare += [(settled.last, "nut", "under-nut")] if settled.under_nut is None else []
    for seat, what, key in bare:
        stock = there.settled.sheet(seat.part.sheet).stock if seat.part else None
        if stock is not None and stock.family in BOARDS:
            items = there.item, stock.title, seat.called
            message = said("the " + what + " of `{}` bears on {} in {}", *items)
            advice = f"Lay a washer under it: `{key}: ` with one for its thread."
            place, line = settled.stated.place, across(0.0, head, "of head")
            yield warning("washer-missing", message, place, advice, **there.about(seat, line))


@together(
    "screw-catches",
    reason="A screw that cuts its thread in both pieces holds them as far apart as they were.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
    also=("screw-falls-through",),
)
def screws_draw(build: Build) -> Iterator[Finding]:
    """Look for screws whose hole under the head is no clearance, or lets the head through."""
    return at_points(build, _drawing)


def _drawing(there: InPlace) -> Iterator[Finding]:
    settled = there.posed.settled
    seat, thread, place = settled.first, settled.item.thread, settled.stated.place
    if settled.kind is not SCREWED or seat.diameter is None or thread is None:
        return
    what = there.about(seat, across(0.0, seat.diameter, "wide"))
    wide, head = precise("width", seat.diameter), settled.item.head_diameter or 2 * thread
    clears = settled.item.clearance or thread + 0.5
    if settled.item.kind == "screw" and seat.diameter < thread - SNUG - SAME:
        message = said("`{}` catches in {}, {} wide", there.item, seat.called, wide)
        advice = said("Bore {} there, so that only the second piece is held.", precise("b", clears))
        yield warning("screw-catches", message, place, advice, **what)
    elif seat.feature is not None and not seat.feature.counterbore and seat.diameter > head + SAME:
        message = said("the head of `{}` falls through {}, {} wide", there.item, seat.called, wide)
        advice = said("Bore {} there, or lay a washer under it.", precise("b", clears))
        yield warning("screw-falls-through", message, place, advice, **what)


@together(
    "insert-long",
    reason="An insert longer than its hole stands out, and keeps pieces apart.",
    source="lengths of inserts as the stock states them",
    severity=Severity.WARNING,
)
def inserts_fit(build: Build) -> Iterator[Finding]:
    """Look for inserts longer than their hole is deep, or than the sheet is thick."""
    return at_points(build, _inserted)


def _inserted(there: InPlace) -> Iterator[Finding]:
    settled = there.posed.settled
    item = settled.item if settled.kind is INSERTED else settled.nut
    seat, place = settled.last, settled.stated.place
    if item is None or item.kind not in ("insert", "tee-nut") or seat.part is None:
        return
    if item.length is not None and item.length > room_in(seat) + SAME:
        sizes = precise("length", item.length), precise("room", room_in(seat))
        message = said("`{}` is {} long, {} {} deep", item.name, sizes[0], seat.called, sizes[1])
        advice = said("Take one no longer than {}, or bore deeper.", sizes[1])
        start = there.posed.start_of(seat)
        what = there.about(seat, along(start, start + item.length, "long"))
        yield warning("insert-long", message, place, advice, **what)
