"""Checks of a settled plan against its sheets and cutters."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.measures import chosen, length, number, precise, size
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.said import Text, Words, named, said, stated_name, strung
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import turned
from kerfolio.layouts.stacks import stacks_of
from kerfolio.layouts.turns import turns_of
from kerfolio.model.feature_kind import HOLE
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.proving.marks import about
from kerfolio.proving.meeting import meetings, pairs, too_short
from kerfolio.proving.origin import named_with_file
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, ROUND_CUTTER, after
from kerfolio.settling.settled import (
    Operation,
    SettledFeature,
    SettledPart,
    SettledPlan,
    SettledSheet,
)
from kerfolio.shop.bed import bed_for, off_bed
from kerfolio.shop.tightest import narrowest

_SOLD_AS = 3.0
"""Sheets sold in inches are called by the nearest round size in mm, so much apart at most."""


@after(
    "larger-than-sheet",
    reason="A part must fit the sheet inside its margins.",
    source=COMMON_PRACTICE,
)
def fits_sheet(settled: SettledPlan) -> Iterator[Finding]:
    """Look for parts larger than every sheet inside its margins, as their grain lets them lie."""
    for part in settled.parts:
        sheet = settled.sheet(part.sheet)
        sizes = [stack.size for stack in stacks_of(sheet)]
        rooms = [(x - 2 * sheet.margin, y - 2 * sheet.margin) for x, y in sizes]
        if not any(_goes(lying, room) for lying in _lying(part, sheet) for room in rooms):
            grain = f" (grain {part.grain})" if part.grained else ""
            which = "The sheet" if len(sizes) == 1 else "The largest sheet"
            room = max(rooms, key=lambda each: each[0] * each[1])
            message = said("part `{}` is {}, too large", part.name, size(part.size))
            advice = said("{} leaves {} inside its margins{}.", which, size(room, "room-"), grain)
            yield error("larger-than-sheet", message, part.place, advice, subject=part.name)


@after(
    "piece-off-bed",
    reason="What is larger than the bed cannot be cut in one setting.",
    source=OWN_FIGURES,
    severity=Severity.NOTE,
)
def fits_bed(settled: SettledPlan) -> Iterator[Finding]:
    """Look for parts that the bed of the workshop's machine has no room for."""
    bed = settled.plan.bed
    for part in off_bed(settled, bed) if bed else ():
        needed = bed_for(part, settled.sheet(part.sheet))
        message = said("part `{}` needs a bed of {}", part.name, size(needed))
        template = "The workshop’s is {}: cut it in two settings, by hand, or have it cut."
        advice = said(template, size(bed or needed, "bed-"))
        yield note("piece-off-bed", message, part.place, advice, subject=part.name)


def _lying(part: SettledPart, sheet: SettledSheet) -> Iterator[tuple[float, float]]:
    """Yield the part's extents along and across the sheet, as its grain lets it lie."""
    for turn in dict.fromkeys(each % 180.0 for each in turns_of(part, sheet)):
        box = bounds(turned(part.routed, turn))
        yield box.x1 - box.x0, box.y1 - box.y0


def _goes(size: tuple[float, float], room: tuple[float, float]) -> bool:
    return size[0] <= room[0] + SAME and size[1] <= room[1] + SAME


@after(
    "size-not-sold",
    reason="A sheet must be one that can be bought.",
    source="the stock's own list of sizes",
    severity=Severity.WARNING,
)
def sold_sizes(settled: SettledPlan) -> Iterator[Finding]:
    """Look for sheet sizes that the stock does not list."""
    for sheet in settled.sheets:
        if sheet.stock.sizes and not any(_is_sold(sheet, each) for each in sheet.stock.sizes):
            message = said("`{}` is not sold as {}", sheet.stock.name, size(sheet.size))
            known = strung([said("{}", size(each, "sold-")) for each in sheet.stock.sizes], ", ")
            name = named_with_file(sheet.stock, "sizes")
            advice = said("{} is sold as {}; a size of your own goes into `stock/`.", name, known)
            yield warning("size-not-sold", message, sheet.place, advice, subject=sheet.name)


def _is_sold(sheet: SettledSheet, size: tuple[float, float]) -> bool:
    return all(abs(a - b) <= _SOLD_AS for a, b in zip(sheet.size, size, strict=True))


@after(
    "gap-too-small",
    reason="The cutter passes between two pieces.",
    source=ROUND_CUTTER,
)
def kerf_between(settled: SettledPlan) -> Iterator[Finding]:
    """Look for gaps between pieces that the cutter does not pass."""
    for sheet in settled.sheets:
        if sheet.gap < sheet.cut_width - SAME:
            message = said("the gap is {} on sheet `{}`", precise("gap", sheet.gap), sheet.name)
            advice = said("{}: `gap` must be more.", _cutter(sheet))
            yield error("gap-too-small", message, sheet.place, advice, subject=sheet.name)


def _cutter(sheet: SettledSheet) -> Words:
    if sheet.diameter is not None and sheet.diameter != sheet.cutter.diameter:
        return said("The cutter is {}", chosen("cutter", sheet.diameter))
    return said("Cutter `{}` is {}", sheet.cutter.name, precise("cutter", sheet.cutter.diameter))


def _wide(feature: SettledFeature, part: SettledPart, width: float) -> Words:
    name = named(f"{part.name}.{feature.name}")
    return said("{} {} is {} wide", feature.kind.name, name, precise("width", width))


@after(
    "smaller-than-cutter",
    reason="A cutter cuts nothing narrower than itself.",
    source=ROUND_CUTTER,
)
def cutter_enters(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings and recesses narrower than the cutter.

    One that is as narrow as the tab that goes into it is told with that: the tab is too narrow.
    One that is too short for its tab is told as that.
    """
    entering, short = _narrow_tabs(settled), too_short(settled)
    for part in settled.parts:
        sheet = settled.sheet(part.sheet)
        for feature in part.features:
            narrow = narrowest(feature)
            if narrow is None or narrow >= sheet.cut_width - SAME:
                continue
            if (part.name, feature.name) in short and feature.width.value >= sheet.cut_width:
                continue
            message: Text = _wide(feature, part, narrow)
            advice: Text = said("{}: use a smaller cutter.", _cutter(sheet))
            if (part.name, feature.name) in entering and narrow < feature.width.value:
                tab, owner = entering[part.name, feature.name]
                width = length("width", tab.width.value)
                message = said("{}, for a tab {} wide", message, width)
                advice = said("{}: {}", _cutter(sheet), _wider(tab, owner, settled.plan.units))
            what = about(settled, part, feature)
            yield error("smaller-than-cutter", message, _place(feature, part), advice, **what)


def _narrow_tabs(
    settled: SettledPlan,
) -> dict[tuple[str, str], tuple[SettledFeature, SettledPart]]:
    """Return the tabs narrower than their sheets, with their parts, by what they go into."""
    return {
        (met.b.part.name, into.name): (tab, met.a.part)
        for met in meetings(settled, TAB_JOINT)
        for tab, into in pairs(met)
        if tab.width.value < met.a.part.thickness - SAME
    }


def _wider(tab: SettledFeature, part: SettledPart, unit: str) -> Words:
    """Return what to do about a tab narrower than its sheet is thick."""
    name = named(f"{part.name}.{stated_name(tab.name)}")
    least = length("least", part.thickness)
    cure = said("make {} as wide as its sheet is thick, {}, or more.", name, least)
    inches = number("inches", tab.width.value)
    if unit == "in" or tab.width.value * float(MM_PER_UNIT["in"]) < part.thickness:
        return cure
    return said("{} If inches were meant, write `{} in`.", cure, inches)


@after(
    "hole-to-drill",
    reason="A cutter cuts no hole smaller than itself.",
    source=ROUND_CUTTER,
    severity=Severity.NOTE,
)
def holes_drilled(settled: SettledPlan) -> Iterator[Finding]:
    """Look for holes smaller than the cutter, which are drilled instead."""
    for part in settled.parts:
        sheet = settled.sheet(part.sheet)
        for feature in part.features:
            if feature.kind is HOLE and feature.width.value < sheet.cut_width - SAME:
                message = _wide(feature, part, feature.width.value)
                advice = said("{}: drill it, or use a smaller cutter.", _cutter(sheet))
                what = about(settled, part, feature)
                yield note("hole-to-drill", message, _place(feature, part), advice, **what)


def _place(feature: SettledFeature, part: SettledPart) -> Place:
    return part.place if feature.place == NOWHERE else feature.place


@after(
    "deeper-than-sheet",
    reason="A recess leaves a floor.",
    source=COMMON_PRACTICE,
)
def leaves_floor(settled: SettledPlan) -> Iterator[Finding]:
    """Look for what is cut to a depth that goes through the sheet."""
    for part in settled.parts:
        told = set()
        for feature in part.features:
            depth = feature.depth
            if feature.kind.by_hand or depth is None:
                continue
            if depth.value >= part.thickness - SAME:
                told.add(feature.name)
                called, deep = named(f"{part.name}.{feature.name}"), precise("depth", depth.value)
                message = said("{} {} is {} deep", feature.kind.name, called, deep)
                thick = precise("thickness", part.thickness)
                cure = said("The sheet is {}: cut through with a window or slot.", thick)
                what = about(settled, part, feature)
                yield error("deeper-than-sheet", message, feature.place, cure, **what)
        for cut in part.cuts:
            recess = cut.operation is Operation.POCKET
            through = recess and (cut.depth or 0) >= part.thickness - SAME
            if through and cut.feature not in told:
                name = f"{part.name}.{cut.feature}"
                message = said("a recess of {} goes through the sheet", named(name))
                subject, advice = stated_name(name), "Make it shallower."
                yield error("deeper-than-sheet", message, part.place, advice, subject=subject)
