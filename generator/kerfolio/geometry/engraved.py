"""Lines as a round cutter leaves them: where its strokes run together, and where spaces close.

What a cutter sweeps is the lines grown by half its stroke. Lines that hang together are one figure
(a letter, mostly). Between figures, and in the spaces of each, wood must stay: a closed space is
what lines surround, an open one what a figure's hull adds, as in the letters E and C.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import hypot
from typing import Any

import shapely

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import traced

_FINE = 0.02
_TOUCHING = 1e-3
_NEARLY = 0.025
"""A stroke's end this near another, in shares of the longest stroke, is meant to meet it."""
_DOT = 0.15
"""A figure smaller than this share of the largest is a dot, which may fill."""
_SPECK = 0.02
"""A closed space narrower than this share of its figure is a slip of the drawing."""
_SMALL = 0.25
"""An open space is only a bay where its largest circle is smaller than this share of its figure."""
_GRID = 1e-4
"""What lies this near is the same point, mm, so that an end on a line meets it."""
_PLACES = 6
"""Decimals of mm to which lines are told apart."""
_ROUND = 8
_FINEST, _STEP = 1000.0, 1.02
"""The first stroke tried is this share of the lines' extent, each next one so many times wider."""
_FINER, _NARROWER = 0.95, 14
"""So many narrower strokes are looked at, too, each this share of the one before."""


@dataclass(frozen=True, slots=True)
class _Figure:
    """Lines that hang together, and the spaces they leave, as shapes of the library."""

    lines: Any
    closed: tuple[Any, ...]
    open: tuple[Any, ...]


def run_together(lines: tuple[Contour, ...], width: float) -> tuple[Point, ...]:
    """Return where strokes ``width`` mm wide along lines leave no wood; none where all stay apart.

    That is between two figures, in the middle of a space that has closed, and in an open space
    whose mouth has closed.
    """
    still, (x, y) = _still(lines)
    return tuple((x + dx, y + dy) for dx, dy in _up_to(still, width))


def widest_stroke(lines: tuple[Contour, ...]) -> float:
    """Return the widest stroke, mm, that leaves wood in every space and between all figures.

    It is found by trying, to a ten-thousandth of itself; lines without any space take
    a stroke as wide as they reach.
    """
    return _widest(_still(lines)[0])


def clipped(lines: tuple[Contour, ...], middle: Point, radius: float) -> tuple[Contour, ...]:
    """Return what of lines lies in a circle, as open paths."""
    disc = shapely.buffer(shapely.Point(middle), radius, quad_segs=4 * _ROUND)
    strokes = [shapely.LineString(run) for each in lines if len(run := traced(each, _FINE)) > 1]
    cut = (shapely.get_parts(shapely.intersection(each, disc)) for each in strokes)
    return tuple(
        Contour(tuple((float(x), float(y), 0.0) for x, y in each.coords), closed=False)
        for parts in cut
        for each in parts
        if each.geom_type == "LineString" and each.length > 0
    )


def _still(lines: tuple[Contour, ...]) -> tuple[tuple[Contour, ...], Point]:
    """Return lines with their first point at 0,0, and where it was: most are only moved about."""
    x, y, _ = lines[0].vertices[0]
    return tuple(
        Contour(
            tuple((round(a - x, _PLACES), round(b - y, _PLACES), c) for a, b, c in each.vertices),
            each.closed,
        )
        for each in lines
    ), (x, y)


def _up_to(lines: tuple[Contour, ...], width: float) -> tuple[Point, ...]:
    """Return where strokes run together, of this width or else of the widest narrower one.

    A space whose mouth has closed is gone altogether with a wider stroke, and so would not be told.
    """
    widths = (width * _FINER**step for step in range(_NARROWER))
    return next((found for each in widths if (found := _run_together(lines, each))), ())


@lru_cache(maxsize=4096)
def _run_together(lines: tuple[Contour, ...], width: float) -> tuple[Point, ...]:
    figures = _figures(lines)
    grown = [_grown(each.lines, width) for each in figures]
    found = [*_between(figures, grown)]
    for each, swept in zip(figures, grown, strict=True):
        found += _within(each, swept)
    return tuple(found)


@lru_cache(maxsize=512)
def _widest(lines: tuple[Contour, ...]) -> float:
    """Widen the stroke step by step, since a space may seem open again once it is gone."""
    box = shapely.total_bounds([each.lines for each in _figures(lines)]).tolist()
    most = hypot(box[2] - box[0], box[3] - box[1])
    low, high = 0.0, most / _FINEST
    while not _run_together(lines, high):
        if high >= most:
            return high
        low, high = high, high * _STEP
    while high - low > 1e-4 * high:
        middle = (low + high) / 2
        low, high = (low, middle) if _run_together(lines, middle) else (middle, high)
    return low


def _grown(lines: Any, width: float) -> Any:
    return shapely.buffer(lines, width / 2, quad_segs=_ROUND)


@lru_cache(maxsize=256)
def _figures(lines: tuple[Contour, ...]) -> tuple[_Figure, ...]:
    strokes = [shapely.LineString(run) for each in lines if len(run := traced(each, _FINE)) > 1]
    extent = max(map(_extent, strokes))
    strokes += _bridges(strokes, _NEARLY * extent)
    one, other = shapely.STRtree(strokes).query(strokes, predicate="dwithin", distance=_TOUCHING)
    leader = list(range(len(strokes)))

    def head(index: int) -> int:
        while leader[index] != index:
            index = leader[index]
        return index

    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        heads = head(a), head(b)
        leader[max(heads)] = min(heads)
    groups: dict[int, list[Any]] = {}
    for index, stroke in enumerate(strokes):
        groups.setdefault(head(index), []).append(stroke)
    figures = [shapely.union_all(each, grid_size=_GRID) for each in groups.values()]
    dot = _DOT * max(map(_extent, figures))
    return tuple(_figure(each, is_dot=_extent(each) < dot) for each in figures)


def _extent(shape: Any) -> float:
    """Return the larger side of the box around a shape, mm."""
    x0, y0, x1, y1 = shapely.bounds(shape).tolist()
    return float(max(x1 - x0, y1 - y0))


def _bridges(strokes: Sequence[Any], near: float) -> list[Any]:
    """Return what leads from an open stroke's end to another stroke that it all but meets."""
    tree, found = shapely.STRtree(strokes), []
    for number, stroke in enumerate(strokes):
        if stroke.is_closed:
            continue
        for spot in (shapely.get_point(stroke, 0), shapely.get_point(stroke, -1)):
            for other in sorted(tree.query(spot, predicate="dwithin", distance=near).tolist()):
                if other != number and shapely.distance(spot, strokes[other]) > 0:
                    found.append(shapely.shortest_line(spot, strokes[other]))
    return found


def _figure(lines: Any, *, is_dot: bool) -> _Figure:
    hull = shapely.convex_hull(lines)
    if hull.geom_type != "Polygon" or is_dot:
        return _Figure(lines, (), ())
    rim = shapely.union_all([lines, hull.exterior], grid_size=_GRID)
    near = shapely.buffer(lines, _TOUCHING)
    closed: list[Any] = []
    open_: list[Any] = []
    for face in shapely.get_parts(shapely.polygonize(shapely.get_parts(rim).tolist())):
        is_open = not shapely.covers(near, face.exterior)
        wide = 2 * shapely.maximum_inscribed_circle(face).length
        if wide > (_SMALL * _narrow(lines) if is_open else _SPECK * _extent(lines)):
            (open_ if is_open else closed).append(face)
    return _Figure(lines, tuple(closed), tuple(open_))


def _narrow(shape: Any) -> float:
    x0, y0, x1, y1 = shapely.bounds(shape).tolist()
    return float(min(x1 - x0, y1 - y0))


def _between(figures: Sequence[_Figure], grown: Sequence[Any]) -> Iterator[Point]:
    one, other = shapely.STRtree(grown).query(grown, predicate="intersects")
    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        if a < b:
            (x0, y0), (x1, y1) = shapely.get_coordinates(
                shapely.shortest_line(figures[a].lines, figures[b].lines)
            ).tolist()
            yield (x0 + x1) / 2, (y0 + y1) / 2


def _within(figure: _Figure, swept: Any) -> Iterator[Point]:
    for space in (*figure.closed, *figure.open):
        if shapely.difference(space, swept).is_empty:
            x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(space))[0].tolist()
            yield x, y
    for part in shapely.get_parts(swept):
        for ring in shapely.get_rings(part)[1:].tolist():
            spot = shapely.point_on_surface(shapely.Polygon(ring))
            if any(shapely.contains(space, spot) for space in figure.open):
                yield float(spot.x), float(spot.y)
