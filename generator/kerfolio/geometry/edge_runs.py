"""What is left of an outline's own edges once features stand on them, and what lies near it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

import shapely

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import Arc, Edge, edges, heading
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.noding import near_pairs

_HAIR = 0.01
"""Edges no longer than this, mm, are none."""

_Stretch = tuple[float, float]


def path_of(run: Edge) -> Contour:
    """Return a run as an open path."""
    return Contour(((*run.start, run.bulge), (*run.end, 0.0)), closed=False)


def kept_runs(outline: Contour, shape: Contour) -> tuple[Edge, ...]:
    """Return the edges of an outline, in its order, as far as they are edges of a shape, too.

    Tabs stand before them, notches take from them.
    """
    ours, theirs = list(edges(outline)), list(edges(shape))
    every, count = [*ours, *theirs], len(ours)
    beside: dict[int, list[Edge]] = {}
    for one, other in near_pairs(every):
        if one < count <= other:
            beside.setdefault(one, []).append(every[other])
    return tuple(
        run for index, edge in enumerate(ours) for run in _shared(edge, beside.get(index, []))
    )


def parted(
    runs: Sequence[Edge], start: Point, end: Point
) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    """Return of some runs what lies between two points, and the rest.

    Straight runs are parted where they go on; of arcs only what joins the points counts.
    """
    taken: list[Edge] = []
    rest: list[Edge] = []
    for run in runs:
        lies = [] if run.bulge else _overlaps(run, [(start, end)])
        if run.bulge and {_near(run.start, (start, end)), _near(run.end, (start, end))} == {0, 1}:
            taken.append(run)
        elif lies:
            taken += [_cut(run, stretch) for stretch in lies]
            rest += [_cut(run, stretch) for stretch in _gaps(lies, math.dist(run.start, run.end))]
        else:
            rest.append(run)
    return tuple(taken), tuple(rest)


def nearest(runs: Sequence[Edge], shape: Contour) -> tuple[float, Point]:
    """Return how near a closed shape comes to runs, mm, and where on them that is."""
    lines = shapely.MultiLineString([points(path_of(each)) for each in runs])
    across = shapely.shortest_line(lines, shapely.Polygon(points(shape)))
    here = across.coords[0]
    return float(across.length), (float(here[0]), float(here[1]))


def _shared(edge: Edge, others: Iterable[Edge]) -> Iterable[Edge]:
    """Return what of an edge is in others, in its direction."""
    arc = edge.arc
    if arc is None:
        straight = [(each.start, each.end) for each in others if not each.bulge]
        return [_cut(edge, stretch) for stretch in _overlaps(edge, straight)]
    return [each for each in others if each.arc and _is_of(each.arc, arc)]


def _is_of(arc: Arc, whole: Arc) -> bool:
    """Tell whether an arc is a part of another one, whichever way they run."""
    same = math.dist(arc.centre, whole.centre) < _HAIR and abs(arc.radius - whole.radius) < _HAIR
    middle = arc.point(arc.start + arc.sweep / 2)
    return same and whole.spans(middle)


def _overlaps(run: Edge, lines: Iterable[tuple[Point, Point]]) -> list[_Stretch]:
    """Return from where to where lines run along a straight run, mm from its start, in order."""
    (x, y), (ux, uy), size = run.start, heading(run), math.dist(run.start, run.end)
    found: list[_Stretch] = []
    for line in lines:
        offs = [(px - x) * uy - (py - y) * ux for px, py in line]
        ends = sorted((px - x) * ux + (py - y) * uy for px, py in line)
        first, last = max(0.0, ends[0]), min(size, ends[1])
        if max(map(abs, offs)) <= SAME and last - first > _HAIR:
            found.append((first, last))
    merged: list[_Stretch] = []
    for first, last in sorted(found):
        if merged and first - merged[-1][1] <= SAME:
            merged[-1] = (merged[-1][0], max(last, merged[-1][1]))
        else:
            merged.append((first, last))
    return merged


def _gaps(stretches: Sequence[_Stretch], size: float) -> list[_Stretch]:
    ends = [0.0, *(end for stretch in stretches for end in stretch), size]
    pairs = zip(ends[::2], ends[1::2], strict=True)
    return [(first, last) for first, last in pairs if last - first > _HAIR]


def _cut(run: Edge, stretch: _Stretch) -> Edge:
    (x, y), (ux, uy), size = run.start, heading(run), math.dist(run.start, run.end)
    first, last = stretch
    start = run.start if first == 0.0 else (x + first * ux, y + first * uy)
    end = run.end if last == size else (x + last * ux, y + last * uy)
    return Edge(start, end)


def _near(point: Point, ends: Sequence[Point]) -> int | None:
    return next((index for index, end in enumerate(ends) if math.dist(point, end) <= SAME), None)
