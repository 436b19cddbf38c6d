"""Wedges in their slots: how each bears, how far it is yet to be driven, what wood is behind it.

A wedge goes through a slot in a tenon and draws the piece that the tenon comes out of on to the
shoulder. Everything is measured along the tenon, outward, from the middle of the slot; mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds, centroid, point_in
from kerfolio.geometry.rigid import Rigid, Vector, cross, dot, scaled
from kerfolio.model.feature_kind import TAB
from kerfolio.model.joint_kind import TAB_JOINT, WEDGE_JOINT
from kerfolio.settling.settled import (
    SettledFeature,
    SettledJoint,
    SettledPart,
    SettledPlan,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wedged:
    """A wedge as its joint places it, mm.

    ``wedge`` and ``through`` are pieces, ``holds`` the piece that it draws on, empty where no tenon
    tells. ``taper`` is how much wider it becomes for each mm of its length, ``slant`` the same of
    the side that lies against ``holds``.

    ``inside`` is how far the slot's inner wall lies inside the face that the wedge bears on: less
    than nothing and it cannot draw. ``gap`` is between that face and the wedge, ``to_drive`` how
    far it is driven on until it bears on the slot's outer wall, ``left`` how much of it then stands
    out at its head. ``behind`` is the wood between the slot and the tenon's end, ``cheek`` that
    beside the slot, ``play`` that of the wedge across the slot, ``bearing`` the area, mm2, that
    bears on the outer wall.

    ``frame`` is in the world: its origin in the middle of the slot, x outward along the tenon, z
    the way to the wedge's head. ``reach`` is half of the slot's length, ``across`` half its width.
    """

    joint: SettledJoint
    wedge: str
    through: str
    holds: str
    part: SettledPart
    slot: SettledFeature
    slotted: SettledPart
    taper: float
    slant: float
    inside: float | None
    gap: float | None
    to_drive: float
    left: float
    behind: float | None
    cheek: float | None
    play: float
    bearing: float
    frame: Rigid
    reach: float
    across: float


def wedges_of(settled: SettledPlan, assembled: Assembled) -> tuple[Wedged, ...]:
    """Return every wedge whose pieces have a place, in the order of the joints."""
    return tuple(_wedges(settled, assembled))


def _wedges(settled: SettledPlan, assembled: Assembled) -> Iterator[Wedged]:
    pieces = pieces_of(settled)
    posed = {each.label: each for each in assembled.pieces}
    for joint in settled.joints:
        if joint.stated.kind is not WEDGE_JOINT:
            continue
        a, b = end_of(joint.stated.a.name, pieces), end_of(joint.stated.b.name, pieces)
        if a is None or b is None or not b.features or not {a.piece, b.piece} <= set(posed):
            continue
        found = _Look(settled, posed, joint, (a.piece, a.part), (b.piece, b.part, b.features[0]))
        yield found.wedged()


class _Look:
    """One wedge looked at in the frame of the piece that its slot is in."""

    def __init__(
        self,
        settled: SettledPlan,
        posed: dict[str, PosedPiece],
        joint: SettledJoint,
        wedge: tuple[str, SettledPart],
        slotted: tuple[str, SettledPart, SettledFeature],
    ) -> None:
        self._settled, self._posed, self._joint = settled, posed, joint
        self._wedge, self._part = wedge
        self._piece, self._slotted, self._slot = slotted
        self._tab = self._tenon()
        self._out = self._tab.direction if self._tab else self._slot.direction

    def _tenon(self) -> SettledFeature | None:
        """Return the tenon that the slot lies in: the tab round it, or that it stands before."""
        tabs = [each for each in self._slotted.features if each.kind is TAB]
        around = [e for e in tabs if any(point_in(c, self._slot.at) for c in e.shape)]
        return around[0] if around else None

    def wedged(self) -> Wedged:
        slot, thick = self._slot, self._slotted.thickness
        at = self._joint.at or centroid(self._part.plain)
        half = thick / 2
        low, high = at[1] - half, at[1] + half
        sign = self._sign()
        inner = [sign * (x - at[0]) for x in self._sides(at[1])]
        sides = {y: sorted(sign * (x - at[0]) for x in self._sides(y)) for y in (low, high)}
        taper = self._taper()
        slant = abs(sides[high][0] - sides[low][0]) / thick
        reach = self._length() / 2
        outermost = max(sides[low][1], sides[high][1])
        to_drive = (reach - outermost) / taper if taper > 0 else 0.0
        holds = self._held()
        face = self._face(holds)
        box = bounds(self._part.plain.outer)
        tip = self._tip()
        cheek = (self._tab.width.value - self._across()) / 2 if self._tab else None
        return Wedged(
            joint=self._joint,
            wedge=self._wedge,
            through=self._piece,
            holds=holds,
            part=self._part,
            slot=slot,
            slotted=self._slotted,
            taper=taper,
            slant=slant,
            inside=None if face is None else face + reach,
            gap=None if face is None else min(inner) - face,
            to_drive=to_drive,
            left=box.y1 - high - to_drive,
            behind=None if tip is None else tip - reach,
            cheek=cheek,
            play=self._across() - self._part.thickness,
            bearing=thick * min(self._part.thickness, self._across()),
            frame=self._frame(),
            reach=reach,
            across=self._across() / 2,
        )

    def _frame(self) -> Rigid:
        """Return where the slot's middle is in the world; z runs to the wedge's head."""
        own, outward = self._posed[self._piece].pose, self._outward()
        head = self._posed[self._wedge].pose.vector((0.0, 1.0, 0.0))
        through = own.vector((0.0, 0.0, 1.0))
        z = through if dot(head, through) >= 0 else scaled(through, -1.0)
        middle = own.point((*self._slot.at, self._slotted.thickness / 2))
        return Rigid(middle, outward, cross(z, outward), z)

    def _sides(self, y: float) -> tuple[float, float]:
        """Return where the wedge's two sides are at a height of its drawing."""
        xs = [*_crossings(self._part.plain.outer, y)]
        return (min(xs), max(xs)) if xs else (0.0, 0.0)

    def _sign(self) -> float:
        """Return 1 where the wedge's x runs outward along the tenon, else -1."""
        across = self._posed[self._wedge].pose.vector((1.0, 0.0, 0.0))
        return 1.0 if dot(across, self._outward()) >= 0 else -1.0

    def _outward(self) -> Vector:
        return self._posed[self._piece].pose.vector((*self._out, 0.0))

    def _length(self) -> float:
        """Return how long the slot is along the tenon."""
        return self._extent(self._out)

    def _across(self) -> float:
        return self._extent((-self._out[1], self._out[0]))

    def _extent(self, way: Point) -> float:
        spots = [x * way[0] + y * way[1] for each in self._slot.shape for x, y, _ in each.vertices]
        return max(spots) - min(spots)

    def _taper(self) -> float:
        """Return by how much the wedge widens for each mm, over the middle of its length."""
        box = bounds(self._part.plain.outer)
        low, high = box.y0 + 0.2 * box.height, box.y1 - 0.2 * box.height
        wide = [right - left for left, right in map(self._sides, (low, high))]
        return (wide[1] - wide[0]) / (high - low)

    def _tip(self) -> float | None:
        if self._tab is None:
            return None
        (x, y), (sx, sy) = self._tab.at, self._slot.at
        root = (x - sx) * self._out[0] + (y - sy) * self._out[1]
        return root + self._tab.length.value

    def _held(self) -> str:
        """Return the piece that the tenon goes through as its joint names it, if it has a place."""
        pieces = pieces_of(self._settled)
        for each in self._settled.plan.joints:
            if each.kind is TAB_JOINT:
                a, b = end_of(each.a.name, pieces), end_of(each.b.name, pieces)
                if a and b and a.piece == self._piece and self._tab in a.features:
                    return b.piece if b.piece in self._posed else ""
        return ""

    def _face(self, holds: str) -> float | None:
        """Return where the face of what it holds lies that looks along the tenon, outward."""
        held = self._posed.get(holds)
        if held is None:
            return None
        outward, own = self._outward(), self._posed[self._piece].pose
        middle = own.point((*self._slot.at, self._slotted.thickness / 2))
        ends = (held.pose.point((0.0, 0.0, z)) for z in (0.0, held.panel.thickness))
        return max(dot(each, outward) for each in ends) - dot(middle, outward)


def _crossings(contour: Contour, y: float) -> Iterator[float]:
    """Yield where the straight sides of a contour cross a height."""
    for edge in edges(contour):
        (x0, y0), (x1, y1) = edge.start, edge.end
        if min(y0, y1) <= y <= max(y0, y1) and y0 != y1:
            yield x0 + (x1 - x0) * (y - y0) / (y1 - y0)
