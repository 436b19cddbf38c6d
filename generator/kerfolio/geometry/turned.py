"""Solids with one axis: bolts, nuts, washers, dowels, as a lathe and a file would make them.

A solid is a row of frusta along z, round or with flat sides, perhaps hollow from one end or right
through. Curves are in facets whose corners lie on the curve, two of them on the x axis, so that a
view square to z shows the true width.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from kerfolio.geometry.panel_mesh import Mesh, mesh_of
from kerfolio.geometry.rigid import added, between, cross, dot, length, scaled
from kerfolio.geometry.solid_faces import FacesMade, SolidFaces, Spot
from kerfolio.geometry.surfaces import Surface, joined

ROUND = 16
"""Facets of a full turn where nothing else is said."""
_MORE = 1.0
"""Neighbours that turn by this more than facets of a curve, degrees, are no curve."""

_SLOT = 0.96
"""How far the sides of a slot reach across their end, so that they end on its facets."""

_LEAST = 1e-6


@dataclass(frozen=True, slots=True)
class Frustum:
    """A stretch from ``low`` to ``high``; radii to the corners at both ends, mm.

    ``sides`` is 6 for a hexagon; 0 is round.
    """

    low: float
    high: float
    wide: float
    ending: float
    sides: int = 0


@dataclass(frozen=True, slots=True)
class Well:
    """A hollow on the axis from ``low`` to ``high``, open where it meets an end of its solid."""

    low: float
    high: float
    radius: float
    sides: int = 0


@dataclass(frozen=True, slots=True)
class Thread:
    """Lines on a round stretch that rise by ``pitch`` in a turn, mm, as a drawn thread has them."""

    low: float
    high: float
    radius: float
    pitch: float


@dataclass(frozen=True, slots=True)
class Turned:
    """A solid about z, mm: frusta one on the other from the lowest, what is hollow, and its thread.

    ``across`` is the radius of a hole through it along x, at its middle, drawn on its surface, and
    ``slot`` how wide a slot along x is in both its ends, drawn as two lines.
    ``facets`` are those of a full turn.
    """

    frusta: tuple[Frustum, ...]
    well: Well | None = None
    thread: Thread | None = None
    across: float = 0.0
    slot: float = 0.0
    facets: int = ROUND

    @property
    def low(self) -> float:
        """Where it begins on z, mm."""
        return self.frusta[0].low

    @property
    def high(self) -> float:
        """Where it ends on z, mm."""
        return self.frusta[-1].high

    @property
    def radius(self) -> float:
        """How far it reaches from z, mm."""
        return max(max(each.wide, each.ending) for each in self.frusta)


Ring = list[Spot]


def _ring(radius: float, sides: int, z: float) -> Ring:
    """Return the corners of a turn about z, counter-clockwise seen from above; a tip has one."""
    if radius < _LEAST:
        return [(0.0, 0.0, z)]
    turns = (2 * math.pi * each / sides for each in range(sides))
    return [(radius * math.cos(turn), radius * math.sin(turn), z) for turn in turns]


@lru_cache(maxsize=256)
def turned_faces(solid: Turned) -> SolidFaces:
    """Return the faces and edges of a turned solid; thread and cross hole are lines on faces."""
    made = FacesMade()
    for surface in _surfaces(solid):
        surface.make(made)
    joined(made)
    for line in (*_thread_lines(solid), *_cross_lines(solid)):
        _scratch(made, *line)
    for line in _slot_lines(solid):
        _scratch_end(made, *line)
    return made.faces(360.0 / solid.facets + _MORE)


@lru_cache(maxsize=256)
def turned_mesh(solid: Turned) -> Mesh:
    """Return the closed surface of a turned solid in triangles."""
    return mesh_of(corners for each in _surfaces(solid) for corners in each.triangles())


def _surfaces(solid: Turned) -> Iterator[Surface]:
    facets = solid.facets
    rings = [
        (
            _ring(each.wide, each.sides or facets, each.low),
            _ring(each.ending, each.sides or facets, each.high),
        )
        for each in solid.frusta
    ]
    for below, above in rings:
        yield from _walls(below, above, inward=False)
    for (_, one), (other, _) in pairwise(rings):
        yield from _step(one, other)
    well, (bottom, top) = solid.well, (rings[0][0], rings[-1][1])
    holes: dict[bool, Ring] = {}
    if well:
        low, high = (_ring(well.radius, well.sides or facets, z) for z in (well.low, well.high))
        yield from _walls(low, high, inward=True)
        at_low, at_high = well.low <= solid.low + _LEAST, well.high >= solid.high - _LEAST
        holes = {
            up: end for up, end, open_ in ((False, low, at_low), (True, high, at_high)) if open_
        }
        if not at_low:
            yield Surface((tuple(low),), (0.0, 0.0, 1.0))
        if not at_high:
            yield Surface((tuple(high[::-1]),), (0.0, 0.0, -1.0))
    for up, end in ((False, bottom), (True, top)):
        if len(end) > 1:
            loops = [end, *([holes[up][::-1]] if up in holes else [])]
            yield _flat(loops, up=up)


def _flat(loops: Sequence[Ring], *, up: bool) -> Surface:
    """Return a level face from loops that are right as seen from above."""
    turned = loops if up else [each[::-1] for each in loops]
    return Surface(tuple(map(tuple, turned)), (0.0, 0.0, 1.0 if up else -1.0))


def _step(below: Ring, above: Ring) -> Iterator[Surface]:
    """Yield the level face between two stretches, none where they are equally wide."""
    narrow, wide = (_reach(each) for each in (below, above))
    if abs(narrow - wide) < _LEAST and len(below) == len(above):
        return
    up = narrow > wide
    outer, inner = (below, above) if up else (above, below)
    yield _flat([outer, inner[::-1]] if len(inner) > 1 else [outer], up=up)


def _reach(spots: Ring) -> float:
    return math.hypot(*spots[0][:2])


def _walls(below: Ring, above: Ring, *, inward: bool) -> Iterator[Surface]:
    count = max(len(below), len(above))
    for number in range(count):
        following = (number + 1) % count
        corners = (
            *(below[each % len(below)] for each in (number, following)),
            *(above[each % len(above)] for each in (following, number)),
        )
        loop = tuple(dict.fromkeys(corners))
        if inward:
            loop = loop[::-1]
        yield Surface((loop,), _normal(loop))


def _normal(loop: Sequence[Spot]) -> Spot:
    a, b, c = loop[:3]
    x, y, z = square = cross(between(a, b), between(a, c))
    size = length(square)
    return x / size, y / size, z / size


def _thread_lines(solid: Turned) -> Iterator[tuple[Spot, Spot]]:
    """Yield the stretches of a screw line over the facets that it crosses."""
    thread = solid.thread
    if thread is None:
        return
    count = solid.facets
    spots = _ring(thread.radius, count, 0.0)
    rise = thread.pitch / count
    number, z = 0, thread.low
    while z + rise <= thread.high + _LEAST:
        (ax, ay, _), (bx, by, _) = spots[number % count], spots[(number + 1) % count]
        yield (ax, ay, z), (bx, by, z + rise)
        number, z = number + 1, z + rise


def _cross_lines(solid: Turned) -> Iterator[tuple[Spot, Spot]]:
    """Yield the rims of a hole along x, on the facets of a round solid of one width."""
    if not solid.across:
        return
    radius, middle = solid.radius, (solid.low + solid.high) / 2
    spots = _ring(radius, solid.facets, 0.0)
    cuts = {0.0, math.pi, *(math.pi / 24 * each for each in range(48))}
    for x, y, _ in spots:
        if x > 0 and abs(y) < solid.across:
            cuts |= {math.acos(y / solid.across), 2 * math.pi - math.acos(y / solid.across)}
    turns = sorted(cuts)
    for one, other in pairwise([*turns, 2 * math.pi]):
        ends = [
            (solid.across * math.cos(turn), middle + solid.across * math.sin(turn))
            for turn in (one, other)
        ]
        for side in (1.0, -1.0):
            a, b = ((side * _chord(spots, y), y, z) for y, z in ends)
            yield a, b


def _slot_lines(solid: Turned) -> Iterator[tuple[Spot, Spot]]:
    """Yield the sides of a slot along x in both ends of a round solid."""
    if not solid.slot:
        return
    half = solid.slot / 2
    for end in (solid.frusta[0].wide, solid.low), (solid.frusta[-1].ending, solid.high):
        reach = math.sqrt(max(0.0, (_SLOT * end[0]) ** 2 - half**2))
        for side in (half, -half):
            yield (-reach, side, end[1]), (reach, side, end[1])


def _scratch_end(made: FacesMade, a: Spot, b: Spot) -> None:
    """Add a line on the end that it lies on."""
    for number, normal in enumerate(made.normals):
        level = made.loops[made.firsts[number]][0][2]
        if abs(normal[2]) > 0.5 and abs(level - a[2]) < _LEAST:
            made.edge(a, b, number, number)


def _chord(spots: Ring, y: float) -> float:
    """Return how far the facets lie from the y axis at a height of theirs, in front."""
    for (ax, ay, _), (bx, by, _) in pairwise([*spots, spots[0]]):
        if ax > -_LEAST and bx > -_LEAST and min(ay, by) - _LEAST <= y <= max(ay, by) + _LEAST:
            return ax + (bx - ax) * ((y - ay) / (by - ay)) if abs(by - ay) > _LEAST else max(ax, bx)
    return 0.0


def _scratch(made: FacesMade, a: Spot, b: Spot) -> None:
    """Add a line on the wall under its middle."""
    x, y, z = middle = scaled(added(a, b), 0.5)
    best, least = -1, 1e-3
    for number, normal in enumerate(made.normals):
        loop = made.loops[made.firsts[number]]
        off = dot(between(loop[0], middle), normal)
        low, high = min(each[2] for each in loop), max(each[2] for each in loop)
        ahead = x * normal[0] + y * normal[1] > 0
        if abs(off) < least and ahead and low - _LEAST <= z <= high + _LEAST:
            best, least = number, abs(off)
    if best >= 0:
        made.edge(a, b, best, best)
