"""Whether a plan is what was drawn: each part settled as drawn, laid over its drawing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from kerfolio.adopting.adopted import Adopted
from kerfolio.adopting.sets import PartPlan
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.nesting import off_shape
from kerfolio.geometry.transform import moved
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan

_ALIKE = 3.0
"""Openings so near, mm, are one."""

EXACT = 0.02
"""A plan is as drawn where it strays no further, mm, fits apart."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Deviation:
    """Where a part is not as drawn: what of it, by how much, mm; ``at`` is in its own drawing."""

    part: str
    what: str
    off: float
    at: Point


def deviations(found: Adopted, drawn: SettledPlan) -> tuple[Deviation, ...]:
    """Return what strays from the drawing by more than 0.02 mm; ``drawn`` has no fit."""
    parts = {each.name: each for each in drawn.parts}
    return tuple(
        each
        for part in found.parts
        for each in (_of(part, parts[part.name]) if part.name in parts else ())
    )


def _of(part: PartPlan, settled: SettledPart) -> Iterator[Deviation]:
    box = bounds(settled.plain.outer)
    mine = bounds(part.made.draft.outline.contour)
    region = part.made.draft.region
    dx, dy = box.x0 - mine.x0, box.y0 - mine.y0
    there = Region(moved(region.outer, dx, dy), tuple(moved(o, dx, dy) for o in region.openings))
    off = off_shape(there.outer, settled.plain.outer)
    if off > EXACT:
        yield Deviation(part=part.name, what="outline", off=off, at=mine.centre)
    left = [*settled.plain.openings, *_to_a_depth(settled)]
    for opening, source in zip(there.openings, region.openings, strict=True):
        near = min(left, key=partial(_apart, opening), default=None)
        at = bounds(source).centre
        if near is None or _apart(opening, near) > _ALIKE:
            yield Deviation(part=part.name, what="opening", off=_ALIKE, at=at)
            continue
        left.remove(near)
        off = off_shape(opening, near)
        if off > EXACT:
            yield Deviation(part=part.name, what="opening", off=off, at=at)


def _to_a_depth(settled: SettledPart) -> Iterator[Contour]:
    for cut in settled.cuts:
        if cut.depth is not None and cut.operation is not Operation.ENGRAVE:
            yield from cut.square or cut.contours


def _apart(one: Contour, other: Contour) -> float:
    (ax, ay), (bx, by) = bounds(one).centre, bounds(other).centre
    return max(abs(ax - bx), abs(ay - by))
