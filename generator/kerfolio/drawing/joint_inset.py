"""Joints drawn larger: those too small to see on the page, or not seen open in the picture."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist, hypot

from kerfolio.assembly.assembled import Assembled, BuildStep
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.callout import seen_from_block
from kerfolio.drawing.extent import box_of_spots, middle_of
from kerfolio.drawing.inset import (
    RADIUS,
    Detail,
    Inset,
    in_circle,
    kept,
    near_to,
    share_filled,
)
from kerfolio.drawing.joint_edges import edges_of, shares_seen
from kerfolio.drawing.other_views import loss_of, other_views, way_told
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import OpenJoint, Scene, step_scene
from kerfolio.geometry.rigid import HERE, Vector, added, dot, scaled
from kerfolio.geometry.shown import shown_shares
from kerfolio.geometry.view import View
from kerfolio.model.joint_kind import JointKind

FINGER = 8.0
"""A joint smaller than this on the page, mm, is drawn larger beside the picture: the part of a
fingertip that touches is 8 to 10 mm wide, so a reader who points at the joint covers it
(Dandekar, Raju and Srinivasan, 2003, 3-D finite-element models of fingertips; from memory)."""
THIN = 2.0
"""A long joint narrower than this on the page, mm, is drawn larger for its section."""
HIDDEN = 0.04
"""So is one of whose edges on either piece the picture shows less than this share."""
_PLAIN = 0.3
"""Where this share of a joint's edges is seen on both pieces, the picture's own view shows it."""
_LEAST_GAIN, _MOST_GAIN = 1.7, 5.0
_GAP = 0.6
"""How far apart the joint's two sides are in the inset, in radii."""
_AS_GOOD = 0.6
_TRIED, _PLACES = 4, 6
_TOO_LITTLE = 0.06
"""A piece that fills less than this share of the inset is not shown by it."""
_SHUT = 0.12
"""What a view loses that does not see the mouth of the joint, but what comes out of it."""


def joint_details(
    scene: Scene,
    step: BuildStep,
    joints: Sequence[OpenJoint],
    reach: Sequence[float],
    shares: Sequence[float],
    seat: PaperSeat,
    reader: Reader,
) -> Iterator[Detail]:
    """Yield what is to be drawn larger of the joints of a step, one of each kind of joint.

    ``reach`` tells how far the guide line of each is seen, mm on paper, ``shares`` how much of its
    edges. Of pieces that meet in one kind of joint those are taken that show it best, of like
    joints the outermost first. It is seen as the picture is, or from where both its sides show.
    """
    taken: dict[JointKind, list[_Group]] = {}
    for group in _needed(scene.assembled, joints, reach, shares, seat):
        taken.setdefault(joints[group.numbers[0]].joint.kind, []).append(group)
    for alike in taken.values():
        tried: list[tuple[float, Detail]] = []
        for group in alike[:_TRIED]:
            if group.hidden and any(worth > 0 for worth, _ in tried):
                break
            chosen = _places(group.numbers, joints, shares, seat)
            some = [joints[each] for each in chosen]
            detail = _detail(scene, step, some, group.count, seat, reader)
            tried.append((detail.drawn(0).worth, detail))
            if tried[-1][0] >= _PLAIN:
                break
        worth, best = max(tried, key=lambda each: each[0])
        if worth > 0:
            yield best


def page_size(joint: OpenJoint, seat: PaperSeat) -> float:
    """Return how large a joint is on paper, mm: its longer side as it is seen."""
    frame, (along, across) = joint.joint.frame, joint.joint.size
    sides = (scaled(frame.x, along), scaled(frame.y, across))
    return max(hypot(*seat.way(side)) for side in sides)


def is_small(joint: OpenJoint, seat: PaperSeat) -> bool:
    """Tell whether a joint is too small on paper to be seen: all of it, or its section if long."""
    across, along = sorted(joint.joint.size)
    thin = along > _LONG * across and across * seat.scale < THIN
    return thin or page_size(joint, seat) < FINGER


@dataclass(frozen=True, slots=True)
class _Group:
    """Joints alike that part the same way, by their numbers; ``count`` are those of all ways.

    The picture shows nothing of those that are ``hidden``.
    """

    numbers: tuple[int, ...]
    count: int
    hidden: bool


def _needed(
    assembled: Assembled,
    joints: Sequence[OpenJoint],
    reach: Sequence[float],
    shares: Sequence[float],
    seat: PaperSeat,
) -> list[_Group]:
    """Return the joints that are to be drawn larger, those that the picture shows best first.

    They are small, or no picture's line and edge leads to them.
    """
    part = {piece.label: piece.part for piece in assembled.pieces}
    kinds: dict[tuple[JointKind, str, str], list[int]] = {}
    for number, joint in enumerate(joints):
        if not joint.joint.kind.flat:
            one, other = sorted((part[joint.joint.a], part[joint.joint.b]))
            kinds.setdefault((joint.joint.kind, one, other), []).append(number)
    found: list[_Group] = []
    for alike in kinds.values():
        hidden = all(shares[each] < HIDDEN and reach[each] == 0 for each in alike)
        some = [each for each in alike if hidden or (is_small(joints[each], seat) and reach[each])]
        ways: dict[Vector, list[int]] = {}
        for each in some:
            x, y, z = joints[each].joint.frame.z
            ways.setdefault((round(x, 3), round(y, 3), round(z, 3)), []).append(each)
        found += [_Group(tuple(each), len(alike), hidden) for each in ways.values()]

    def rank(group: _Group) -> tuple[float, float, tuple[int, ...]]:
        seen, led = (max(each[n] for n in group.numbers) for each in (shares, reach))
        return -round(min(seen, _PLAIN), 2), -round(led, 1), group.numbers

    return sorted(found, key=rank)


def _places(
    group: Sequence[int], joints: Sequence[OpenJoint], shares: Sequence[float], seat: PaperSeat
) -> list[int]:
    """Return the joints of a group that are seen about as well, and alike, the outermost first."""
    centre = middle_of(box_of_spots(seat.spot(end) for joint in joints for end in joint.ends))
    best = max(group, key=lambda each: (round(shares[each], 3), -each))
    frame = joints[best].joint.frame
    good = [
        each
        for each in group
        if shares[each] >= _AS_GOOD * shares[best]
        and dot(joints[each].joint.frame.x, frame.x) > _STRAIGHT
    ]
    far = {each: round(dist(seat.spot(joints[each].ends[1]), centre), 1) for each in good}
    return sorted(good, key=lambda each: (-far[each], each))[:_PLACES]


_STRAIGHT = 0.999


def _detail(
    scene: Scene,
    step: BuildStep,
    joints: Sequence[OpenJoint],
    count: int,
    main: PaperSeat,
    reader: Reader,
) -> Detail:
    scenes = [_parting(scene, step, each) for each in joints]
    first = joints[0]
    gain = max(_LEAST_GAIN, min(_MOST_GAIN, FINGER / _true_size(first) / main.scale))
    scale = min(1.0, gain * main.scale)
    long = max(first.joint.size) * scale > 2 * RADIUS
    known: dict[tuple[int, View], Inset] = {}

    def seen_so(which: int, view: View) -> Inset:
        if (which, view) not in known:
            shift = _shift(joints[which], view) if long else HERE.origin
            known[which, view] = _drawn(
                scenes[which], joints[which], shift, view, scale, bare=view != main.view
            )
        return known[which, view]

    view = main.view
    if long:
        view = _best_section(first, view)
    elif seen_so(0, view).worth < _PLAIN:
        view = _best_view(scenes[0], first, view, scale)
    way = way_told(main.view, view)
    told = seen_from_block(reader, way) if way else None
    shifts = [_shift(each, view) if long else HERE.origin for each in joints]
    spots = (added(each.ends[1], shift) for each, shift in zip(joints, shifts, strict=True))
    one, other = (scene.assembled.piece(each).mark for each in (first.joint.a, first.joint.b))
    return Detail(
        tuple(spots),
        lambda which: replace(seen_so(which, view), told=told, count=count),
        say(reader, "drawing-larger-joint", one=one, other=other, count=count, way=way or "plain"),
        told,
        count,
    )


def _true_size(joint: OpenJoint) -> float:
    """Return what of a joint is to be a finger wide, mm: its length, its width if it is long."""
    along, across = sorted(joint.joint.size, reverse=True)
    return across if along > _LONG * across else along


_LONG = 20.0
"""How many times as long as it is wide a joint is whose section alone is drawn larger."""


def _shift(joint: OpenJoint, view: View) -> Vector:
    """Return how far the end of a long joint lies from its middle: the end that faces the eye."""
    frame, along = joint.joint.frame, max(joint.joint.size)
    axis = frame.x if joint.joint.size[0] >= joint.joint.size[1] else frame.y
    side = 0.5 if dot(axis, view.to_viewer) > 0 else -0.5
    return scaled(axis, side * along)


def _best_section(joint: OpenJoint, main: View) -> View:
    """Return from where the end of a long joint is seen open, as in the picture if that will do."""
    if _section(joint, main) >= _PLAIN:
        return main
    return max(
        other_views(main),
        key=lambda each: round(_section(joint, each) - loss_of(main, each), 4),
    )


def _best_view(whole: Scene, joint: OpenJoint, main: View, scale: float) -> View:
    """Return from where most is seen of the edges of a joint, on that side which shows less."""
    alone = _alone(whole, joint)

    def worth(view: View) -> float:
        scene = _opened(alone, joint, view, scale)
        (edges,) = edges_of(scene, [_there(scene, joint)])
        found = shown_shares(scene.solids(), view, edges)
        shares = [shown for shown, lines in zip(found, edges, strict=True) if lines]
        shut = _SHUT if dot(joint.joint.frame.z, view.to_viewer) > 0 else 0.0
        return min(shares, default=0.0) - shut - loss_of(main, view)

    return max(other_views(main), key=lambda each: round(worth(each), 4))


def _section(joint: OpenJoint, view: View) -> float:
    """Return how well the end of a long joint and its open side are seen, 0 to 1."""
    frame, eye = joint.joint.frame, view.to_viewer
    axis = frame.x if joint.joint.size[0] >= joint.joint.size[1] else frame.y
    return min(abs(dot(axis, eye)), max(0.0, -dot(frame.z, eye)))


def _parting(scene: Scene, step: BuildStep, joint: OpenJoint) -> Scene:
    """Return a step's scene as it is just before a joint comes together: earlier moves are done.

    Where one move alone brings both sides together that is the whole step's.
    """
    bare = replace(scene, fittings=())
    if joint.straight:
        return bare
    ends = {joint.joint.a, joint.joint.b}
    last = [move for move in step.moves if len(ends & {*move.pieces}) == 1][-1:]
    return step_scene(scene.assembled, replace(step, moves=tuple(last)))


def _opened(scene: Scene, joint: OpenJoint, view: View, scale: float) -> Scene:
    """Return a scene with the sides of a joint a little apart."""
    a, b = (view.spot(end) for end in _there(scene, joint).ends)
    travel = dist(a, b) * scale
    return scene.nearer(min(1.0, _GAP * RADIUS / travel)) if travel else scene


def _there(scene: Scene, joint: OpenJoint) -> OpenJoint:
    """Return a joint as it stands open in a scene."""
    return next(each for each in scene.open_joints() if each.joint is joint.joint)


def _alone(scene: Scene, joint: OpenJoint) -> Scene:
    """Return a scene with the pieces of a joint alone, so that nothing else hides them.

    Where a piece of the joint has come home in the same step, what it is joined to is shown too.
    """
    ends = {joint.joint.a, joint.joint.b}
    if not joint.straight:
        opened = {id(each.joint) for each in scene.open_joints()}
        pairs = ({each.a, each.b} for each in scene.assembled.joints if id(each) not in opened)
        ends = ends.union(*(pair for pair in pairs if pair & ends))
    return kept(scene, [each for each in scene.pieces if each.label in ends])


def _drawn(
    whole: Scene,
    joint: OpenJoint,
    shift: Vector,
    view: View,
    scale: float,
    *,
    bare: bool,
) -> Inset:
    scene = _opened(whole, joint, view, scale)
    near = _there(scene, joint)
    a, b = (view.spot(added(end, shift)) for end in near.ends)
    centre, reach = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), RADIUS / scale
    scene = near_to(_alone(scene, joint) if bare else scene, view, centre, reach)
    edges = edges_of(scene, [near])
    found = in_circle(scene, view, centre, scale, [line for each in edges[0] for line in each])
    (shown,) = shares_seen(edges, found.extra, 0)
    filled = (share_filled(scene, found, each, reach) for each in (joint.joint.a, joint.joint.b))
    worth = 0.0 if min(filled) < _TOO_LITTLE else shown
    spot, new = added(joint.ends[1], shift), frozenset(scene.coloured)
    return Inset(spot, view, scale, centre, replace(found, extra=()), new, worth)
