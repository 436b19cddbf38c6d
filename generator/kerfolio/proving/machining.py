"""Checks of a settled plan against its sheets and cutters."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.lengths import mm_text
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import turned
from kerfolio.layouts.stacks import stacks_of
from kerfolio.layouts.turns import turns_of
from kerfolio.model.feature_kind import HOLE
from kerfolio.proving.marks import feature_mark
from kerfolio.proving.origin import named_with_file
from kerfolio.proving.rule import COMMON_PRACTICE, ROUND_CUTTER, after
from kerfolio.settling.settled import (
    Operation,
    SettledFeature,
    SettledPart,
    SettledPlan,
    SettledSheet,
)

_SAME = 0.01
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
        if not any(_goes(size, room) for size in _lying(part, sheet) for room in rooms):
            grain = f" (grain {part.grain})" if part.grained else ""
            which = "The sheet" if len(sizes) == 1 else "The largest sheet"
            room = max(rooms, key=lambda each: each[0] * each[1])
            message = f"part `{part.name}` is {_size(part.size)}, too large"
            advice = f"{which} leaves {_size(room)} inside its margins{grain}."
            yield error("larger-than-sheet", message, part.place, advice)


def _lying(part: SettledPart, sheet: SettledSheet) -> Iterator[tuple[float, float]]:
    """Yield the part's extents along and across the sheet, as its grain lets it lie."""
    for turn in dict.fromkeys(each % 180.0 for each in turns_of(part, sheet)):
        box = bounds(turned(part.routed, turn))
        yield box.x1 - box.x0, box.y1 - box.y0


def _goes(size: tuple[float, float], room: tuple[float, float]) -> bool:
    return size[0] <= room[0] + _SAME and size[1] <= room[1] + _SAME


@after(
    "size-not-sold",
    reason="A sheet must be one that can be bought.",
    source="the stock's own list of sizes",
    severity=Severity.WARNING,
)
def sold_sizes(settled: SettledPlan) -> Iterator[Finding]:
    """Look for sheet sizes that the stock does not list."""
    for sheet in settled.sheets:
        if sheet.stock.sizes and not any(_is_sold(sheet, size) for size in sheet.stock.sizes):
            message = f"`{sheet.stock.name}` is not sold as {_size(sheet.size)}"
            known = ", ".join(_size(each) for each in sheet.stock.sizes)
            name = named_with_file(sheet.stock, "sizes")
            advice = f"{name} is sold as {known}; a size of your own goes into `stock/`."
            yield warning("size-not-sold", message, sheet.place, advice)


def _is_sold(sheet: SettledSheet, size: tuple[float, float]) -> bool:
    return all(abs(a - b) <= _SOLD_AS for a, b in zip(sheet.size, size, strict=True))


def _size(size: tuple[float, float]) -> str:
    return f"{mm_text(size[0])} x {mm_text(size[1])}"


@after(
    "gap-too-small",
    reason="The cutter passes between two pieces.",
    source=ROUND_CUTTER,
)
def kerf_between(settled: SettledPlan) -> Iterator[Finding]:
    """Look for gaps between pieces that the cutter does not pass."""
    for sheet in settled.sheets:
        if sheet.gap < sheet.cutter.diameter - _SAME:
            message = f"the gap is {mm_text(sheet.gap, 2)} on sheet `{sheet.name}`"
            cutter = f"Cutter `{sheet.cutter.name}` is {mm_text(sheet.cutter.diameter, 2)}"
            yield error("gap-too-small", message, sheet.place, f"{cutter}: `gap` must be more.")


@after(
    "smaller-than-cutter",
    reason="A cutter cuts nothing narrower than itself.",
    source=ROUND_CUTTER,
)
def cutter_enters(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings and recesses narrower than the cutter."""
    for part in settled.parts:
        cutter = settled.sheet(part.sheet).cutter
        for feature in part.features:
            narrow = _narrowest(feature)
            if narrow is None or narrow >= cutter.diameter - _SAME:
                continue
            message = f"{feature.kind} `{part.name}.{feature.name}` is {mm_text(narrow, 2)} wide"
            size = mm_text(cutter.diameter, 2)
            advice = f"Cutter `{cutter.name}` is {size}: use a smaller cutter."
            mark = feature_mark(settled, part, feature)
            yield error("smaller-than-cutter", message, _place(feature, part), advice, mark)


@after(
    "hole-to-drill",
    reason="A cutter cuts no hole smaller than itself.",
    source=ROUND_CUTTER,
    severity=Severity.NOTE,
)
def holes_drilled(settled: SettledPlan) -> Iterator[Finding]:
    """Look for holes smaller than the cutter, which are drilled instead."""
    for part in settled.parts:
        cutter = settled.sheet(part.sheet).cutter
        for feature in part.features:
            if feature.kind is HOLE and feature.width.value < cutter.diameter - _SAME:
                width = mm_text(feature.width.value, 2)
                message = f"hole `{part.name}.{feature.name}` is {width} wide"
                size = mm_text(cutter.diameter, 2)
                advice = f"Cutter `{cutter.name}` is {size}: drill it, or use a smaller cutter."
                mark = feature_mark(settled, part, feature)
                yield note("hole-to-drill", message, _place(feature, part), advice, mark)


def _narrowest(feature: SettledFeature) -> float | None:
    """Return the least width that a cutter must pass; None where there is none to pass."""
    if not feature.kind.cleared:
        return None
    if feature.kind.on_edge:  # its length lies open at the edge
        return feature.width.value
    return min(feature.width.value, feature.length.value)


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
            if depth is not None and depth.value >= part.thickness - _SAME:
                told.add(feature.name)
                name = f"{feature.kind} `{part.name}.{feature.name}`"
                sheet = f"The sheet is {mm_text(part.thickness, 2)}"
                message = f"{name} is {mm_text(depth.value, 2)} deep"
                advice = f"{sheet}: cut through with a window or slot."
                mark = feature_mark(settled, part, feature)
                yield error("deeper-than-sheet", message, feature.place, advice, mark)
        for cut in part.cuts:
            deep = cut.operation is Operation.POCKET and (cut.depth or 0) >= part.thickness - _SAME
            if deep and cut.feature not in told:
                message = f"a recess of `{part.name}.{cut.feature}` goes through the sheet"
                yield error("deeper-than-sheet", message, part.place, "Make it shallower.")
