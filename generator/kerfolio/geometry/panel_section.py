"""Two panels cut by a plane: what is seen of each, what both fill, and how far they are apart."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Any

import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.packing import Flat, flat_of
from kerfolio.geometry.panel_solid import moved, solid_of
from kerfolio.geometry.rigid import Rigid

_LINES = 61
"""So many lines side by side are looked along for the place where two panels meet."""
_LEAST = 1e-3
_SPECK = 1e-6
_LINE_STRING = 1  # the library's number of its type


@dataclass(frozen=True, slots=True)
class Section:
    """Two panels in a plane, its x and y in mm: shapes of the library."""

    one: Any
    other: Any


@dataclass(frozen=True, slots=True)
class Reach:
    """A stretch along x from ``a`` to ``b``, both of one y.

    ``kind`` tells what of two panels it is: an ``overlap``, a ``gap`` between them, or how far the
    first is ``in`` the second, or ``past`` it.
    """

    a: Point
    b: Point
    kind: str

    @property
    def size(self) -> float:
        """How long it is, mm."""
        return self.b[0] - self.a[0]

    @property
    def middle(self) -> Point:
        """Its middle."""
        return (self.a[0] + self.b[0]) / 2, self.a[1]


def section(one: PosedPanel, others: Iterable[PosedPanel], plane: Rigid) -> Section:
    """Return a panel and others as a plane cuts them, the plane's own x and y and z = 0."""
    return Section(cut(one, plane), shapely.union_all([cut(each, plane) for each in others]))


def cut(posed: PosedPanel, plane: Rigid) -> Any:
    """Return a panel as a plane cuts it, the plane's own x and y and z = 0: a shape."""
    solid = moved(solid_of(posed.panel).solid, plane.inverse.after(posed.pose))
    rings = [shapely.Polygon(each) for each in solid.slice(0.0).to_polygons() if len(each) > 2]
    solids = [each for each in rings if each.exterior.is_ccw]
    holes = [each for each in rings if not each.exterior.is_ccw]
    return shapely.difference(shapely.union_all(solids), shapely.union_all(holes))


def is_cut(made: Section, near: float) -> bool:
    """Tell whether both panels are there within ``near`` mm of the plane's origin."""
    window = shapely.box(-near, -near, near, near)
    return all(shapely.intersects(each, window) for each in (made.one, made.other))


def reach_along(made: Section, near: float, wanted: float | None) -> Reach | None:
    """Return where along x two panels share a stretch, or else leave one free between them.

    Of those within ``near`` mm of the origin that is taken whose size is nearest to the one
    ``wanted``; without one the largest shared, else the smallest free one. None where none is.
    """
    found = [*_reaches(made, near)]
    if not found:
        return None
    shared = [each for each in found if each.kind == "overlap"]
    pool = shared or [each for each in found if each.kind == "gap"] or found
    if wanted is not None:
        return min(pool, key=lambda each: (round(abs(each.size - wanted), 3), *_order(each)))
    if shared:
        return max(pool, key=lambda each: (round(each.size, 3), -_away(each)))
    return min(pool, key=lambda each: (round(each.size, 3), _away(each)))


def _order(reach: Reach) -> tuple[float, float]:
    """Return what to sort like places by: at an end both panels are best seen beside their wall."""
    beside = abs(reach.a[1]) if reach.kind in ("in", "past") else 0.0
    return -round(beside, 3), _away(reach)


def _away(reach: Reach) -> float:
    return round(abs(reach.middle[0]) + abs(reach.middle[1]), 3)


def _reaches(made: Section, near: float) -> Iterator[Reach]:
    """Yield every stretch along one of the lines, which are asked all at once."""
    heights = [near * (2 * step / (_LINES - 1) - 1) * 0.98 + 1e-4 for step in range(_LINES)]
    lines = shapely.linestrings([[(-near, y), (near, y)] for y in heights])
    in_one = shapely.intersection(lines, made.one)
    spans = (
        heights,
        _spans(in_one),
        _spans(shapely.intersection(lines, made.other)),
        _spans(shapely.intersection(in_one, made.other)),
    )
    low, _, high, _ = shapely.bounds(shapely.intersection(made.other, _window((0, 0), near)))
    for y, one, other, both in zip(*spans, strict=True):
        yield from (Reach((a, y), (b, y), "overlap") for a, b in both if b - a > _LEAST)
        ends = sorted([(*each, 0) for each in one] + [(*each, 1) for each in other])
        for tip in (each for span in one for each in span if -near < each < near):
            for side, kind in ((low, "in"), (high, "past")):
                if abs(tip - side) > _LEAST:
                    yield Reach((min(tip, side), y), (max(tip, side), y), kind)
        for (_, end, mine), (start, _, theirs) in pairwise(ends):
            if mine != theirs and _LEAST < start - end < inf:
                yield Reach((end, y), (start, y), "gap")


def _spans(shapes: Any) -> list[list[tuple[float, float]]]:
    """Return from where to where along x there is something of each of some shapes."""
    parts, of = shapely.get_parts(shapes, return_index=True)
    is_line = (shapely.get_type_id(parts) == _LINE_STRING) & (shapely.length(parts) > 0)
    found: list[list[tuple[float, float]]] = [[] for _ in shapes]
    for number, bounds in zip(of[is_line], shapely.bounds(parts[is_line]), strict=True):
        found[number].append((float(bounds[0]), float(bounds[2])))
    return [sorted(each) for each in found]


def areas(shapes: Iterable[Any], middle: Point, half: float) -> tuple[Flat, ...]:
    """Return what all of some shapes fill within a square window, as areas of the plane."""
    window, made = _window(middle, half), None
    for each in shapes:
        made = each if made is None else shapely.intersection(made, each)
    parts = shapely.get_parts(shapely.intersection(made, window))
    return tuple(
        flat_of(each) for each in parts if each.geom_type == "Polygon" and each.area > _SPECK
    )


def rims(shape: Any, middle: Point, half: float) -> tuple[tuple[Point, ...], ...]:
    """Return the lines round a shape within a square window, those of the window left out."""
    lines = shapely.intersection(shapely.boundary(shape), _window(middle, half))
    return tuple(
        tuple((float(x), float(y)) for x, y in each.coords)
        for each in shapely.get_parts(shapely.line_merge(lines))
        if each.geom_type == "LineString" and each.length > _LEAST
    )


def shape_of(points: Sequence[Point]) -> Any:
    """Return the shape within a closed run of points."""
    return shapely.Polygon(points)


def disc(middle: Point, radius: float) -> Any:
    """Return a round shape."""
    return shapely.Point(middle).buffer(radius, quad_segs=24)


def without(shape: Any, others: Iterable[Any]) -> Any:
    """Return a shape less others."""
    return shapely.difference(shape, shapely.union_all([*others]))


def line_within(a: Point, b: Point, middle: Point, half: float) -> tuple[Point, Point] | None:
    """Return what of a line lies within a square window, None where nothing does."""
    part = shapely.intersection(shapely.LineString([a, b]), _window(middle, half))
    if part.is_empty or part.length < _LEAST:
        return None
    (x0, y0), (x1, y1) = part.coords
    return (float(x0), float(y0)), (float(x1), float(y1))


def _window(middle: Point, half: float) -> Any:
    x, y = middle
    return shapely.box(x - half, y - half, x + half, y + half)
