"""Where clamps go over the joints that they press: along which line, and clear of the work."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from kerfolio.assembly.assembled import Assembled, PosedJoint, PosedPiece
from kerfolio.assembly.extent import Box, box_of
from kerfolio.assembly.handworked import meeting_faces
from kerfolio.geometry.contact import faces_of
from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.patch import Patch
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, dot, length, scaled

_ALONG = 0.9
"""Faces that look along a line to at least this share (cosine) are pressed by a clamp on it."""
_SAME = 15.0
"""Lines nearer to each other than this, mm, are one clamp's."""
_LONG = 100.0
"""A seam longer than this, mm, gets two clamps where nobody says how many."""

JAW, BAR, THICK = 12.0, 12.0, 10.0
"""How thick a clamp's jaws, its bar and its body are, mm."""
PAD, SPINDLE, HANDLE = 8.0, 3.5, 6.5
"""Radii of what its screw presses with, of the screw and of its handle, mm."""
_REACH = 30.0
"""How far the loose jaw's back stands from what it presses, mm."""
_SCREW, _GRIP = 25.0, 45.0
"""How far the screw stands out behind the loose jaw, and how long its handle is, mm."""
_TAIL = 14.0
"""How much longer the bar is than it must be, mm."""
_LEAST, _MOST, _STEP = 22.0, 262.0, 8.0
"""Depths of throat that are tried, mm."""
_CUT = 1.0
"""What a clamp may share with a piece, mm3: rounding."""
_UP, _FRONT, _DOWN = 40.0, 15.0, 400.0
"""What a bar above the work, one before it, and one under it are worth in mm of throat."""
_GRASP, _CLEAR = 30.0, 6.0
"""How far inside its side a piece is held, and how far the bar keeps off that side, mm."""
_REST = (150.0, 26.0)
"""The edge of the bench that a piece is held down on: how wide and how thick it is shown, mm."""
_TRIED = 10
"""Among so many of the longest seams those are looked for that get a clamp."""
_PROBES = ((0.0, 0.0), (6.0, 0.0), (-6.0, 0.0), (0.0, 6.0), (0.0, -6.0))


@dataclass(frozen=True, slots=True)
class Clamp:
    """A clamp: ``frame`` at the middle of its fixed jaw's face, mm.

    x looks to the loose jaw, ``opening`` away; y to the bar, which is ``throat`` from the line that
    is pressed along.
    """

    frame: Rigid
    opening: float
    throat: float

    @property
    def body(self) -> PosedPanel:
        """Its fixed jaw, bar and loose jaw as one flat solid in the world."""
        jaw, low, high = self.opening + _REACH, -PAD - 1.0, self.throat
        outline = (
            (-JAW, low),
            (0.0, low),
            (0.0, high),
            (jaw - JAW, high),
            (jaw - JAW, low),
            (jaw, low),
            (jaw, high),
            (jaw + _TAIL, high),
            (jaw + _TAIL, high + BAR),
            (-JAW, high + BAR),
        )
        lifted = self.frame.moved(scaled(self.frame.z, -THICK / 2))
        return PosedPanel(Panel(shape=Flat(outline), thickness=THICK), lifted)

    @property
    def screw(self) -> Rigid:
        """The frame of its screw: z from the pressed face outwards."""
        at = self.frame.point((self.opening, 0.0, 0.0))
        return Rigid(at, self.frame.y, self.frame.z, self.frame.x)

    @property
    def screw_stretches(self) -> tuple[tuple[float, float, float], ...]:
        """Pad, screw and handle along the screw's z: from, to and radius, mm."""
        end = _REACH + _SCREW
        return ((0.0, 4.0, PAD), (4.0, end, SPINDLE), (end, end + _GRIP, HANDLE))

    @property
    def solids(self) -> tuple[PosedPanel, ...]:
        """What it takes in space, in blocks; round stretches by the square that holds them."""
        jaw, low, high = self.opening + _REACH, -PAD - 1.0, self.throat
        flat = (
            ((-JAW, low), (0.0, high)),
            ((jaw - JAW, low), (jaw, high)),
            ((-JAW, high), (jaw + _TAIL, high + BAR)),
        )
        lifted = self.frame.moved(scaled(self.frame.z, -THICK / 2))
        found = [PosedPanel(_block(*each, THICK), lifted) for each in flat]
        for start, end, radius in self.screw_stretches:
            stretch = _block((-radius, -radius), (radius, radius), end - start)
            found.append(PosedPanel(stretch, self.screw.moved(scaled(self.screw.z, start))))
        return tuple(found)

    def cuts(self, others: Sequence[Taken]) -> bool:
        """Tell whether it would be in what is there."""
        return _overlap(self.solids, others)

    def grips_into(self, others: Sequence[Taken]) -> bool:
        """Tell whether its jaws or its screw would be in what is there, wherever its bar is."""
        fixed, loose, _, *screw = self.solids
        return _overlap((fixed, loose, *screw), others)


@dataclass(frozen=True, slots=True, eq=False)
class Taken:
    """What is there and no clamp may be in: a solid, and the box round it in the world."""

    solid: Posed
    box: Box

    @classmethod
    def of(cls, posed: PosedPanel) -> Taken:
        """Return a posed panel made ready to be asked about often."""
        return cls(Posed(solid_of(posed.panel), posed.pose), _box(posed))


def _overlap(some: Sequence[PosedPanel], others: Sequence[Taken]) -> bool:
    pairs = []
    for each in some:
        box = _box(each)
        near = [other.solid for other in others if _near(box, other.box)]
        if near:
            mine = Posed(solid_of(each.panel), each.pose)
            pairs += [(mine, other) for other in near]
    return bool(pairs) and float(max(overlap_volumes(pairs))) > _CUT


def _block(low: Point, high: Point, thick: float) -> Panel:
    (x0, y0), (x1, y1) = low, high
    return Panel(shape=Flat(((x0, y0), (x1, y0), (x1, y1), (x0, y1))), thickness=thick)


def clamps_over(
    assembled: Assembled,
    there: Collection[str],
    joints: Sequence[PosedJoint],
    count: int | None = None,
) -> tuple[Clamp, ...]:
    """Return clamps that press joints together, clear of the pieces ``there`` and of each other.

    The longest seams get them first, each in its middle; further ones share a seam evenly. Without
    a ``count`` every seam gets one, a long one two. Fewer come where there is no room.
    """
    pieces = [each for each in assembled.pieces if each.label in there]
    solids = [PosedPanel(each.panel, each.pose) for each in pieces]
    faces = [face for each in solids for face in faces_of(each)]
    taken = [Taken.of(each) for each in solids]
    found: list[Clamp] = []
    for seam, share in _shared_out(_merged([*_seams(assembled, joints)]), count):
        placed = _placed(seam, share, faces, taken)
        if placed:
            found.append(placed)
            taken += map(Taken.of, placed.solids)
    return tuple(found)


def holding(piece: PosedPiece, bores: Sequence[tuple[Point, Point]]) -> tuple[Clamp, PosedPanel]:
    """Return a clamp that holds a piece down beside the bores in its edges, and what it lies on.

    ``bores`` are their mouths, mm in its own frame, and the ways that their edges look. The clamp
    comes over a side in which nothing is bored, where that is nearest to the middle.
    """
    x0, y0, x1, y1 = _flat_box(piece.panel.shape.outer)
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    sides = (
        ((0.0, 1.0), y1 - middle[1]),
        ((0.0, -1.0), middle[1] - y0),
        ((1.0, 0.0), x1 - middle[0]),
        ((-1.0, 0.0), middle[0] - x0),
    )
    ways = [way for _, way in bores]
    free = [each for each in sides if not any(_same(each[0], way) for way in ways)] or [*sides]
    (ux, uy), reach = min(free, key=lambda each: round(each[1], 3))
    inside = min(_GRASP, reach)
    at = (middle[0] + ux * (reach - inside), middle[1] + uy * (reach - inside))
    half, deep = _REST[0] / 2, 2 * inside
    # the rest ends with the piece, so that the bar passes both
    ends = [(half * uy, -half * ux), (-half * uy, half * ux)]
    edge = (middle[0] + ux * reach, middle[1] + uy * reach)
    outline = [(edge[0] + dx, edge[1] + dy) for dx, dy in ends]
    outline += [(x - deep * ux, y - deep * uy) for x, y in reversed(outline)]
    rest = Panel(shape=Flat(tuple(outline)), thickness=_REST[1])
    below = piece.pose.moved(scaled(piece.pose.z, -_REST[1]))
    start = piece.pose.point((*at, -_REST[1]))
    side = piece.pose.vector((ux, uy, 0.0))
    frame = Rigid(start, piece.pose.z, side, cross(piece.pose.z, side))
    opening = piece.panel.thickness + _REST[1]
    return Clamp(frame, opening, inside + _CLEAR), PosedPanel(rest, below)


def _flat_box(ring: Sequence[Point]) -> tuple[float, float, float, float]:
    xs, ys = zip(*ring, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _same(one: Point, other: Point) -> bool:
    return one[0] * other[0] + one[1] * other[1] > _ALONG


@dataclass(frozen=True, slots=True)
class _Seam:
    """Where faces are pressed: a line ``along`` (unit) about a middle, pressed along ``way``."""

    middle: Vector
    along: Vector
    way: Vector
    length: float


def _seams(assembled: Assembled, joints: Sequence[PosedJoint]) -> Iterator[_Seam]:
    """Yield the seam of each pair of pieces that joints join, for each way they are pressed."""
    pairs: dict[tuple[str, str, Vector], list[PosedJoint]] = {}
    for each in joints:
        pairs.setdefault((each.a, each.b, _canonical(each.frame.z)), []).append(each)
    for (a, b, way), group in pairs.items():
        met = (one for one, _ in meeting_faces(assembled, (a, b), group))
        pressed = [each for each in met if abs(dot(each.normal, way)) > _ALONG]
        spots = [at for each in pressed for at in each.loops[0]] or [*_ends(group)]
        first = group[0].frame
        axes = [_rounded(axis) for axis in (first.x, first.y)]
        reach = [(min(s), max(s)) for s in ([dot(at, axis) for at in spots] for axis in axes)]
        level = sum(dot(at, way) for at in spots) / len(spots)
        middle = scaled(way, level)
        for axis, (low, high) in zip(axes, reach, strict=True):
            middle = added(middle, scaled(axis, (low + high) / 2))
        longest = max((0, 1), key=lambda i: (round(reach[i][1] - reach[i][0], 3), -i))
        low, high = reach[longest]
        yield _Seam(middle, axes[longest], way, high - low)


def _ends(joints: Sequence[PosedJoint]) -> Iterator[Vector]:
    for each in joints:
        for side in (-0.5, 0.5):
            yield each.frame.point((side * each.size[0], 0.0, 0.0))


def _canonical(way: Vector) -> Vector:
    """Return a direction or its opposite, whichever looks right, to the back or up."""
    flat = _rounded(way)
    most = max(range(3), key=lambda axis: (abs(flat[axis]), -axis))
    return flat if flat[most] > 0 else scaled(flat, -1.0)


def _rounded(way: Vector) -> Vector:
    x, y, z = (round(each, 9) + 0.0 for each in way)
    return x, y, z


def _merged(seams: Sequence[_Seam]) -> list[_Seam]:
    """Return the seams, those that one clamp presses together as one, the longest first."""
    kept: list[_Seam] = []
    for each in sorted(seams, key=lambda seam: -round(seam.length, 3)):
        if not any(_pressed_alike(each, other) for other in kept):
            kept.append(each)
    return kept


def _pressed_alike(one: _Seam, other: _Seam) -> bool:
    if abs(dot(one.way, other.way)) < 1 - 1e-6:
        return False
    gap = between(one.middle, other.middle)
    aside = between(scaled(one.way, dot(gap, one.way)), gap)
    return length(aside) < _SAME


def _shared_out(seams: Sequence[_Seam], count: int | None) -> list[tuple[_Seam, float]]:
    """Return the seams that get a clamp, with where along each it goes (-0.5 to 0.5).

    Fewer clamps than seams go where they press evenly about the middle of all of them.
    """
    if not seams:
        return []
    if count is None:
        numbers = [2 if each.length > _LONG else 1 for each in seams]
    elif count <= len(seams):
        chosen = min(combinations(range(min(len(seams), _TRIED)), count), key=_unevenness(seams))
        numbers = [int(number in chosen) for number in range(len(seams))]
    else:
        numbers = [1] * len(seams)
        for _ in range(count - len(seams)):
            numbers[max(range(len(seams)), key=lambda i: (seams[i].length / numbers[i], -i))] += 1
    return [
        (seam, (place + 0.5) / number - 0.5)
        for seam, number in zip(seams, numbers, strict=True)
        for place in range(number)
    ]


def _unevenness(seams: Sequence[_Seam]) -> Callable[[tuple[int, ...]], tuple[int, float]]:
    """Return what tells how far off the middle some seams press, and how near to each other."""
    total = math.fsum(each.length for each in seams)
    middle = _mean([each.middle for each in seams], [each.length / total for each in seams])

    def uneven(chosen: tuple[int, ...]) -> tuple[int, float]:
        spots = [seams[number].middle for number in chosen]
        mean = _mean(spots, [1 / len(spots)] * len(spots))
        spread = math.fsum(length(between(mean, spot)) for spot in spots)
        return round(length(between(mean, middle)) / _SAME), -round(spread, 3)

    return uneven


def _mean(spots: Sequence[Vector], shares: Sequence[float]) -> Vector:
    x, y, z = (
        math.fsum(share * spot[axis] for spot, share in zip(spots, shares, strict=True))
        for axis in range(3)
    )
    return x, y, z


def _placed(
    seam: _Seam, share: float, faces: Sequence[Patch], taken: Sequence[Taken]
) -> Clamp | None:
    """Return the clamp of a place with the least throat that clears all, None where none does."""
    at = added(seam.middle, scaled(seam.along, share * seam.length))
    across = cross(seam.way, seam.along)
    reach = _reach(at, seam, across, faces)
    if reach is None:
        return None
    low, high = reach
    start = added(at, scaled(seam.way, low - dot(at, seam.way)))
    best: Clamp | None = None
    least = float("inf")
    for side in (across, scaled(across, -1.0), seam.along, scaled(seam.along, -1.0)):
        bonus = _UP * max(0.0, side[2]) + _FRONT * max(0.0, -side[1]) - _DOWN * max(0.0, -side[2])
        throat = _LEAST
        frame = Rigid(start, seam.way, side, cross(seam.way, side))
        if Clamp(frame, high - low, _LEAST).grips_into(taken):
            continue
        while throat <= _MOST and throat - bonus < least:
            clamp = Clamp(frame, high - low, throat)
            if not clamp.cuts(taken):
                best, least = clamp, throat - bonus
                break
            throat += _STEP
    return best


def _reach(
    at: Vector, seam: _Seam, across: Vector, faces: Sequence[Patch]
) -> tuple[float, float] | None:
    """Return the outermost faces about a line along the way of a seam, mm along it."""
    levels: list[float] = []
    for one, other in _PROBES:
        spot = added(at, added(scaled(seam.along, one), scaled(across, other)))
        for face in faces:
            if abs(dot(face.normal, seam.way)) > _ALONG and face.holds(spot, seam.way):
                levels.append(dot(face.loops[0][0], seam.way))
    return (min(levels), max(levels)) if levels else None


def _near(one: Box, other: Box) -> bool:
    """Tell whether two boxes along the world's axes share space."""
    (a, b), (c, d) = one, other
    return all(a[i] < d[i] and c[i] < b[i] for i in range(3))


def _box(posed: PosedPanel) -> Box:
    return box_of(
        posed.pose.point((x, y, z))
        for x, y in posed.panel.shape.outer
        for z in (0.0, posed.panel.thickness)
    )
