"""Where a sheet can be clamped: the largest spots along its edges that no cutter comes near."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.geometry.contour import Region
from kerfolio.geometry.free_runs import Strip, free_runs, kept_clear
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.transform import moved, turned
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.stacks import zones
from kerfolio.settling.settled import SettledPlan, SettledSheet

EDGES = ("bottom", "top", "left", "right")

LEAST_LONG = 60.0
DEPTHS = (60.0, 45.0, 30.0, 20.0)
_AN_EDGE = 2
_CORNER = 40.0
"""How long a spot is at least, how deep a clamp may reach on to the sheet, how many spots an edge
has, and what stays free of the corner that is 0,0; mm, common practice, no single source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampSpot:
    """A free rectangle of the sheet along one of its edges, mm from the lower left corner.

    ``edge`` is one of ``EDGES``; ``box`` is left, bottom, right, top.
    """

    edge: str
    box: Strip

    @property
    def along(self) -> tuple[float, float]:
        """Where along its edge the spot begins and ends, mm from the left or from below."""
        x0, y0, x1, y1 = self.box
        return (y0, y1) if _upright(self.edge) else (x0, x1)

    @property
    def depth(self) -> float:
        """How far on to the sheet it reaches, mm."""
        x0, y0, x1, y1 = self.box
        return x1 - x0 if _upright(self.edge) else y1 - y0


def clear_of_pieces(settled: SettledPlan, sheet: str) -> float:
    """Return how far clamps keep from every piece, mm: the widest cutter in use and the gap."""
    stated = settled.sheet(sheet)
    named = [cut.cutter.name for cut in settled.plan.cuts if cut.sheet.name == sheet]
    cutters = [stated.cutter, *filter(None, map(settled.stock.cutter, named))]
    return max(each.diameter for each in cutters) + stated.gap


def clamp_spots(
    settled: SettledPlan, layout: SheetLayout, *others: SettledPlan
) -> tuple[ClampSpot, ...]:
    """Return the zones that a sheet's clamps are stated for, else its free spots, edge by edge.

    ``others`` are the plan at other points, where spots are free too. KeyError for a part or sheet
    the plan has not.
    """
    sheet = settled.sheet(layout.sheet)
    if sheet.clamps:
        return tuple(_stated(sheet, layout.size))
    shapes = (
        moved(turned(plan.part(each.part).routed, each.turn), each.x, each.y)
        for plan in (settled, *others)
        for each in layout.placements
    )
    return free_spots(
        layout.size, list(dict.fromkeys(shapes)), clear_of_pieces(settled, layout.sheet)
    )


def _stated(sheet: SettledSheet, size: tuple[float, float]) -> Iterator[ClampSpot]:
    for clamp in sorted(sheet.clamps, key=lambda each: (EDGES.index(each.edge), each.at)):
        for box in zones(replace(sheet, clamps=(clamp,)), size):
            yield ClampSpot(edge=clamp.edge, box=box)


def free_spots(
    size: tuple[float, float], shapes: Sequence[Region], clear: float
) -> tuple[ClampSpot, ...]:
    """Return spots of a sheet (mm) on which shapes lie that clamps keep ``clear`` mm of.

    Up to two along each edge in the order of ``EDGES``, the deepest first and of these the
    longest; a spot takes all that is free beside it. The lower left corner stays free.
    """
    corner = min(_CORNER, *size)
    taken = [kept_clear(each, clear) for each in shapes]
    taken.append(_flat((0.0, 0.0, corner, corner)))
    found: list[ClampSpot] = []
    for edge in EDGES:
        spots = _spots_along(edge, size, taken, clear)
        taken += [_flat(_grown(each.box, clear)) for each in spots]
        found += sorted(spots, key=lambda each: each.box)
    return tuple(found)


def _spots_along(
    edge: str, size: tuple[float, float], taken: Sequence[Flat], clear: float
) -> list[ClampSpot]:
    spots: list[ClampSpot] = []
    for depth in DEPTHS:
        if depth > min(size):
            continue
        own = [_flat(_grown(each.box, clear)) for each in spots]
        strip = _strip(edge, size, depth)
        runs = free_runs([*taken, *own], strip, upright=_upright(edge))
        spots += list(_longest(edge, strip, runs, _AN_EDGE - len(spots)))
    return spots


def _longest(
    edge: str, strip: Strip, runs: Sequence[tuple[float, float]], count: int
) -> Iterator[ClampSpot]:
    x0, y0, x1, y1 = strip
    for start, end in sorted(runs, key=lambda run: (run[0] - run[1], run))[:count]:
        if end - start >= LEAST_LONG:
            box = (x0, start, x1, end) if _upright(edge) else (start, y0, end, y1)
            yield ClampSpot(edge=edge, box=box)


def _strip(edge: str, size: tuple[float, float], depth: float) -> Strip:
    width, height = size
    strips = {
        "bottom": (0.0, 0.0, width, depth),
        "top": (0.0, height - depth, width, height),
        "left": (0.0, 0.0, depth, height),
        "right": (width - depth, 0.0, width, height),
    }
    return strips[edge]


def _upright(edge: str) -> bool:
    return edge in ("left", "right")


def _grown(box: Strip, by: float) -> Strip:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def _flat(box: Strip) -> Flat:
    x0, y0, x1, y1 = box
    return Flat(((x0, y0), (x1, y0), (x1, y1), (x0, y1)))
