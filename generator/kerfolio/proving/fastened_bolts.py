"""Checks of bolts that fastenings state: axes meet, threads engage, heads and nuts have room."""

from __future__ import annotations

from collections.abc import Iterator
from math import radians, tan

from kerfolio.assembly.building import Build
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.fastening_axis import room_in
from kerfolio.assembly.fastening_nut import sunk_length
from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.measures import angle, length, precise
from kerfolio.basis.said import Text, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.near import line_distance
from kerfolio.geometry.rigid import between, scaled
from kerfolio.geometry.rigid import length as size_of
from kerfolio.model.fastening import BOLTED, CROSS_NUT, DOWELLED, SCREWED, SUNK_NUTS
from kerfolio.model.stock import HardwareStock
from kerfolio.proving.bolts import SPARE
from kerfolio.proving.in_place import (
    APART,
    SLANT,
    InPlace,
    across,
    along,
    at_points,
    beside,
    gap_before,
    off_words,
    play_of,
    seat_before,
    told_off,
)
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, together
from kerfolio.settling.fastened import Seat

ENGAGED = 1.0
"""Of its diameter, what of a bolt's thread is in a nut across it (common practice)."""

PROUD = 0.2
"""A sunk head may stand this far, mm, above the face (common practice, no single source)."""

_ALIKE = 0.1
"""Two holes are off alike within this, mm."""

LOOSE_NUT = 1.0
"""A barrel nut's hole may be wider by so much, mm (common practice, no single source)."""


@together(
    "fastening-off-axis",
    reason="A fastening goes home where the axes of its holes meet within their play.",
    source=OWN_FIGURES,
    also=("fastening-apart",),
)
def axes_meet(build: Build) -> Iterator[Finding]:
    """Look for holes and bores that do not lie in one line."""
    return at_points(build, _off_axis, slanted=True)


def _off_axis(there: InPlace) -> Iterator[Finding]:
    posed = there.posed
    settled, thread = posed.settled, posed.settled.item.thread or 0.0
    if _first_is_off(posed, thread):
        yield _off_first(there)
        return
    for entry in posed.entries:
        seat, place = entry.seat, settled.stated.place
        if settled.kind not in (BOLTED, SCREWED, DOWELLED):
            continue
        gap = gap_before(posed, entry)
        if entry.tilt <= SLANT and abs(gap) > APART:
            far = length("distance", abs(gap))
            before = seat_before(posed, entry).called
            message = said("{} begins {} away from {}", seat.called, far, before)
            which: Text = "Is it bored from the edge that lies there? Bore it where the two meet."
            what = there.about(seat, along(entry.along - gap, entry.along, "away"))
            yield error("fastening-apart", message, place, which, **what)
        elif entry.tilt > SLANT:
            lean = angle("angle", entry.tilt)
            message = said("{} stands at {} to {}", seat.called, lean, settled.first.called)
            way: Text = (
                "Both must lie along one line: is it the feature, or the joint, that you mean?"
            )
            yield error("fastening-off-axis", message, place, way, **there.about(seat))
        elif entry.off > play_of(settled.first, thread) + play_of(seat, thread) + SAME:
            off = told_off(there, entry)
            message = said("{} is {} for `{}`", seat.called, off, there.item)
            play = precise("play", play_of(settled.first, thread) + play_of(seat, thread))
            template = "Bring it into line with {}; the play of both is {}."
            advice = said(template, settled.first.called, play)
            what = there.about(seat, beside(entry.along, entry.off, "off"), aside=entry.aside)
            yield error("fastening-off-axis", message, place, advice, **what)
    yield from _off_nut(there, posed, thread)


def _first_is_off(posed: PosedFastening, thread: float) -> bool:
    """Tell whether a bore and its barrel nut agree, and only the hole under the head is beside."""
    if posed.settled.kind is not BOLTED or posed.settled.cross is None or len(posed.entries) != 1:
        return False
    (entry,) = posed.entries
    play = play_of(posed.settled.first, thread) + play_of(entry.seat, thread)
    apart = size_of(between(entry.aside, posed.nut_aside))
    return entry.tilt <= SLANT and entry.off > play + SAME and apart < _ALIKE


def _off_first(there: InPlace) -> Finding:
    posed = there.posed
    (entry,), first = posed.entries, posed.settled.first
    aside = scaled(entry.aside, -1.0)
    off = off_words(there.pose(first).pose.inverse.vector(aside))
    message = said("{} is {} for `{}`", first.called, off, there.item)
    advice = said("{} and its nut agree: bring it into line with them.", entry.seat.called)
    what = there.about(first, beside(0.0, entry.off, "off"), aside=aside)
    return error("fastening-off-axis", message, posed.settled.stated.place, advice, **what)


def _off_nut(there: InPlace, posed: PosedFastening, thread: float) -> Iterator[Finding]:
    cross = posed.settled.cross
    if cross is None or not posed.entries:
        return
    play = play_of(posed.settled.first, thread) + play_of(posed.entries[-1].seat, thread)
    off_axis = size_of(posed.nut_aside)
    if off_axis > play + SAME:
        pose = there.pose(cross).pose
        off = off_words(pose.inverse.vector(posed.nut_aside))
        message = said("nut hole {} is {} for `{}`", cross.called, off, there.item)
        advice = said("Bring it into line with {}.", posed.entries[-1].seat.called)
        place = posed.settled.stated.place
        what = there.about(
            cross, beside(posed.nut_at or 0.0, off_axis, "off"), aside=posed.nut_aside
        )
        yield error("fastening-off-axis", message, place, advice, **what)


@together(
    "bore-wants-guide",
    reason="A bore by hand is off by what a hand is, and its bolt has only so much play.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def hands_suffice(build: Build) -> Iterator[Finding]:
    """Look for bores by hand whose error may be more than the play of what goes in."""
    return at_points(build, _by_hand)


def _by_hand(there: InPlace) -> Iterator[Finding]:
    posed, hand = there.posed, there.settled.plan.hand
    kind, thread = posed.settled.kind, posed.settled.item.thread or 0.0
    for seat, mouth, deep in _bored_by_hand(posed) if kind in (BOLTED, DOWELLED) else ():
        # It strays with the depth, so that it is farthest off where the last of it is needed.
        lean = next((each for each in posed.entries if each.seat == seat), None)
        off = hand.at(abs(deep)) + (abs(deep) * tan(radians(lean.tilt)) if lean else 0.0)
        play = sum(play_of(each, thread) for each in {posed.settled.first, seat})
        play -= lean.off if lean else 0.0
        if off > play + SAME:
            where = "nut" if posed.nut_at is not None else "end"
            figures = precise("off", off), precise("play", play)
            template = "by hand {} may be {} off at its " + where + ", and `{}` has {} of play"
            message = said(template, seat.called, figures[0], there.item, figures[1])
            wide = precise("diameter", (seat.diameter or 0.0) + 2 * (off - play))
            advice = said(
                "Bore it with a drilling guide, or mark it with a dowel centre, say so in the step "
                "and write `guided: yes`; or bore it {} wide.",
                wide,
            )
            place = seat.feature.place if seat.feature else posed.settled.stated.place
            what = there.about(seat, beside(mouth + deep, off, "off by hand"))
            yield note("bore-wants-guide", message, place, advice, **what)


def _bored_by_hand(posed: PosedFastening) -> Iterator[tuple[Seat, float, float]]:
    """Yield each bore without a guide, where it begins along the axis, and how deep it is needed.

    That is as far as the nut, else as what goes in reaches; of the first of a dowel, backwards.
    """
    settled = posed.settled
    if settled.first.is_bore and not settled.first.guided and posed.entries:
        mouth = posed.entries[-1].along
        yield settled.first, mouth, -mouth
    for entry in posed.entries:
        if entry.seat.is_bore and not entry.seat.guided:
            bottom = entry.along + room_in(entry.seat)
            end = min(posed.tip, bottom) if posed.nut_at is None else posed.nut_at
            yield entry.seat, entry.along, max(0.0, end - entry.along)


@together(
    "bolt-short-of-nut",
    reason="A bolt holds by the thread that is in its nut.",
    source="one diameter of thread, common practice; heights of nuts from memory, ISO 4032",
    also=("bolt-out-of-nut",),
)
def nuts_filled(build: Build) -> Iterator[Finding]:
    """Look for bolts that do not reach through their nut, or stand far out of it."""
    return at_points(build, _reaching)


def _reaching(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    if settled.nut is None or posed.nut_at is None or settled.kind is not BOLTED:
        return
    thread, place = settled.item.thread or 0.0, settled.stated.place
    seat = settled.cross or settled.last
    if settled.nut.kind == CROSS_NUT:
        half = (settled.nut.outside or seat.diameter or 0.0) / 2
        wanted = min(posed.nut_at + half, posed.nut_at - half + ENGAGED * thread)
    elif settled.nut.kind in SUNK_NUTS:
        wanted = posed.nut_at - sunk_length(settled.nut) / 2 + ENGAGED * thread
    else:
        wanted = posed.nut_at + (settled.nut.height or 0.8 * thread) / 2
    short = wanted - posed.tip
    if short > SAME:
        reached = said("`{}` ends {} short of its nut", there.item, length("short", short))
        message = said("{} in {}", reached, seat.called)
        long = (settled.item.length or 0.0) + short
        advice = said("Take one of {} or more, or bring the nut nearer.", length("needed", long))
        what = there.about(seat, along(posed.tip, wanted, "short"), flat=True)
        yield error("bolt-short-of-nut", message, place, advice, **what)
    elif settled.nut.kind not in (CROSS_NUT, *SUNK_NUTS) and posed.tip - wanted > SPARE:
        out = length("out", posed.tip - wanted)
        message = said("`{}` stands {} out of its nut", there.item, out)
        shorter = "Take a shorter bolt: what stands out catches."
        what = there.about(seat, along(wanted, posed.tip, "out"))
        yield note("bolt-out-of-nut", message, place, shorter, **what)


@together(
    "fastening-bottoms",
    reason="What meets the bottom of its bore holds nothing together.",
    source="sums of lengths; the gap at a dowel's end is 1/16 in by dowel makers' pages",
)
def ends_free(build: Build) -> Iterator[Finding]:
    """Look for bolts and dowels that are longer than what is bored for them."""
    return at_points(build, _bottoming)


DOWEL_GAP = 1.6
"""What a dowel leaves free at its ends together, mm: 1/16 in (dowel makers' technical pages)."""


def _bottoming(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    if not posed.entries or settled.kind not in (BOLTED, DOWELLED):
        return
    entry = posed.entries[-1]
    if settled.kind is DOWELLED:
        room = room_in(settled.first) + room_in(entry.seat)
        over = (settled.item.length or 0.0) + DOWEL_GAP - room
        ends = along(0.0, settled.item.length or 0.0, "long")
        words = said("`{}` is {} too long for its two bores", there.item, length("over", over))
    else:
        blind = entry.seat.feature is not None and entry.seat.feature.depth is not None
        bottom = entry.along + room_in(entry.seat)
        over = posed.tip - bottom if blind else 0.0
        ends = along(bottom, posed.tip, "too long")
        words = said("`{}` meets the bottom {} early", there.item, length("over", over))
    if over > SAME:
        message = said("{} in {}", words, entry.seat.called)
        deep = length("depth", room_in(entry.seat) + over)
        advice = said("Bore {} deep, or take a shorter one.", deep)
        place = settled.stated.place
        yield error("fastening-bottoms", message, place, advice, **there.about(entry.seat, ends))


@together(
    "head-unseated",
    reason="Head and washer draw on the wood that they lie on.",
    source="sizes of heads and washers from memory: ISO 4762, ISO 7089",
    also=("head-proud",),
)
def heads_sit(build: Build) -> Iterator[Finding]:
    """Look for heads and washers that find no flat wood, or no room in their counterbore."""
    return at_points(build, _seating)


def _seating(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    seat, place = settled.first, settled.stated.place
    if settled.kind not in (BOLTED, SCREWED) or seat.feature is None or seat.part is None:
        return
    top = settled.washer or settled.item
    wide = top.outside if settled.washer else settled.item.head_diameter
    if wide is None:
        return
    on_show = there.pose(seat).pose.inverse.vector(posed.direction)[2] < 0
    wider = seat.feature.counterbore if on_show else None
    if seat.feature.counterbore and not on_show:
        message = said("the wide bore of {} is not where the head is", seat.called)
        away = "It is on the show face: turn the part round, or leave it out."
        yield error("head-unseated", message, place, away, **there.about(seat))
    figure, hole = precise("width", wide), seat.feature.width.value
    what = there.about(seat, across(0.0, wide, "wide"))
    advice: Text = "Bore the counterbore wider, or take a smaller washer."
    if wider is not None:
        if wide > wider[0].value + SAME:
            bored = precise("bored", wider[0].value)
            message = said(
                "the bore of {} is {} wide, `{}` {}", seat.called, bored, top.name, figure
            )
            yield error("head-unseated", message, place, advice, **what)
        yield from _proud(there, wider[1].value)
        return
    if settled.kind is BOLTED and wide <= hole + SAME:
        message = said("`{}` falls through {}: it is {} wide", top.name, seat.called, figure)
        advice = "Take a washer that is wider than the hole."
        yield error("head-unseated", message, place, advice, **what)
        return
    around = [c for c in contours_of(seat.part.plain) if c not in seat.feature.shape]
    near = min(line_distance(seat.feature.at, each) for each in around)
    if near < wide / 2 - SAME and near > hole / 2:
        gap = length("distance", near)
        message = said("`{}` at {} lies over an edge {} away", top.name, seat.called, gap)
        advice = said("Keep {} of wood round the middle of the hole.", length("least", wide / 2))
        yield error("head-unseated", message, place, advice, **what)


def _proud(there: InPlace, deep: float) -> Iterator[Finding]:
    settled, seat = there.posed.settled, there.posed.settled.first
    high = (settled.item.head_height or 0.0) + (
        (settled.washer.height or 0.0) if settled.washer else 0.0
    )
    if settled.kind is BOLTED and high > deep + PROUD:
        over = precise("over", high - deep)
        message = said("the head of `{}` stands {} out of {}", there.item, over, seat.called)
        advice = said("Sink its counterbore {} deep.", precise("depth", high))
        place = settled.stated.place
        what = there.about(seat, along(-high, -deep, "proud"))
        yield warning("head-proud", message, place, advice, **what)


@together(
    "barrel-nut-long",
    reason="A barrel nut that stands out of its sheet keeps pieces apart, and hands bleed on it.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
    also=("barrel-nut-hole",),
)
def nuts_hidden(build: Build) -> Iterator[Finding]:
    """Look for barrel nuts longer than the sheet is thick, or in holes that are not for them."""
    return at_points(build, _cross_nuts)


def _cross_nuts(there: InPlace) -> Iterator[Finding]:
    settled = there.posed.settled
    nut, cross, place = settled.nut, settled.cross, settled.stated.place
    if nut is None or nut.kind != CROSS_NUT:
        return
    if cross is None or cross.part is None or cross.diameter is None:
        message = said("no hole for `{}` is found beside {}", nut.name, settled.last.called)
        bored = f"Bore one across the bolt: `{{hole: {{at: [x, y], for: {nut.name}}}}}`."
        yield warning("barrel-nut-hole", message, place, bored, **there.about(settled.last))
        return
    if _ends_early(cross, settled.last, nut):
        deep = length("depth", room_in(cross))
        message = said("{} is {} deep, too little for `{}`", cross.called, deep, nut.name)
        through = "Bore it right through: its thread must lie where the bolt comes."
        opening = across(there.posed.nut_at or 0.0, cross.diameter, "wide")
        yield warning("barrel-nut-hole", message, place, through, **there.about(cross, opening))
    if nut.length is not None and nut.length > cross.part.thickness + SAME:
        lengths = precise("length", nut.length), precise("thickness", cross.part.thickness)
        message = said("`{}` is {} long, its sheet {} thick", nut.name, *lengths)
        shorter = said("Take one no longer than {}.", lengths[1])
        what = there.about(cross, across(there.posed.nut_at or 0.0, nut.length, "long"))
        yield warning("barrel-nut-long", message, place, shorter, **what)
    wide = nut.outside or nut.clearance
    if wide is not None and not -SAME <= cross.diameter - wide <= LOOSE_NUT:
        sizes = precise("opening", cross.diameter), precise("width", wide)
        message = said("{} is {} wide, its nut `{}` {}", cross.called, sizes[0], nut.name, sizes[1])
        advice = f"Write `for: {nut.name}` in place of its diameter."
        opening = across(there.posed.nut_at or 0.0, cross.diameter, "wide")
        what = there.about(cross, opening, flat=True)
        yield warning("barrel-nut-hole", message, place, advice, **what)


def _ends_early(cross: Seat, bore: Seat, nut: HardwareStock) -> bool:
    """Tell whether a blind hole ends before the middle of its nut lies at the bolt."""
    if cross.feature is None or cross.feature.depth is None or cross.part is None:
        return False
    level = bore.mouth[2] if bore.is_bore else cross.part.thickness / 2
    wanted = cross.part.thickness - level + (nut.length or 0.0) / 2
    return cross.feature.depth.value < wanted - SAME


@together(
    "thread-mismatch",
    reason="Bolt, nut and washer are of one thread, and holes let the bolt through.",
    source="ISO 273; ASME B18.2.8",
    also=("nut-missing",),
)
def threads_agree(build: Build) -> Iterator[Finding]:
    """Look for nuts of another thread, holes narrower than their bolt, bolts without a nut."""
    return at_points(build, _threads)


def _threads(there: InPlace) -> Iterator[Finding]:
    settled, place = there.posed.settled, there.posed.settled.stated.place
    thread = settled.item.thread
    if settled.kind is not BOLTED or thread is None:
        return
    for item in (settled.nut, settled.washer, settled.under_nut):
        if item is not None and item.thread is not None and abs(item.thread - thread) > 0.1:
            sizes = precise("thread", thread), precise("other", item.thread)
            message = said("`{}` is {}, its `{}` {}", there.item, sizes[0], item.name, sizes[1])
            one = said("Take one for {}.", sizes[0])
            what = there.about(settled.first)
            yield error("thread-mismatch", message, place, one, **what)
    for seat in settled.seats:
        if _too_narrow(seat, thread):
            wide = precise("opening", seat.diameter or 0.0)
            message = said("{} is {} wide, too narrow for `{}`", seat.called, wide, there.item)
            advice = f"Write `for: {there.item}` in place of its diameter."
            at = there.posed.start_of(seat)
            what = there.about(seat, across(at, seat.diameter or 0.0, "wide"))
            yield error("thread-mismatch", message, place, advice, **what)
    if settled.nut is None and not any(seat.is_pilot for seat in settled.seats):
        message = said("nothing holds `{}` in {}", there.item, settled.last.called)
        advice = "State its `nut`: a nut, a barrel nut or an insert."
        yield error("nut-missing", message, place, advice, **there.about(settled.last))


def _too_narrow(seat: Seat, thread: float) -> bool:
    return not seat.is_pilot and seat.diameter is not None and seat.diameter < thread + SAME
