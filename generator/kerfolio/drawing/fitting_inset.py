"""Hardware drawn larger: a fastening before its place, and which way a cross nut lies."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from math import hypot

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import Fitting
from kerfolio.assembly.lying import Shown
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.callout import Block, seen_from_block
from kerfolio.drawing.extent import box_of_spots, middle_of, union
from kerfolio.drawing.inset import RADIUS, Detail, Inset, in_circle, kept, near_to
from kerfolio.drawing.joint_inset import FINGER
from kerfolio.drawing.mounted import is_drawn, mounted
from kerfolio.drawing.other_views import loss_of, other_views, way_told
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene, step_scene
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.rigid import Vector, added, dot, scaled
from kerfolio.geometry.view import View
from kerfolio.model.fastening import CROSS_NUT
from kerfolio.model.stock import HardwareStock

_FILLED = 0.92
"""How far a fastening fills its circle."""
_AS_GOOD, _SAME, _PLACES = 0.6, 0.999, 6
_BEHIND = 0.1
"""What goes in towards the eye by more than this (cosine) goes in from behind."""
_FARTHEST = 120
"""A cross nut lies no farther than this from the edge that its bolt comes through, mm."""


_Drawn = tuple[tuple[Vector, ...], Callable[[int], Inset]]


def fitting_details(
    shown: Shown, scene: Scene, reach: Sequence[float], seat: PaperSeat, reader: Reader
) -> Iterator[Detail]:
    """Yield the hardware of a step that is drawn larger: a cross nut, and a fastening.

    Nothing where none is new, or all can be seen well enough in the picture. ``reach`` tells how
    far the guide line of each piece of hardware drawn out is seen; those seen farthest are taken.
    What goes in from behind, so that nothing of it is seen, is drawn from where it is.
    """
    new = [each for each in shown.fittings if each.step == shown.step.number and is_drawn(each)]
    far = dict(zip(map(id, new), reach, strict=True))
    bolts = {each.number: each for each in new if each.role is Role.SHANK}
    small = [each for each in bolts.values() if each.length * seat.scale < FINGER]
    hidden = _hidden([*bolts.values()], far, seat.view)
    if not small and not hidden:
        return
    nuts = _seen_best([each for each in new if _crosses(each) and each.number in bolts], far)
    if nuts:
        words = say(reader, "drawing-larger-nut", item=nuts[0].item.title)
        yield Detail(*_cross_nut(shown, bolts, nuts, scene, seat), words)
    shafts = _seen_best(small, far)
    if shafts:
        words = say(reader, "drawing-larger-fastening", item=shafts[0].item.title)
        yield Detail(*_fastening(shown, new, shafts, scene, seat.view), words)
    elif hidden:
        words = say(reader, "drawing-larger-fastening", item=hidden[0].item.title)
        view = _before(hidden[0], seat.view)
        told = seen_from_block(reader, way_told(seat.view, view))
        count = len(hidden)
        spots, drawn = _fastening(shown, new, hidden, scene, view)
        inset = partial(_told, drawn, told, count)
        yield Detail(spots, inset, words, told, count)


def _told(drawn: Callable[[int], Inset], told: Block, count: int, which: int) -> Inset:
    return replace(drawn(which), told=told, count=count)


def _hidden(shafts: Sequence[Fitting], far: Mapping[int, float], view: View) -> list[Fitting]:
    """Return the fastenings that all go in from behind, unseen, if they are alike."""
    if not shafts or any(far[id(each)] > 0 for each in shafts):
        return []
    first = shafts[0]
    alike = [
        each
        for each in shafts
        if each.item == first.item and dot(each.frame.z, first.frame.z) > _SAME
    ]
    return alike if dot(first.frame.z, view.to_viewer) > _BEHIND else []


def _before(shaft: Fitting, main: View) -> View:
    """Return the view nearest to the picture's that looks at a fastening from where it comes."""
    facing = [each for each in other_views(main) if dot(shaft.frame.z, each.to_viewer) < -_BEHIND]
    return min(facing, key=lambda each: loss_of(main, each))


def _crosses(fitting: Fitting) -> bool:
    return isinstance(fitting.item, HardwareStock) and fitting.item.kind == CROSS_NUT


def _radius(bolt: Fitting) -> float:
    thread = bolt.item.thread if isinstance(bolt.item, HardwareStock) else None
    return (thread or 0.0) / 2


def _seen_best(some: Sequence[Fitting], far: Mapping[int, float]) -> list[Fitting]:
    """Return the pieces of hardware that are seen best, all of one kind and one way in."""
    if not some:
        return []
    order = sorted(some, key=lambda each: (-round(far[id(each)], 1), each.number))
    first, most = order[0], far[id(order[0])]
    return [
        each
        for each in order
        if far[id(each)] >= max(_AS_GOOD * most, 1e-9)
        and each.item == first.item
        and dot(each.frame.z, first.frame.z) > _SAME
    ][:_PLACES]


def _spots(shafts: Sequence[Fitting], scene: Scene) -> tuple[Vector, ...]:
    return tuple(
        added(each.mouth, scene.away.get(each.follows, (0.0, 0.0, 0.0))) for each in shafts
    )


def _fastening(
    shown: Shown, new: Sequence[Fitting], shafts: Sequence[Fitting], scene: Scene, view: View
) -> _Drawn:
    """Return a fastening drawn out before its place, everything else at home."""
    spots = _spots(shafts, scene)

    def drawn(which: int) -> Inset:
        shaft = shafts[which]
        group = [each for each in new if each.number == shaft.number]
        home = step_scene(shown.assembled, shown.step, 0.0)
        bodies = mounted(replace(home, pieces=()), group, shown.step.number, view, 1.0)
        mouth = box_of_spots([view.spot(shaft.mouth)])
        box = union([extent_of(bodies.solids(), view), mouth])
        centre, scale = middle_of(box), _scale(box)
        near = near_to(home, view, centre, RADIUS / scale)
        posed = mounted(near, group, shown.step.number, view, scale)
        found = in_circle(posed, view, centre, scale, _guides(posed))
        return Inset(spots[which], view, scale, centre, found, frozenset(posed.coloured))

    return spots, drawn


def _guides(scene: Scene) -> list[tuple[Vector, Vector]]:
    return [each.guide for each in scene.fittings if each.guide]


def _scale(box: tuple[float, float, float, float]) -> float:
    left, bottom, right, top = box
    return min(1.0, _FILLED * RADIUS / max(hypot(right - left, top - bottom) / 2, 1.0))


def _cross_nut(
    shown: Shown,
    bolts: Mapping[int, Fitting],
    nuts: Sequence[Fitting],
    scene: Scene,
    seat: PaperSeat,
) -> _Drawn:
    """Return a cross nut before its hole, with the bore that its bolt will come through."""
    view, spots = seat.view, _spots(nuts, scene)

    def drawn(which: int) -> Inset:
        nut = nuts[which]
        home = step_scene(shown.assembled, shown.step, 0.0)
        home = kept(home, [each for each in home.pieces if each.label == nut.follows])
        (piece,) = home.pieces
        bolt = bolts[nut.number].frame
        mouth = _way_out(nut.frame.origin, scaled(bolt.z, -1.0), piece)
        alone = mounted(replace(home, pieces=()), [nut], shown.step.number, view, 1.0)
        seen = box_of_spots([view.spot(mouth), view.spot(nut.mouth)])
        box = union([extent_of(alone.solids(), view), seen])
        centre, scale = middle_of(box), _scale(box)
        posed = mounted(home, [nut], shown.step.number, view, scale)
        found = in_circle(posed, view, centre, scale, _guides(posed))
        bore = (mouth, nut.frame.origin, _radius(bolts[nut.number]))
        new = frozenset(posed.coloured)
        return Inset(spots[which], view, scale, centre, found, new, bored=(bore,))

    return spots, drawn


def _way_out(start: Vector, way: Vector, piece: PosedPiece) -> Vector:
    """Return where a way from within a piece leaves its outline."""
    back = piece.pose.inverse
    (x, y, _), (across, up, _) = back.point(start), back.vector(way)
    spots = [(x + across * far, y + up * far) for far in range(_FARTHEST)]
    off = Occupied([Flat(piece.panel.shape.outer)]).clearances(spots)
    return added(start, scaled(way, float(next((n for n, d in enumerate(off) if d > 0), 0))))
