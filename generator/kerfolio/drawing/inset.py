"""A detail drawn larger: a joint that would be too small to see on the page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import dist, hypot, pi

from kerfolio.assembly.assembled import Assembled, BuildStep, PosedJoint, PosedPiece
from kerfolio.assembly.fastened import Role
from kerfolio.assembly.fitting import Fitting
from kerfolio.assembly.lying import Shown
from kerfolio.basis.reader import Reader
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.callout import Block, from_below_block
from kerfolio.drawing.extent import box_of_spots, middle_of, padded
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.motion import guide_strokes
from kerfolio.drawing.mounted import is_drawn, mounted
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import OpenJoint, Scene, step_scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Ink, Item, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.cropped import cropped
from kerfolio.geometry.facing import extent_of, solids_of
from kerfolio.geometry.hidden_lines import Seen, seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.rigid import Vector, added, dot, scaled
from kerfolio.geometry.shapes import circle
from kerfolio.geometry.view import View
from kerfolio.model.joint_kind import TAB_JOINT, JointKind

FINGER = 8.0
"""A joint smaller than this on the page, mm, is drawn larger beside the picture: the part of a
fingertip that touches is 8 to 10 mm wide, so a reader who points at the joint covers it
(Dandekar, Raju and Srinivasan, 2003, 3-D finite-element models of fingertips; from memory)."""

RADIUS = 16.0
_LEAST_GAIN, _MOST_GAIN = 1.7, 5.0
_GAP = 0.6
"""How far apart the joint's two sides are in the inset, in radii."""
_RING = 1.8
_ROUND = 1.05
"""How much wider than the circle the window is that is worked out, so that no rim shows."""
_FILLED = 0.92
"""How far a fastening fills its circle."""
_TOLD_GAP = 1.6
"""Between the circle and what is told below it, mm."""
_TRIED = 4
_AS_GOOD = 0.6
_ENOUGH, _TOO_LITTLE = 0.2, 0.06
"""Shares of the inset: what each piece should fill, and what is too little to show it at all."""


@dataclass(frozen=True, slots=True)
class Inset:
    """A detail within a circle, in view coordinates, mm of the world: a joint a little apart.

    ``spot`` is where it lies in the picture that it belongs to; ``told`` stands below the circle
    where it is seen otherwise than the picture.
    """

    spot: Vector
    view: View
    scale: float
    centre: Point
    seen: Seen
    new: frozenset[int]
    worth: float
    told: Block | None = None

    @property
    def block(self) -> Block:
        """The inset as a block to go beside a picture."""
        wide = max(2 * RADIUS, self.told.width if self.told else 0.0)
        return Block(wide, self._below + 2 * RADIUS, self._items)

    @property
    def _below(self) -> float:
        """The height of what stands below the circle, mm."""
        return self.told.height + _TOLD_GAP if self.told else 0.0

    def _items(self, at: Point) -> tuple[Item, ...]:
        told, wide = self.told, self.block.width
        middle = (at[0] + wide / 2, at[1] + self._below + RADIUS)
        if told:
            return (*self._circle(middle), *told.items((at[0] + (wide - told.width) / 2, at[1])))
        return self._circle(middle)

    def _circle(self, middle: Point) -> tuple[Item, ...]:
        x, y = (middle[axis] - self.centre[axis] * self.scale for axis in (0, 1))
        rim, seat = circle(middle, 2 * RADIUS), PaperSeat(self.view, self.scale, x, y)
        return (
            Stroke(contour=rim, width=None, fill=Ink.PAPER),
            *solid_strokes(self.seen, seat, self.new),
            *guide_strokes(self.seen, seat),
            Stroke(contour=rim, ink=Ink.SOFT, width=0.35),
        )

    def pointer(self, main: PaperSeat, block: Box) -> tuple[Stroke, Stroke]:
        """Return a line from the spot in the picture to the inset, and a ring round the spot."""
        spot = main.spot(self.spot)
        middle = ((block[0] + block[2]) / 2, block[3] - RADIUS)
        ring = max(_RING, min(4.0, RADIUS * main.scale / self.scale))
        reach = dist(spot, middle)
        way = ((middle[0] - spot[0]) / reach, (middle[1] - spot[1]) / reach)
        start = (spot[0] + ring * way[0], spot[1] + ring * way[1])
        end = (middle[0] - RADIUS * way[0], middle[1] - RADIUS * way[1])
        return (
            Stroke(contour=open_path(start, end), ink=Ink.SOFT, width=0.2),
            Stroke(contour=circle(spot, 2 * ring), ink=Ink.SOFT, width=0.3),
        )


def inset_of(
    assembled: Assembled,
    step: BuildStep,
    joints: Sequence[OpenJoint],
    found: Seen,
    seat: PaperSeat,
    reader: Reader,
) -> Inset | None:
    """Return the inset of a step, None where no joint needs one or none can be shown.

    ``found`` holds the guide lines of ``joints``, and others behind them. Of the joints smaller
    than a finger, one of each kind is tried, those first whose guides are seen farthest, of like
    ones the outermost; the one that shows most of both its pieces is taken. A joint whose mouth
    looks away from the eye is seen from below, and that is told.
    """
    tried = [
        _drawn(assembled, step, joint, seat, reader)
        for joint in _small(assembled, joints, found, seat)
    ]
    best = max(tried, key=lambda each: each.worth, default=None)
    return best if best and best.worth > _TOO_LITTLE else None


def page_size(joint: OpenJoint, seat: PaperSeat) -> float:
    """Return how large a joint is on paper, mm: its longer side as it is seen."""
    frame, (along, across) = joint.joint.frame, joint.joint.size
    sides = (scaled(frame.x, along), scaled(frame.y, across))
    return max(hypot(*seat.way(side)) for side in sides)


def _small(
    assembled: Assembled, joints: Sequence[OpenJoint], found: Seen, seat: PaperSeat
) -> list[OpenJoint]:
    if not joints:
        return []
    reach = [0.0] * len(joints)
    for number, a, b in found.extra:
        if number < len(joints):
            reach[number] += dist(a, b) * seat.scale
    order = sorted(range(len(joints)), key=lambda each: (-round(reach[each], 1), each))
    part = {piece.label: piece.part for piece in assembled.pieces}
    kinds: dict[tuple[JointKind, str, str], list[int]] = {}
    for number in order:
        joint = joints[number]
        if not joint.joint.kind.flat and page_size(joint, seat) < FINGER and reach[number] > 0:
            one, other = sorted((part[joint.joint.a], part[joint.joint.b]))
            kinds.setdefault((joint.joint.kind, one, other), []).append(number)
    centre = middle_of(box_of_spots(seat.spot(end) for joint in joints for end in joint.ends))

    def outermost(alike: list[int]) -> OpenJoint:
        good = [each for each in alike if reach[each] >= _AS_GOOD * reach[alike[0]]]
        far = {each: round(dist(seat.spot(joints[each].ends[1]), centre), 1) for each in good}
        return joints[max(good, key=lambda each: (far[each], -each))]

    return [outermost(alike) for alike in list(kinds.values())[:_TRIED]]


def _into_the_eye(joint: PosedJoint, assembled: Assembled, view: View) -> bool:
    """Tell whether a joint's mouth is seen open: it looks at the eye, or goes through its piece."""
    if joint.kind is not TAB_JOINT or dot(joint.frame.z, view.to_viewer) <= 0:
        return True
    taking = assembled.piece(joint.b)
    x, y, _ = taking.pose.inverse.point(joint.frame.origin)
    (off,) = Occupied(each.shape for each in taking.panel.recesses).clearances([(x, y)])
    return off > 0


def _drawn(
    assembled: Assembled, step: BuildStep, joint: OpenJoint, main: PaperSeat, reader: Reader
) -> Inset:
    view, largest = main.view, max(joint.joint.size)
    below = not view.from_below and not _into_the_eye(joint.joint, assembled, view)
    if below:
        view = replace(view, elevation=-view.elevation)
    gain = max(_LEAST_GAIN, min(_MOST_GAIN, FINGER / largest / main.scale))
    scale = min(1.0, gain * main.scale)
    a, b = (view.spot(end) for end in joint.ends)
    travel = dist(a, b) * scale
    scene = step_scene(assembled, step, min(1.0, _GAP * RADIUS / travel) if travel else 1.0)
    near = next(each for each in scene.open_joints() if each.joint is joint.joint)
    a, b = (view.spot(end) for end in near.ends)
    centre, reach = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), RADIUS / scale
    scene = _near(_bare(scene, joint.joint) if below else scene, view, centre, reach)
    found = _in_circle(scene, view, centre, scale)
    worth = min(
        _ENOUGH,
        *(_share(scene, found, label, reach) for label in (joint.joint.a, joint.joint.b)),
    )
    return Inset(
        joint.ends[1],
        view,
        scale,
        centre,
        found,
        frozenset(scene.coloured),
        worth,
        from_below_block(reader) if below else None,
    )


def _share(scene: Scene, found: Seen, label: str, reach: float) -> float:
    """Return how much of the circle a piece fills."""
    solids = [number for number, piece in enumerate(scene.pieces) if piece.label == label]
    return math.fsum(each.shape.area for each in found.areas if each.solid in solids) / (
        pi * reach**2
    )


def _bare(scene: Scene, joint: PosedJoint) -> Scene:
    """Leave out all pieces but those of a joint: what stands below would hide it from there."""
    return _kept(scene, [each for each in scene.pieces if each.label in (joint.a, joint.b)])


def _near(scene: Scene, view: View, centre: Point, reach: float) -> Scene:
    """Leave out the pieces that do not come into the circle."""

    def touches(piece: PosedPiece) -> bool:
        left, bottom, right, top = extent_of(solids_of([scene.posed(piece)]), view)
        aside = max(left - centre[0], centre[0] - right, 0.0)
        above = max(bottom - centre[1], centre[1] - top, 0.0)
        return hypot(aside, above) < reach

    return _kept(scene, [each for each in scene.pieces if touches(each)])


def _kept(scene: Scene, pieces: Sequence[PosedPiece]) -> Scene:
    """Return a scene with these of its pieces alone."""
    away = {each.label: scene.away[each.label] for each in pieces}
    return replace(scene, pieces=tuple(pieces), away=away)


def _in_circle(scene: Scene, view: View, centre: Point, scale: float) -> Seen:
    """Return what of a scene is seen within the circle, with the guides of its hardware."""
    reach = RADIUS / scale
    found = seen(
        scene.solids(),
        view,
        apart=APART / scale,
        first=scene.coloured,
        extra=[each.guide for each in scene.fittings if each.guide],
        window=padded((*centre, *centre), _ROUND * reach),
    )
    return cropped(found, centre, reach)


def fitting_inset(
    shown: Shown, scene: Scene, found: Seen, seat: PaperSeat, guides: int
) -> Inset | None:
    """Return a fastening of a step drawn larger: its hardware in a row before the closed joint.

    None where none is new, or all can be seen well enough in the picture. ``found`` holds the
    guide lines of the hardware from number ``guides`` on; the fastening whose lines are seen
    farthest is taken.
    """
    new = [each for each in shown.fittings if each.step == shown.step.number and is_drawn(each)]
    small = [each for each in new if each.role is Role.SHANK and each.length * seat.scale < FINGER]
    if not small:
        return None
    drawn = [each for each in scene.fittings if each.guide]
    reach = dict.fromkeys(range(len(drawn)), 0.0)
    for number, a, b in found.extra:
        if number >= guides:
            reach[number - guides] += dist(a, b)
    shafts = {each.number: new.index(each) for each in small}
    best = max(small, key=lambda each: (round(reach[shafts[each.number]], 1), -each.number))
    if reach[shafts[best.number]] <= 0:
        return None
    group = [each for each in new if each.number == best.number]
    spot = added(best.mouth, scene.away.get(best.follows, (0.0, 0.0, 0.0)))
    return _fastening(shown, group, spot, seat)


def _fastening(shown: Shown, group: Sequence[Fitting], spot: Vector, seat: PaperSeat) -> Inset:
    view = seat.view
    home = step_scene(shown.assembled, shown.step, 0.0)
    bare = replace(home, pieces=())
    bodies = mounted(bare, group, shown.step.number, view, 1.0)
    left, bottom, right, top = extent_of(bodies.solids(), view)
    centre = ((left + right) / 2, (bottom + top) / 2)
    scale = min(1.0, _FILLED * RADIUS / max(hypot(right - left, top - bottom) / 2, 1.0))
    near = _near(home, view, centre, RADIUS / scale)
    scene = mounted(near, group, shown.step.number, view, scale)
    found = _in_circle(scene, view, centre, scale)
    return Inset(spot, view, scale, centre, found, frozenset(scene.coloured), 1.0)
