"""Checks of joints in numbers: what meets must be alike in length, width and depth."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.measures import length, number, precise, reading
from kerfolio.basis.said import Text, Words, named, said
from kerfolio.basis.tolerance import NOISE, SAME
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature_kind import SLOT
from kerfolio.model.joint_kind import FINGER_JOINT, NOTCH_JOINT, TAB_JOINT
from kerfolio.proving.flush import UNEVEN
from kerfolio.proving.marks import about
from kerfolio.proving.meeting import has_length, is_stopped, meetings, openings, pairs, wedged
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after
from kerfolio.settling.clearance import Clearance
from kerfolio.settling.settled import SettledFeature, SettledPlan


@after(
    "tab-wider-than-slot",
    reason="A tab goes into an opening at least as long.",
    source=OWN_FIGURES,
)
def tabs_enter(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs wider than the opening they go into is long."""
    for met in meetings(settled, TAB_JOINT):
        for tab, opening in pairs(met):
            over = tab.width.value - opening.length.value
            if over > SAME and (has_length(opening) or is_stopped(opening, met.b.part)):
                short = reading("short", over)
                message = said("{} is {} too short for its tab", named(met.b.name(0)), short)
                what = about(settled, met.b.part, opening)
                advice = _wide(tab, opening)
                yield error("tab-wider-than-slot", message, met.joint.place, advice, **what)


@after(
    "tab-loose-in-slot",
    reason="A tab that slides about places nothing.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tabs_snug(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs that slide about along the opening they go into."""
    for met in meetings(settled, TAB_JOINT):
        for tab, opening in pairs(met):
            play = opening.length.value - tab.width.value
            own = _judged_elsewhere(opening.room) if opening.room else 0.0
            if has_length(opening) and play > 2 * (settled.plan.play.ends + own) + NOISE:
                loose, name = length("play", play), named(met.b.name(0))
                message = said("the tab has {} of play in {}", loose, name)
                what = about(settled, met.b.part, opening)
                advice = _wide(tab, opening)
                yield warning("tab-loose-in-slot", message, met.joint.place, advice, **what)


def _judged_elsewhere(room: Clearance) -> float:
    """Return what of the room at the ends, mm, is not looked at here.

    A sheet's own fit has been judged by itself; film and damp take what is allowed for them.
    """
    return room.allowed[1] if room.asked else room.ends


def _sanded(settled: SettledPlan) -> float:
    """Return what is sanded off each face before assembly, mm."""
    return settled.surroundings.sanded if settled.surroundings else 0.0


def _wide(tab: SettledFeature, opening: SettledFeature) -> Words:
    follow = "give both the same size by name" if opening.takes else "make the opening match"
    return said("The tab is {} wide: {}.", precise("width", tab.width.value), follow)


@after(
    "sheet-thicker-than-slot",
    reason="A sheet goes into an opening at least as wide.",
    source=OWN_FIGURES,
)
def sheets_enter(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings narrower than the sheet that goes into them, at every thickness.

    Of one that takes another sheet than that, the joint has told.
    """
    entered = (each for met in meetings(settled, TAB_JOINT, NOTCH_JOINT) for each in openings(met))
    for opening, part, other in chain(entered, wedged(settled)):
        if opening.takes and opening.takes != other.sheet:
            continue
        over = other.thickness - 2 * _sanded(settled) - opening.width.value
        if over > SAME:
            name = named(f"{part.name}.{opening.name}")
            narrow = reading("narrow", over)
            message = said("{} {} is {} too narrow for its sheet", opening.kind.name, name, narrow)
            advice = f"Write `takes: {other.sheet}` in place of its width."
            what = about(settled, part, opening)
            yield error("sheet-thicker-than-slot", message, opening.place, advice, **what)


@after(
    "tab-deeper-than-recess",
    reason="A tab that meets the floor keeps its shoulders off the face.",
    source=OWN_FIGURES,
)
def tabs_bottom(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs longer than the recess they go into is deep: the shoulders never meet."""
    for met in meetings(settled, TAB_JOINT):
        for tab, opening in pairs(met):
            if opening.depth is None or not opening.kind.recessed:
                continue
            over = tab.length.value - (opening.depth.value - _sanded(settled))
            if over > SAME:
                tall, deep = reading("above", over), precise("depth", opening.depth.value)
                message = said("{} stands {} above its recess", named(met.a.name(0)), tall)
                template = "{} is {} deep: shorten the tab, a little to spare."
                advice = said(template, named(met.b.name(0)), deep)
                what = about(settled, met.a.part, tab)
                yield error("tab-deeper-than-recess", message, met.joint.place, advice, **what)


@after(
    "tab-barely-enters",
    reason="A tab holds by the wood it goes through.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tabs_hold(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs that reach less than half way into what they go into."""
    for met in meetings(settled, TAB_JOINT):
        for tab, opening in pairs(met):
            reach, through = tab.length.value, met.b.part.thickness
            into, name = length("reach", reach), named(met.a.name(0))
            if opening.depth is None and opening.kind is SLOT and reach < through / 2:
                thick, sheet = precise("thickness", through), met.b.part.sheet
                advice = said("The sheet is {} thick: write `takes: {}`.", thick, sheet)
            elif opening.depth and opening.kind.recessed and reach < opening.depth.value / 2:
                deep = precise("depth", opening.depth.value)
                advice = said("That is {} deep: let it reach down to it, a little to spare.", deep)
            else:
                continue
            message = said("{} reaches {} into its {}", name, into, opening.kind.name)
            what = about(settled, met.a.part, tab)
            yield warning("tab-barely-enters", message, met.joint.place, advice, **what)


@after(
    "fingers-unequal",
    reason="A finger meets a gap.",
    source=OWN_FIGURES,
)
def fingers_mesh(settled: SettledPlan) -> Iterator[Finding]:
    """Look for rows of fingers that cannot go into each other."""
    for met in meetings(settled, FINGER_JOINT):
        one, other = met.a.features[0], met.b.features[0]
        difference = abs(one.width.value - other.width.value)
        ours, theirs = _steps(one), _steps(other)
        gaps = len(one.shape) + len(other.shape)
        if difference > UNEVEN:
            message: Text = said("the two edges differ by {}", length("difference", difference))
            advice = "Fingers run along the whole edge: make both edges as long."
        elif ours != theirs:
            counts = number("count", ours), number("other-count", theirs)
            message = said("{} fingers and gaps meet {}", *counts)
            advice = "Give both rows the same `count`."
        elif gaps != ours:
            message = "both rows begin with the same"
            advice = "Write `first: gap` in one of the two."
        else:
            continue
        what = about(settled, met.a.part, one)
        yield error("fingers-unequal", message, met.joint.place, advice, **what)


def _steps(row: SettledFeature) -> int:
    """Return how many fingers and gaps a row has: its length over the narrowest gap, rounded.

    Gaps are a pitch and the fit wide; half a pitch is more than any fit.
    """
    sides = [bounds(gap) for gap in row.shape]
    along = 0 if abs(row.direction[1]) > abs(row.direction[0]) else 1
    widths = [(box.width, box.height)[along] for box in sides]
    return round(row.width.value / max(widths)) if widths else 0
