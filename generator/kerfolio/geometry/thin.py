"""Thin places of a flat shape: webs and necks between two walls, and tongues that stand out.

A disc as wide as the least width is rolled about inside the shape (an opening of mathematical
morphology: erode by half the width, dilate back). What it cannot reach is thin: a web where two
walls of the shape face each other across it, a tongue where it hangs on the rest by one side
only, or no more than the tip of an outside corner, which is left alone. A short neck may be
reached from both its sides though the disc does not pass: such are found where two contours come
near each other, and where eroding the outline parts it.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations, pairwise, permutations
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.ops import substring

from kerfolio.basis.keeper import kept
from kerfolio.geometry.contour import Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.rings import ring_area

_FINE = 0.02
_SLACK = 0.05
"""The rolled disc is a polygon; what it misses by no more than this, mm, it has reached."""
_ON = 1e-6
_CRUMB = 0.1
"""A wall shorter than this, mm, is left over from flattening."""
_TIP = 0.055
"""The tip of a square corner that a disc misses, in squares of its width: (1 - pi/4) / 4."""
_QUARTER = 12
_LONG = 1.5
"""A tongue reaches out at least this many least widths, or it is the tip of a corner."""
_CLEAR = 0.4
"""How far, in widths, the middle of a web lies from any wall: a half, less what is rounded."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ThinPlace:
    """A place narrower than asked for, lengths in mm.

    ``ends`` are the two points of the shape's edge that face each other there, ``at`` the middle
    between them. A ``tongue`` hangs on the rest by one side only.
    """

    width: float
    ends: tuple[Point, Point]
    tongue: bool = False

    @property
    def at(self) -> Point:
        """The middle of the narrowest spot."""
        (x0, y0), (x1, y1) = self.ends
        return (x0 + x1) / 2, (y0 + y1) / 2


@lru_cache(maxsize=512)
def thin_places(region: Region, least: float) -> tuple[ThinPlace, ...]:
    """Return the places of a shape that are narrower than ``least`` mm, in a fixed order.

    Each pair of walls that face each other is one place, told at its narrowest (within 0.1 mm).
    A shape that is nowhere as wide is one tongue, told with the short side of the box it fits in.
    Short necks within the edge of one opening are not looked for.
    """
    return kept(_thin_places, region, least)


def _thin_places(region: Region, least: float) -> tuple[ThinPlace, ...]:
    solid = _polygon(region)
    eroded = shapely.buffer(solid, -least / 2, quad_segs=_QUARTER)
    if eroded.is_empty:
        return (_whole(solid),) if _short_side(solid) < least else ()
    edge = shapely.boundary(solid)
    shapely.prepare(edge)
    found = list(_unreached(solid, eroded, edge, least))
    told = _Spots(least)
    for place in found:
        told.add(place.at)
    for place in (*_near_contours(solid, edge, least, found), *_parted(solid, edge, least)):
        if not told.has_near(place.at):
            found.append(place)
            told.add(place.at)
    return tuple(sorted(found, key=lambda each: (each.ends, each.width)))


class _Spots:
    """Points in cells as wide as they are to keep apart, so that near ones are found at once."""

    def __init__(self, apart: float) -> None:
        self._apart = apart
        self._cells: dict[tuple[int, int], list[Point]] = defaultdict(list)

    def _cell(self, spot: Point) -> tuple[int, int]:
        return math.floor(spot[0] / self._apart), math.floor(spot[1] / self._apart)

    def add(self, spot: Point) -> None:
        """Keep a point."""
        self._cells[self._cell(spot)].append(spot)

    def has_near(self, spot: Point) -> bool:
        """Tell whether a kept point is nearer than allowed."""
        column, row = self._cell(spot)
        return any(
            math.dist(spot, each) < self._apart
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
            for each in self._cells.get((column + dx, row + dy), ())
        )


def _unreached(solid: Any, eroded: Any, edge: Any, least: float) -> Iterator[ThinPlace]:
    """Yield what is thin in the pieces that the disc cannot reach."""
    reached = shapely.buffer(eroded, least / 2 + _SLACK, quad_segs=_QUARTER)
    pieces = shapely.get_parts(shapely.difference(solid, reached))
    for piece in pieces[shapely.area(pieces) > _TIP * least**2]:
        yield from _places(piece, edge, least)


def _near_contours(
    solid: Any, edge: Any, least: float, found: Sequence[ThinPlace]
) -> Iterator[ThinPlace]:
    """Yield the narrowest web between each two contours that have none among those found."""
    rings = (solid.exterior, *solid.interiors)
    tree = shapely.STRtree(rings)
    known = {pair for each in found for pair in permutations(_lying_on(tree, each), 2)}
    pairs = tree.query(rings, predicate="dwithin", distance=least).T.tolist()
    for one, other in sorted(pairs):
        if one < other and (one, other) not in known:
            across = shapely.shortest_line(rings[one], rings[other])
            if _is_web(across, edge, least):
                yield ThinPlace(width=float(across.length), ends=_ends(across))


def _lying_on(rings: Any, place: ThinPlace) -> set[int]:
    """Return the numbers of the rings of a tree that an end of a thin place lies on."""
    ends = shapely.points(place.ends)
    return set(rings.query(ends, predicate="dwithin", distance=_SLACK)[1].tolist())


def _parted(solid: Any, edge: Any, least: float) -> Iterator[ThinPlace]:
    """Yield necks of the outline that part it when it is eroded."""
    outer = shapely.Polygon(solid.exterior)
    parts = shapely.get_parts(shapely.buffer(outer, -least / 2, quad_segs=_QUARTER))
    for one, other in combinations(parts, 2):
        way = shapely.shortest_line(one, other)
        middle = shapely.line_interpolate_point(way, 0.5, normalized=True)
        if way.length < 2 * least and shapely.covers(outer, way):
            across = _through(middle, solid.exterior)
            if across is not None and _is_web(across, edge, least):
                yield ThinPlace(width=float(across.length), ends=_ends(across))


def _through(middle: Any, ring: Any) -> Any | None:
    """Return the line from the wall nearest to a point to the nearest one on its other side."""
    (x, y), (px, py) = middle.coords[0], shapely.shortest_line(middle, ring).coords[-1]
    dx, dy = x - px, y - py
    size = math.hypot(dx, dy)
    if size < _ON:
        return None
    far = 1e4 / size
    beyond = [(x - dy * far, y + dx * far), (x + dy * far, y - dx * far)]
    corners = [*beyond, *((bx + dx * far, by + dy * far) for bx, by in reversed(beyond))]
    facing = shapely.intersection(ring, shapely.Polygon(corners))
    if facing.is_empty:
        return None
    return shapely.shortest_line(shapely.Point(px, py), facing)


def _is_web(across: Any, edge: Any, least: float) -> bool:
    """Tell whether a line from wall to wall is short enough and has only wood about its middle."""
    middle = shapely.line_interpolate_point(across, 0.5, normalized=True)
    if not _CRUMB < across.length < least:
        return False
    return not shapely.dwithin(edge, middle, _CLEAR * across.length)


def _polygon(region: Region) -> Any:
    openings = [points(each, _FINE) for each in region.openings]
    made = ring_area(points(region.outer, _FINE), openings)
    return made if shapely.is_valid(made) else shapely.make_valid(made)


def _places(piece: Any, edge: Any, least: float) -> Iterator[ThinPlace]:
    """Yield what is thin in one of the pieces that the disc cannot reach."""
    walls = [wall for ring in _rings(piece) for wall in _walls(ring, edge)]
    if len(walls) == 1 and not walls[0].is_ring:
        yield from _tongue(walls[0], least)
    middle = shapely.centroid(piece)
    # No line from wall to wall is shorter than they are apart: only near ones are looked at.
    pairs = shapely.STRtree(walls).query(walls, predicate="dwithin", distance=least).T.tolist()
    for one, other in sorted(pairs):
        if one < other:
            across = _across(walls[one], walls[other], middle)
            if _is_web(across, edge, least):
                yield ThinPlace(width=float(across.length), ends=_ends(across))


def _rings(piece: Any) -> list[NDArray[np.float64]]:
    rings = (piece.exterior, *piece.interiors)
    return [shapely.get_coordinates(each)[:-1] for each in rings]


def _walls(ring: NDArray[np.float64], edge: Any) -> list[Any]:
    """Return the runs of a ring that lie on the shape's own edge, without crumbs."""
    after = np.roll(ring, -1, axis=0)
    on: NDArray[np.bool_] = shapely.dwithin(edge, shapely.points((ring + after) / 2), _ON)
    if on.all():
        return [shapely.LinearRing(ring)]
    start = int(np.flatnonzero(~on)[0])
    ring, on = np.roll(ring, -start, axis=0), np.roll(on, -start)
    closed = np.concatenate([ring, ring[:1]])
    firsts = np.flatnonzero(on & ~np.roll(on, 1))
    lasts = np.flatnonzero(on & ~np.roll(on, -1))
    runs = [closed[a : b + 2] for a, b in zip(firsts, lasts, strict=True)]
    lines = [shapely.LineString(run) for run in runs]
    return [each for each in lines if each.length > _CRUMB]


def _across(one: Any, other: Any, middle: Any) -> Any:
    """Return the shortest line between two walls; of several as short, one by the middle."""
    shortest = shapely.shortest_line(one, other)
    foot = shapely.shortest_line(middle, one)
    central = shapely.shortest_line(shapely.Point(foot.coords[-1]), other)
    return central if central.length <= shortest.length + _FINE else shortest


def _tongue(wall: Any, least: float) -> Iterator[ThinPlace]:
    """Yield a tongue: one wall around a piece that reaches far out; its width is at its root."""
    root = shapely.LineString([wall.coords[0], wall.coords[-1]])
    reach = float(np.max(shapely.distance(shapely.points(wall.coords), root)))
    if reach < _LONG * least or not _CRUMB < root.length < least:
        return
    sides = (substring(wall, start, start + 0.25, normalized=True) for start in (0.0, 0.75))
    across = shapely.shortest_line(*sides)
    across = root if root.length <= across.length + _FINE else across
    if across.length > _CRUMB:
        yield ThinPlace(width=float(across.length), ends=_ends(across), tongue=True)


def _whole(solid: Any) -> ThinPlace:
    corners = _box(solid)
    sides = [(math.dist(a, b), a, b) for a, b in pairwise(corners)]
    length, a, b = min(sides)
    x, y = shapely.centroid(solid).coords[0]
    half = ((b[0] - a[0]) / 2, (b[1] - a[1]) / 2)
    ends = ((x - half[0], y - half[1]), (x + half[0], y + half[1]))
    return ThinPlace(width=length, ends=ends, tongue=True)


def _short_side(solid: Any) -> float:
    corners = _box(solid)
    return min(math.dist(corners[0], corners[1]), math.dist(corners[1], corners[2]))


def _box(solid: Any) -> Sequence[Point]:
    box = shapely.minimum_rotated_rectangle(solid)
    return [(float(x), float(y)) for x, y in box.exterior.coords]


def _ends(line: Any) -> tuple[Point, Point]:
    first, last = line.coords[0], line.coords[-1]
    ends = sorted(((float(first[0]), float(first[1])), (float(last[0]), float(last[1]))))
    return ends[0], ends[1]
