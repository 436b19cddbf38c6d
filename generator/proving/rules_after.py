"""Rules that look at a settled plan: shapes, cutters and sheets at one thickness."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from generator.basis.finding import Finding, error, note, warning
from generator.basis.lengths import mm_text
from generator.geometry.boolean import intersects
from generator.geometry.contour import Contour
from generator.geometry.shapes import circle, slot
from generator.proving.rule import COMMON_PRACTICE, After
from generator.settling.settled import Operation, SettledFeature, SettledPart, SettledPlan

_SAME = 0.01
_ROUND_OR_LONG = ("slot", "hole", "pocket", "groove")


def _fits_sheet(settled: SettledPlan) -> Iterator[Finding]:
    for part in settled.parts:
        sheet = settled.sheet(part.sheet)
        room = tuple(side - 2 * sheet.margin for side in sheet.size)
        if not any(_goes(size, room) for size in _lying(part, sheet.stock.grain)):
            message = (
                f"part `{part.name}` is {mm_text(part.size[0])} x {mm_text(part.size[1])}, "
                f"too large"
            )
            advice = (
                f"The sheet leaves {mm_text(room[0])} x {mm_text(room[1])} inside its margins"
                f"{'' if part.grain == 'any' else f' (grain {part.grain})'}."
            )
            yield error("larger-than-sheet", message, part.place, advice)


def _lying(part: SettledPart, has_grain: bool) -> Iterator[tuple[float, float]]:
    """Yield the part's extents along and across the sheet, as its grain lets it lie."""
    width, height = part.size
    if part.grain != "along y" or not has_grain:
        yield width, height
    if part.grain != "along x" or not has_grain:
        yield height, width


def _goes(size: tuple[float, float], room: tuple[float, ...]) -> bool:
    return size[0] <= room[0] + _SAME and size[1] <= room[1] + _SAME


def _cutter_enters(settled: SettledPlan) -> Iterator[Finding]:
    for part in settled.parts:
        cutter = settled.sheet(part.sheet).cutter
        for feature in part.features:
            narrow = min(feature.width.value, feature.length.value)
            if feature.kind in _ROUND_OR_LONG and narrow < cutter.diameter - _SAME:
                message = (
                    f"{feature.kind} `{part.name}.{feature.name}` is {mm_text(narrow, 2)} wide"
                )
                advice = f"Cutter `{cutter.name}` is {mm_text(cutter.diameter, 2)}: " + (
                    "drill it, or use a smaller cutter."
                    if feature.kind == "hole"
                    else "use a smaller cutter or a wider slot."
                )
                make = note if feature.kind == "hole" else error
                yield make("smaller-than-cutter", message, feature.place or part.place, advice)


def _too_deep(settled: SettledPlan) -> Iterator[Finding]:
    for part in settled.parts:
        for feature in part.features:
            depth = feature.depth
            if depth is not None and depth.value >= part.thickness - _SAME:
                message = (
                    f"{feature.kind} `{part.name}.{feature.name}` is {mm_text(depth.value, 2)} deep"
                )
                advice = (
                    f"The sheet is {mm_text(part.thickness, 2)}: cut through with a window or slot."
                )
                yield error("deeper-than-sheet", message, feature.place, advice)
        for cut in part.cuts:
            if cut.operation is Operation.POCKET and (cut.depth or 0) >= part.thickness - _SAME:
                message = f"a recess of `{part.name}.{cut.feature}` goes through the sheet"
                yield error("deeper-than-sheet", message, part.place, "Make it shallower.")


def _overlapping(settled: SettledPlan) -> Iterator[Finding]:
    for part in settled.parts:
        through = [(each, _contour(each)) for each in part.features if _is_opening(each)]
        for (one, a), (other, b) in combinations(through, 2):
            if intersects(a, b):
                message = f"`{part.name}.{one.name}` and `{other.name}` run into each other"
                advice = "Move them apart, or make one feature of the two."
                yield warning("features-overlap", message, other.place, advice)


def _is_opening(feature: SettledFeature) -> bool:
    return feature.kind in ("slot", "hole") and feature.depth is None


def _contour(feature: SettledFeature) -> Contour:
    if feature.kind == "hole":
        return circle(feature.at, feature.width.value)
    return slot(feature.at, feature.direction, feature.length.value, feature.width.value)


RULES_AFTER: tuple[After, ...] = (
    After(
        id="larger-than-sheet",
        reason="A part must fit the sheet inside its margins.",
        source=COMMON_PRACTICE,
        check=_fits_sheet,
    ),
    After(
        id="smaller-than-cutter",
        reason="A cutter cuts nothing narrower than itself.",
        source="geometry of a round cutter",
        check=_cutter_enters,
    ),
    After(
        id="deeper-than-sheet",
        reason="A recess leaves a floor.",
        source=COMMON_PRACTICE,
        check=_too_deep,
    ),
    After(
        id="features-overlap",
        reason="Openings that meet weaken a part.",
        source=COMMON_PRACTICE,
        check=_overlapping,
    ),
)
"""The rules in the order they are looked at."""
