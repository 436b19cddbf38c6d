"""Openings made wider in a piece that is cut already and too tight: what a second cut takes.

A joint that is too tight by e wants its opening e wider: every wall goes half of that further out.
So does the bottom of a notch; that of a gap between fingers stays, since it sets how flush they
come. Reliefs move with their corners and keep their size. An opening that runs out of its piece is
carried past the edge, so that the cutter finishes its walls. All of it is linear in e.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from math import dist

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import Edge, edges, heading
from kerfolio.geometry.boolean import intersects, union
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.grown import walls_moved
from kerfolio.geometry.measure import signed_area
from kerfolio.geometry.relief import relief_centre, relief_contour, with_discs
from kerfolio.model.feature_kind import FINGERS
from kerfolio.settling.edge import EdgeFrame
from kerfolio.settling.edge_feature import ROOT
from kerfolio.settling.settled import (
    Cut,
    Operation,
    Relief,
    SettledFeature,
    SettledPart,
    SettledSheet,
)

LEAST_REOPEN, MOST_REOPEN = 0.02, 1.0
"""mm: less is below what a cutter takes off cleanly, more is no fit but another sheet (common
practice, no single source)."""

_HAIR = 0.02
_BACK = -0.999
"""The cosine from which on a wall faces the way its feature opens."""


def takers(features: Iterable[SettledFeature]) -> tuple[SettledFeature, ...]:
    """Return those features that a sheet goes into.

    A tab goes into another part's opening: it has none to make wider.
    """
    return tuple(
        each for each in features if each.takes and (each.kind.fitted or each.kind is FINGERS)
    )


def reopened(
    part: SettledPart, sheet: SettledSheet, features: Iterable[SettledFeature], by: float
) -> tuple[Cut, ...]:
    """Return cuts of a part's features that make them ``by`` mm wider, and as much longer.

    ``sheet`` is the part's own, whose true cut is built in where it has one.
    """
    return tuple(_cut(each, part, sheet, by) for each in takers(features))


def _cut(feature: SettledFeature, part: SettledPart, sheet: SettledSheet, by: float) -> Cut:
    out = by / 2 - sheet.cut / 2
    beyond = sheet.cut_width / 2 + ROOT

    def move(edge: Edge) -> float:
        wall = _wall(edge)
        if _is_open(wall, beyond, part.plain):
            return beyond
        return -sheet.cut / 2 if _is_seat(wall, feature) else out

    recess = next((each for each in part.cuts if _recesses(each, feature)), None)
    contours = feature.shape if recess is None else recess.square
    reliefs = part.reliefs if recess is None else recess.reliefs
    made = tuple(_wider(each, reliefs, move) for each in contours)
    if recess is None:
        return Cut(operation=Operation.OPENING, depth=None, contours=made, feature=feature.name)
    return replace(recess, contours=made, square=(), reliefs=())


def _recesses(cut: Cut, feature: SettledFeature) -> bool:
    return cut.operation is Operation.POCKET and cut.feature == feature.name


def _wider(contour: Contour, reliefs: Iterable[Relief], move: Callable[[Edge], float]) -> Contour:
    walls = _outward(contour)
    wider = walls_moved(walls, [move(each) for each in edges(walls)])
    opened = dict(_moved(walls, wider, reliefs))
    if not opened:
        return wider
    centres = {n: relief_centre(r.corner, r.radius, r.style) for n, r in opened.items()}
    made = with_discs(wider, centres, next(iter(opened.values())).radius)
    return made or union(Region(wider), map(_disc, opened.values())).outer


def _outward(contour: Contour) -> Contour:
    """Return a contour that runs counter-clockwise, so that out of it is to the right."""
    if signed_area(contour) > 0:
        return contour
    return Contour(tuple(reversed(contour.vertices)))  # its walls are straight


def _moved(
    walls: Contour, wider: Contour, reliefs: Iterable[Relief]
) -> Iterator[tuple[int, Relief]]:
    """Yield the reliefs of a contour's corners, by their place, where those have gone."""
    for relief in reliefs:
        for place, (x, y, _) in enumerate(walls.vertices):
            if dist((x, y), relief.corner.at) < SAME:
                corner = replace(relief.corner, at=wider.vertices[place][:2])
                yield place, replace(relief, corner=corner)


def _disc(relief: Relief) -> Contour:
    return relief_contour(relief.corner, relief.radius, relief.style)


def _is_open(wall: EdgeFrame, beyond: float, plain: Region) -> bool:
    """Tell whether nothing of the part stands within a distance, mm, out of a wall."""
    strip = wall.box(wall.first + _HAIR, wall.last - _HAIR, _HAIR, beyond)
    return not intersects(plain, strip)


def _is_seat(wall: EdgeFrame, feature: SettledFeature) -> bool:
    """Tell whether a wall is the bottom of a gap between fingers."""
    (vx, vy), (dx, dy) = wall.outward, feature.direction
    return feature.kind is FINGERS and vx * dx + vy * dy < _BACK


def _wall(edge: Edge) -> EdgeFrame:
    """Return the frame of an edge whose outside is to its right."""
    (x, y), size = heading(edge), dist(edge.start, edge.end)
    return EdgeFrame(origin=edge.start, along=(x, y), outward=(y, 0.0 - x), first=0.0, last=size)
