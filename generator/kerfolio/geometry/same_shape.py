"""Whether two flat shapes are the same one, moved, turned or turned over."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import area, bounds, centroid
from kerfolio.geometry.nesting import off_shape
from kerfolio.geometry.transform import mirrored_x, moved, turned

_WITHIN = 0.06
"""Vertices of like shapes lie so near, mm: twice the 0.02 mm a curve is drawn to, and rounding."""


@dataclass(frozen=True, slots=True)
class Placing:
    """How a shape is placed: mirrored at x = 0 first if ``over``, then turned, then moved."""

    over: bool
    degrees: float
    shift: Point

    def of(self, contour: Contour) -> Contour:
        """Return a closed contour of the shape in its place."""
        flat = mirrored_x(contour) if self.over else contour
        return moved(turned(flat, self.degrees), *self.shift)


def placing_of(one: Region, other: Region, *, over: bool = True) -> Placing | None:
    """Return how ``one`` is placed where it is ``other``, None where it is not the same shape.

    It is turned over only where it must be, and only if it may be (``over``). Of several turns the
    least is taken.
    """
    if abs(area(one.outer) - area(other.outer)) > _WITHIN * _around(one.outer):
        return None
    if len(one.openings) != len(other.openings):
        return None
    for placings in (_placings, _along_longest):
        for flipped in (False, True) if over else (False,):
            found = (p for p in placings(one.outer, other.outer, flipped) if _holds(p, one, other))
            best = min(found, key=lambda p: (abs(p.degrees), p.degrees), default=None)
            if best is not None:
                return best
    return None


def symmetries(shape: Region) -> tuple[Placing, ...]:
    """Return the placings in which a shape covers itself, lying still among them."""
    return tuple(
        placing
        for over in (False, True)
        for placing in _placings(shape.outer, shape.outer, over)
        if _holds(placing, shape, shape)
    )


def _around(contour: Contour) -> float:
    box = bounds(contour)
    return 2 * (box.width + box.height)


def _placings(one: Contour, other: Contour, over: bool) -> Iterator[Placing]:
    """Yield the placings in which one outline's edges are the other's."""
    flat = tidy(mirrored_x(one) if over else one)
    there = tidy(other)
    mine, theirs = list(edges(flat)), list(edges(there))
    count = len(mine)
    if count != len(theirs):
        return
    sizes = [(math.dist(e.start, e.end), e.bulge) for e in mine]
    targets = [(math.dist(e.start, e.end), e.bulge) for e in theirs]
    longest = max(range(count), key=lambda i: sizes[i][0])
    for first in range(count):
        if not all(_near(sizes[i], targets[(i + first) % count]) for i in range(count)):
            continue
        a, b = mine[longest], theirs[(longest + first) % count]
        degrees = _angle(b.start, b.end) - _angle(a.start, a.end)
        degrees = _plain((degrees + 180) % 360 - 180)
        spun = turned(flat, degrees)
        cx, cy = centroid(spun)
        tx, ty = centroid(there)
        placing = Placing(over, degrees, (tx - cx, ty - cy))
        ours = moved(spun, *placing.shift).vertices
        goal = [there.vertices[(i + first) % count] for i in range(count)]
        if all(math.dist(p[:2], q[:2]) <= _WITHIN for p, q in zip(ours, goal, strict=True)):
            yield placing


def _along_longest(one: Contour, other: Contour, over: bool) -> Iterator[Placing]:
    """Yield the placings in which an outline's longest edge is one of the other's and all is near.

    Of curves drawn as chords the edges need not be the same.
    """
    flat = tidy(mirrored_x(one) if over else one)
    there = tidy(other)
    longest = max(edges(flat), key=lambda e: math.dist(e.start, e.end))
    size = math.dist(longest.start, longest.end)
    for edge in edges(there):
        if edge.bulge or abs(math.dist(edge.start, edge.end) - size) > 2 * _WITHIN:
            continue
        degrees = _angle(edge.start, edge.end) - _angle(longest.start, longest.end)
        degrees = _plain((degrees + 180) % 360 - 180)
        spun = turned(flat, degrees)
        (cx, cy), (tx, ty) = centroid(spun), centroid(there)
        placing = Placing(over, degrees, (tx - cx, ty - cy))
        if off_shape(moved(spun, *placing.shift), there) <= _WITHIN:
            yield placing


def _near(one: tuple[float, float], other: tuple[float, float]) -> bool:
    rise = max(1.0, one[0]) / 2
    return abs(one[0] - other[0]) <= 2 * _WITHIN and abs(one[1] - other[1]) * rise <= 2 * _WITHIN


def _angle(start: Point, end: Point) -> float:
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))


def _plain(degrees: float) -> float:
    """Put a turn that all but is a quarter, or none, on it: a drawing has few decimals."""
    nearest = 90.0 * round(degrees / 90)
    turn = nearest if abs(degrees - nearest) < 5e-3 else degrees
    return 180.0 if turn == -180 else turn + 0.0


def _holds(placing: Placing, one: Region, other: Region) -> bool:
    """Tell whether the openings come to lie on the other's, each on one of its own."""
    left = list(other.openings)
    for opening in one.openings:
        there = placing.of(opening)
        match = next((each for each in left if _same_opening(there, each)), None)
        if match is None:
            return False
        left.remove(match)
    return True


def _same_opening(one: Contour, other: Contour) -> bool:
    a, b = bounds(one), bounds(other)
    sides = zip((a.x0, a.y0, a.x1, a.y1), (b.x0, b.y0, b.x1, b.y1), strict=True)
    if any(abs(p - q) > _WITHIN for p, q in sides):
        return False
    return abs(area(one) - area(other)) <= _WITHIN * _around(one)
