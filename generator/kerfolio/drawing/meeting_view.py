"""A finding on how pieces meet: the pieces in their places, and a cut through where they do."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist, inf

from kerfolio.assembly.assembled import PosedJoint, PosedPiece
from kerfolio.assembly.extent import box_of, corners
from kerfolio.basis.finding import Measured
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.cut_window import RING, ROOM, CutWindow, half_window, key
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Stroke
from kerfolio.geometry.facing import PosedPanel, Solids, extent_of, solids_of
from kerfolio.geometry.hidden_lines import Seen, seen
from kerfolio.geometry.panel_section import (
    Reach,
    Section,
    is_cut,
    reach_along,
    section,
)
from kerfolio.geometry.rigid import Rigid, Vector, added, cross, dot, length, scaled
from kerfolio.geometry.shapes import circle
from kerfolio.geometry.view import View

_VIEWS = tuple(View(turn, rise) for rise in (28.0, -24.0) for turn in (-32.0, 32.0, 148.0, -148.0))
_ARROW = 16.0
LEAST_WIDE = 110.0
_HIDDEN = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What is drawn of pieces that meet.

    ``moving`` are tinted, ``others`` what they meet; ``rest`` stands besides. ``at`` is the place
    to ring. ``planes`` are tried one after the other as cuts there, x the way in which something is
    measured; ``wanted`` is how much the finding says that is, mm. ``way`` is a direction in which
    the moving ones cannot go; they are drawn back along it by ``back`` mm. ``measured`` is what is
    measured there, in the world, where that is no gap or overlap to be found in the cut.
    """

    moving: tuple[PosedPiece, ...]
    others: tuple[PosedPiece, ...] = ()
    rest: tuple[PosedPiece, ...] = ()
    at: Vector | None = None
    planes: tuple[Rigid, ...] = ()
    near: float = 40.0
    wanted: float | None = None
    way: Vector | None = None
    back: float = 0.0
    measured: Measured | None = None


def meeting_view(shown: Shown, title: str, unit: str) -> Drawing:
    """Return the picture, about 125 mm wide and 72 mm high at most; ``unit`` is the plan's."""
    reader = Reader(unit=unit)
    placed = _placed(shown)
    solids = solids_of([PosedPanel(each.panel, each.pose) for each in placed])
    moving = range(len(shown.moving))
    view, found = best_view(solids, range(len(shown.moving) + len(shown.others)), moving)
    seat = fitted(view, extent_of(solids, view), padded(ROOM, -RING[1]))
    items: list[Item] = [*solid_strokes(found, seat, moving)]
    if shown.way:
        items += _arrow(shown.way, placed[0], seat)
    spot = seat.spot(shown.at) if shown.at else None
    if spot:
        items.append(Stroke(contour=circle(spot, 2 * RING[1]), ink=Ink.ACCENT, width=RING[0]))
    told = ""
    cut = _section_of(shown) if shown.planes else None
    if cut:
        made, reach, near = cut
        if reach:
            told = f"{length_in(reach.size, reader)} {reach.kind}"
        items += _cut(made, reach, near, told)
    items += _key(shown, extent(items))
    return Drawing(
        box=box_around(items),
        items=tuple(items),
        title=title,
        description=_sentence(shown, told),
    )


def box_around(items: Sequence[Item]) -> Box:
    """Return the box of a picture, never narrow, so that all have lettering of one size."""
    box = padded(extent([part for each in items for part in expanded(each)]), 0.8)
    more = max(0.0, LEAST_WIDE - (box[2] - box[0])) / 2
    return box[0] - more, box[1], box[2] + more, box[3]


def _placed(shown: Shown) -> list[PosedPiece]:
    """Return all pieces as they are drawn, the moving ones first."""
    away = scaled(shown.way, -shown.back) if shown.way else (0.0, 0.0, 0.0)
    drawn_back = (replace(each, pose=each.pose.moved(away)) for each in shown.moving)
    return [*drawn_back, *shown.others, *shown.rest]


def best_view(
    solids: Solids,
    few: Collection[int],
    moving: Collection[int],
    small: Collection[int] = (),
) -> tuple[View, Seen]:
    """Return the view that shows most of the few concerned, the first of those as good.

    Of the ``small`` as many as can be are to be seen at all.
    """
    best = None
    for view in _VIEWS:
        box = extent_of(solids, view)
        scale = fitted(view, box, padded(ROOM, -RING[1])).scale
        found = seen(solids, view, apart=APART / scale, first=tuple(moving))
        shares = [
            sum(each.shape.area for each in found.areas if each.solid == number)
            / max(1.0, (box[2] - box[0]) * (box[3] - box[1]))
            for number in few
        ]
        worth = min(0.15, min(shares)) + (0.02 if view.elevation > 0 else 0.0)
        worth += len({each.solid for each in found.areas} & {*small})
        if best is None or worth > best[0] + 1e-9:
            best = (worth, view, found)
    assert best is not None, "there are views"
    return best[1], best[2]


def _section_of(shown: Shown) -> tuple[Section, Reach | None, float] | None:
    """Return the cut in which what is measured comes nearest to what the finding says.

    With it what is measured, and how far it may be shown, mm. None where no cut goes through both.
    """
    one, *others = (PosedPanel(e.panel, e.pose) for e in (shown.moving[0], *shown.others))
    if shown.measured:
        size = dist(shown.measured.a, shown.measured.b)
        measured = Reach((-size / 2, 0.0), (size / 2, 0.0), shown.measured.word)
        return section(one, others, shown.planes[0]), measured, max(shown.near, size)
    best: tuple[Section, Reach | None, float] | None = None
    least = inf
    for plane in shown.planes:
        made = section(one, others[:1], plane)
        if not is_cut(made, shown.near):
            continue
        reach = reach_along(made, shown.near, shown.wanted)
        if reach is None:
            best = best or (made, None, shown.near)
            continue
        off = 0.0 if shown.wanted is None else round(abs(reach.size - shown.wanted), 2)
        if off < least:
            best, least = (made, reach, shown.near), off
    return best


def _cut(made: Section, reach: Reach | None, near: float, told: str) -> Iterator[Item]:
    """Yield the cut in its window with its dimension below."""
    window = CutWindow(
        reach.middle if reach else (0.0, 0.0),
        half_window(reach.size if reach else near / 4, near),
    )
    yield window.ground()
    filled = (((made.other,), Ink.FACE_MID), ((made.one,), Ink.NEW_LIGHT))
    for shapes, ink in (*filled, ((made.one, made.other), Ink.ACCENT)):
        yield from window.filled(shapes, ink)
    for shape, ink in ((made.other, Ink.INK), (made.one, Ink.NEW_LINE)):
        yield from window.rim(shape, ink)
    yield window.border()
    if reach:
        yield from window.measured(reach.a, reach.b, told)


def _arrow(direction: Vector, piece: PosedPiece, seat: PaperSeat) -> Iterator[Item]:
    """Yield an arrow from a piece the way in which it cannot go."""
    way = seat.way(direction)
    size = (way[0] ** 2 + way[1] ** 2) ** 0.5
    if size < _HIDDEN * seat.scale:
        return
    low, high = box_of(corners(piece))
    x, y = seat.spot(scaled(added(low, high), 0.5))
    u, v = way[0] / size, way[1] / size
    tip = (x + u * _ARROW, y + v * _ARROW)
    wings = [
        (tip[0] - 3.2 * u + side * 1.5 * v, tip[1] - 3.2 * v - side * 1.5 * u) for side in (1, -1)
    ]
    yield Stroke(contour=open_path((x, y), tip), ink=Ink.ACCENT, width=1.0)
    yield Stroke(contour=open_path(wings[0], tip, wings[1]), ink=Ink.ACCENT, width=1.0)


def _key(shown: Shown, box: Box) -> Iterator[Item]:
    """Yield which colour is which piece, a line each below all that is drawn."""
    rows = ((Ink.NEW_LIGHT, shown.moving), (Ink.FACE_MID, shown.others))
    yield from key([(ink, names_of(them)) for ink, them in rows if them], box)


_NAMED = 6
"""So many pieces are named below a picture; further ones are counted."""


def names_of(pieces: Sequence[PosedPiece]) -> str:
    """Return the names of pieces, further ones counted."""
    more = len(pieces) - _NAMED
    few = [each.label for each in pieces[: _NAMED if more > 1 else None]]
    return listed([*few, f"{more} more"] if more > 1 else few)


def _sentence(shown: Shown, told: str) -> str:
    first, second = names_of(shown.moving), names_of(shown.others)
    words = f"{first} where it meets {second}" if second else first
    return f"{words}: {told}." if told else f"{words}."


def planes_at(
    joint: PosedJoint | None, at: Vector, off: Vector | None, one: PosedPiece, other: PosedPiece
) -> tuple[Rigid, ...]:
    """Return the planes to cut two pieces by at a place, those that show most of it first.

    ``off`` is the way from one to the other, in the world, by which they do not meet. The cut has
    its x along that; else along what is across the joint, in the plane of one of the pieces.
    """
    axes = [one.pose.x, one.pose.y, one.pose.z, other.pose.x, other.pose.y, other.pose.z]
    normals = [one.pose.z, other.pose.z]
    if joint:
        axes = [joint.frame.y, joint.frame.x, joint.frame.z, *axes]
        normals = [joint.frame.z, *normals, joint.frame.x, joint.frame.y]
    across = [_unit(off)] if off and length(off) > 1e-6 else axes
    found = []
    for way in across:
        for normal in normals:
            if abs(dot(way, normal)) < 0.2:
                square = _unit(added(normal, scaled(way, -dot(way, normal))))
                found += [
                    Rigid(added(at, scaled(square, by)), way, cross(square, way), square)
                    for by in (0.0, other.panel.thickness / 2, -other.panel.thickness / 2)
                ]
    return tuple(found)


def _unit(way: Vector) -> Vector:
    return scaled(way, 1 / length(way))
