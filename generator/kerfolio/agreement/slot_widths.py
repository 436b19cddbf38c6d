"""Slots that take a sheet: as wide as it is, with the fit, from wall to wall in the files."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf

from kerfolio.agreement.same_contour import NEAR
from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding
from kerfolio.basis.measures import precise
from kerfolio.basis.said import Words, said
from kerfolio.basis.tolerance import NOISE
from kerfolio.geometry.contour import Contour, Point
from kerfolio.model.feature_kind import NOTCH
from kerfolio.settling.settled import Operation, SettledFeature, SettledPart, SettledPlan

_PARALLEL = 0.01
"""How far, mm, the ends of a wall may differ in their distance from the middle of the slot."""
_LEAST = 0.1
"""Share of the slot's length that a wall is long, at least."""
_THROUGH = (Operation.OPENING, Operation.OUTLINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A feature that takes a sheet, its whole name, and how wide it must be, mm."""

    feature: SettledFeature
    name: str
    meant: float

    def misfit(self, width: float) -> Words:
        """Return in words that it has another width."""
        return said("{} is not {}", precise("width", width), precise("meant", self.meant))


def stated_widths(written: Written) -> Iterator[Finding]:
    """Yield the slots whose stated width is not that of the sheet that goes in, with the fit."""
    for settled in written.edition.variants:
        for part in settled.parts:
            for slot in _slots(settled, part):
                width = slot.feature.width.value
                if abs(width - slot.meant) > NOISE:
                    how = slot.misfit(width)
                    yield written.differ(f"slot `{slot.name}`", settled.variant.label, how)


def walled_slots(settled: SettledPlan, part: SettledPart) -> tuple[Slot, ...]:
    """Return the slots that have walls: of one within a window there is nothing to measure."""
    own = [contour for cut in part.cuts for contour in cut.contours]
    return tuple(
        each for each in _slots(settled, part) if abs(across(each, own) - each.meant) <= NEAR
    )


def _slots(settled: SettledPlan, part: SettledPart) -> Iterator[Slot]:
    for feature in part.features:
        if feature.takes and feature.kind.fitted and feature.room:
            meant = settled.sheet(feature.takes).thickness + 2 * feature.room.width
            yield Slot(feature=feature, name=f"{part.name}.{feature.name}", meant=meant)


def cuts_it(slot: Slot, layer: str) -> bool:
    """Tell whether a layer of a cut file goes as deep as the slot."""
    operation = layer.split("_")[0]
    return operation == Operation.POCKET if slot.feature.depth else operation in _THROUGH


def across(slot: Slot, contours: Sequence[Contour]) -> float:
    """Return the distance in mm between the walls nearest to its middle; 0 where one is missing."""
    left, right = inf, -inf
    for away in _walls(slot.feature, contours):
        if away > 0:
            left = min(left, away)
        else:
            right = max(right, away)
    return left - right if left - right < inf else 0.0


def _walls(feature: SettledFeature, contours: Sequence[Contour]) -> Iterator[float]:
    """Yield how far, to the left, each straight line along the feature is from its middle."""
    (x, y), (dx, dy) = feature.at, feature.direction
    half = feature.length.value / 2
    if feature.kind is NOTCH:
        x, y = x + half * dx, y + half * dy
    for (ax, ay), (bx, by) in _lines(contours):
        off, end = (ay - y) * dx - (ax - x) * dy, (by - y) * dx - (bx - x) * dy
        if abs(off - end) > _PARALLEL:
            continue
        one, other = (ax - x) * dx + (ay - y) * dy, (bx - x) * dx + (by - y) * dy
        shared = min(max(one, other), half) - max(min(one, other), -half)
        if shared > _LEAST * 2 * half:
            yield (off + end) / 2


def _lines(contours: Sequence[Contour]) -> Iterator[tuple[Point, Point]]:
    for contour in contours:
        if contour.closed and contour.vertices:
            ends = (*contour.vertices[1:], contour.vertices[0])
            for (x, y, bulge), (u, v, _) in zip(contour.vertices, ends, strict=True):
                if not bulge:
                    yield (x, y), (u, v)
