"""The fewest straight cuts of a yard's panel saw that leave blanks small enough to take home.

A cut goes from edge to edge of what it divides, and through no piece. Between convex and bent
shapes alike a straight cut square to the sheet passes if and only if it passes between their boxes.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import moved, turned
from kerfolio.layouts.guillotine import Box
from kerfolio.layouts.layout import Placement
from kerfolio.settling.settled import SettledPlan

KERF = 4.0
"""mm that a panel saw takes, and more (common practice, no single source)."""

CLEAR = 1.0
"""mm that are left between the saw's cut and a piece on either side."""

MOST_CUTS = 4
"""Beyond that a yard charges by the hour, and a sheet is better cut at home."""

_LEAST = 30.0  # mm: no narrower strip is sawn off
_EDGE = 1e-6

Fits = Callable[[Box, bool], bool]
"""Tells of a box, and of whether pieces lie in it, whether it can be taken home."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelCut:
    """A cut at ``at`` mm: ``across`` the sheet's length (at that x), or along it (at that y).

    ``panel`` is what it divides; ``within`` says which that is: sides of earlier cuts by their
    numbers, ``("right", 1)``.
    """

    across: bool
    at: float
    panel: Box
    within: tuple[tuple[str, int], ...] = ()

    @property
    def from_edge(self) -> float:
        """How far it lies from the left or the lower edge of what it divides, mm."""
        return self.at - self.panel[0 if self.across else 1]


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelBlank:
    """What is left between cuts, mm, and the names of the pieces that lie in it."""

    box: Box
    pieces: tuple[str, ...]

    @property
    def size(self) -> tuple[float, float]:
        """Its sides along the sheet and across it, mm."""
        return self.box[2] - self.box[0], self.box[3] - self.box[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelCuts:
    """The cuts in order, and the blanks they leave, those without pieces among them."""

    cuts: tuple[PanelCut, ...]
    blanks: tuple[PanelBlank, ...]

    @property
    def laden(self) -> tuple[PanelBlank, ...]:
        """The blanks that pieces lie in, as they are numbered from 1; the others are offcuts."""
        return tuple(each for each in self.blanks if each.pieces)


@dataclass(frozen=True, slots=True)
class _Way:
    """How a panel is cut up: nothing, or one cut and how both halves are."""

    count: int
    worst: float
    cut: tuple[bool, float] | None = None


def box_of(placed: Placement, points: Iterable[SettledPlan]) -> Box:
    """Return the box of a piece on its sheet, at all points together; KeyError for another part."""
    parts = (settled.part(placed.part) for settled in points)
    found = [bounds(moved(turned(part.routed, placed.turn), placed.x, placed.y)) for part in parts]
    return (
        min(each.x0 for each in found),
        min(each.y0 for each in found),
        max(each.x1 for each in found),
        max(each.y1 for each in found),
    )


def panel_cuts(
    size: tuple[float, float],
    pieces: Mapping[str, Box],
    fits: Fits,
    limits: Sequence[float],
    step: float = 1.0,
    margin: float = CLEAR,
) -> PanelCuts | None:
    """Return the fewest cuts after which every blank ``fits``; None where four are not enough.

    ``pieces`` are their boxes by name, ``limits`` lengths at which a cut is worth trying, mm.
    Cuts lie whole ``step`` mm from the edge of what they divide, and leave ``margin`` beside pieces
    where there is room. Among as few cuts those are taken whose largest blank is least.
    """
    whole: Box = (0.0, 0.0, *size)

    def inside(panel: Box) -> dict[str, Box]:
        return {name: box for name, box in pieces.items() if _is_in(box, panel)}

    @cache
    def best(panel: Box, most: int) -> _Way | None:
        own = inside(panel)
        if fits(panel, bool(own)):
            return _Way(0, _area(panel) if own else 0.0)
        if most == 0:
            return None
        found: _Way | None = None
        for across, at in _candidates(panel, own.values(), limits, (step, margin)):
            ways = [best(half, most - 1) for half in _halves(panel, across, at)]
            one, other = ways
            if one is None or other is None or one.count + other.count >= most:
                continue
            way = _Way(1 + one.count + other.count, max(one.worst, other.worst), (across, at))
            if found is None or (way.count, way.worst) < (found.count, found.worst - _EDGE):
                found = way
        return found

    for most in range(MOST_CUTS + 1):
        if best(whole, most) is not None:
            cuts: list[PanelCut] = []
            blanks = tuple(_followed(whole, most, best, inside, cuts, ()))
            return PanelCuts(cuts=tuple(cuts), blanks=blanks)
    return None


def _followed(
    panel: Box,
    most: int,
    best: Callable[[Box, int], _Way | None],
    inside: Callable[[Box], dict[str, Box]],
    cuts: list[PanelCut],
    within: tuple[tuple[str, int], ...],
) -> Iterator[PanelBlank]:
    """Yield the blanks of a panel, and put its cuts in a list on the way."""
    way = best(panel, most)
    if way is None or way.cut is None:
        yield PanelBlank(box=panel, pieces=tuple(inside(panel)))
        return
    across, at = way.cut
    cuts.append(PanelCut(across=across, at=at, panel=panel, within=within))
    number = len(cuts)
    sides = ("left", "right") if across else ("below", "above")
    for side, half in zip(sides, _halves(panel, across, at), strict=True):
        yield from _followed(half, most - 1, best, inside, cuts, (*within, (side, number)))


def _halves(panel: Box, across: bool, at: float) -> tuple[Box, Box]:
    x0, y0, x1, y1 = panel
    low, high = at - KERF / 2, at + KERF / 2
    if across:
        return (x0, y0, low, y1), (high, y0, x1, y1)
    return (x0, y0, x1, low), (x0, high, x1, y1)


def _candidates(
    panel: Box, boxes: Iterable[Box], limits: Sequence[float], ways: tuple[float, float]
) -> Iterator[tuple[bool, float]]:
    """Yield the cuts worth trying: close to the pieces on either side, half way, at a limit."""
    lying, (step, margin) = list(boxes), ways
    beside = max(0.0, margin - CLEAR)
    for across, low, high in ((True, 0, 2), (False, 1, 3)):
        first, last = panel[low], panel[high]
        seen: set[float] = set()
        for start, end in _free(lying, low, high, first, last):
            ends = max(start, first + _LEAST), min(end, last - _LEAST)
            middle = sum(ends) / 2
            near = min(ends[0] + beside, middle), max(ends[1] - beside, middle)
            wanted = (*near, middle, *(first + x for x in limits), *(last - x for x in limits))
            for each in wanted:
                at = _on_step(min(max(each, near[0]), near[1]) - first, ends, first, step)
                if at is not None and at not in seen:
                    seen.add(at)
                    yield across, at


def _free(
    boxes: Sequence[Box], low: int, high: int, first: float, last: float
) -> Iterator[tuple[float, float]]:
    """Yield from where to where the middle of a saw's cut may lie."""
    away, reach = KERF / 2 + CLEAR, first - KERF / 2 - CLEAR
    for box in sorted(boxes, key=lambda each: each[low]):
        if box[low] - away >= reach + away:
            yield reach + away, box[low] - away
        reach = max(reach, box[high])
    if last - KERF / 2 >= reach + away:
        yield reach + away, last - KERF / 2


def _on_step(away: float, ends: tuple[float, float], first: float, step: float) -> float | None:
    """Return the place at whole steps from an edge that is nearest to one so far ``away``."""
    for each in (math.floor(away / step), math.ceil(away / step)):
        at = first + each * step
        if ends[0] - _EDGE <= at <= ends[1] + _EDGE:
            return at
    return None


def _is_in(box: Box, panel: Box) -> bool:
    return (
        panel[0] - _EDGE <= box[0]
        and panel[1] - _EDGE <= box[1]
        and box[2] <= panel[2] + _EDGE
        and box[3] <= panel[3] + _EDGE
    )


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])
