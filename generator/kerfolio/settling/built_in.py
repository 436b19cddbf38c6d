"""What a toolpath program is told instead of the finished edges, where the true cut is built in.

A cutter that cuts e wider than its name takes e / 2 too much on every side. So the edges in the
files lie e / 2 further out of the wood: outlines larger, openings and recesses smaller by e. A
relief keeps the size that goes with the cutter's name, by which the program goes, and moves with
its corner: it comes out e / 2 larger all round, and leaves 0.2 e on the diagonal, less than a fit.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import compress

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.boolean import difference, union
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.grown import grown, grown_region, moved_corner
from kerfolio.geometry.measure import signed_area
from kerfolio.geometry.near import alike
from kerfolio.geometry.relief import relief_contour
from kerfolio.settling.settled import Cut, Operation, Relief, SettledBridge, SettledPart

MOST_CUT = 0.3
"""mm that is built in: no sound cutter in a sound collet is off by more (common practice, no single
source)."""


@lru_cache(maxsize=256)  # a part lies on its sheet, and has files of its own
def built_in(part: SettledPart, cut: float) -> SettledPart:
    """Return a part whose cuts and bridges have a true cut built in, ``cut`` mm beyond its name."""
    if not cut:
        return part
    by = cut / 2
    plain = grown_region(part.plain, by)
    reliefs = [_relief(each, by) for each in part.reliefs]
    told = difference(plain, reliefs) if reliefs else plain
    bridges = tuple(_bridge(each, part.cuts, by) for each in part.bridges)
    return replace(part, cuts=tuple(_cuts(part.cuts, told, by)), bridges=bridges)


def _cuts(cuts: Iterable[Cut], told: Region, by: float) -> Iterator[Cut]:
    holes: list[Contour] = []
    for cut in cuts:
        contours = cut.contours
        match cut.operation:
            case Operation.HOLE:
                contours = tuple(grown(each, -by) for each in contours)
                holes += contours if cut.depth is None else ()
            case Operation.POCKET:
                contours = tuple(_recess(cut, by))
            case Operation.OPENING:
                others = (not each for each in alike(told.openings, holes, SAME))
                contours = tuple(compress(told.openings, others))
            case Operation.OUTLINE:
                contours = (told.outer,)
        yield replace(cut, contours=contours)


def _recess(cut: Cut, by: float) -> Iterator[Contour]:
    reliefs = [_relief(each, by) for each in cut.reliefs]
    for each in cut.square or cut.contours:
        smaller = grown(each, -by)
        yield union(Region(smaller), reliefs).outer if reliefs else smaller


def _relief(relief: Relief, by: float) -> Contour:
    return relief_contour(moved_corner(relief.corner, by), relief.radius, relief.style)


def _bridge(bridge: SettledBridge, cuts: Iterable[Cut], by: float) -> SettledBridge:
    """Return a bridge on the edge that is told, where it stood on the finished one."""
    (x, y), out = bridge.at, by if bridge.operation is Operation.OUTLINE else -by
    for contour in (c for cut in cuts if cut.operation is bridge.operation for c in cut.contours):
        sense = out if signed_area(contour) > 0 else -out
        for edge in edges(contour):
            if not edge.bulge and _beside(edge, bridge):
                (ax, ay), (bx, by_) = edge.start, edge.end
                size = ((bx - ax) ** 2 + (by_ - ay) ** 2) ** 0.5
                return replace(
                    bridge, at=(x + sense * (by_ - ay) / size, y - sense * (bx - ax) / size)
                )
    return bridge


def _beside(edge: Edge, bridge: SettledBridge) -> bool:
    """Tell whether a bridge's middle stands on a straight edge."""
    (ax, ay), (bx, by), (x, y) = edge.start, edge.end, bridge.at
    dx, dy = bx - ax, by - ay
    size = dx * dx + dy * dy
    along = ((x - ax) * dx + (y - ay) * dy) / size
    off = abs((x - ax) * dy - (y - ay) * dx) / size**0.5
    return 0.0 <= along <= 1.0 and off < SAME
