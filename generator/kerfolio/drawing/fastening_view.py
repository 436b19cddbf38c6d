"""A finding on a fastening or a bore: the pieces with the hardware, and a cut along its axis."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import dist, hypot
from typing import Any

from kerfolio.assembly.assembled import BuildOrder, PosedPiece
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.fastening_axis import room_in
from kerfolio.assembly.fastening_body import Body
from kerfolio.assembly.fitting import fittings_of
from kerfolio.assembly.panels import panel_of
from kerfolio.basis.finding import Axial
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.cut_window import RING, ROOM, CutWindow, half_window, key
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import FINE
from kerfolio.drawing.hardware_solid import hardware_solid
from kerfolio.drawing.meeting_view import best_view, box_around
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.drawing.solid_strokes import solid_strokes
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import PosedPanel, PosedTurned, extent_of, solids_of
from kerfolio.geometry.panel_section import cut, disc, shape_of, without
from kerfolio.geometry.rigid import HERE, Rigid, Vector, added, between, cross, dot, length, scaled
from kerfolio.geometry.turned import Turned
from kerfolio.model.fastening import BOLTED, DOWELLED
from kerfolio.settling.bored import bores_of_part
from kerfolio.settling.settled import SettledPlan

_PAST = 15.0
"""How far an axis is drawn past what lies on it, mm."""
_EDGE_ON = 0.3
"""A direction of which a plane holds less than this share stands on it."""
_LEAST_SEEN = 30.0
_SAME = 1e-6


@dataclass(frozen=True, slots=True)
class Drilled:
    """A bore by hand in the world: where it begins, the way in (unit), how deep and how wide."""

    mouth: Vector
    inward: Vector
    deep: float
    wide: float


@dataclass(frozen=True, kw_only=True)  # no slots: what is worked out once is kept
class AlongAxis:
    """What lies along an axis: pieces, hardware at home and drawn out, bores by hand.

    ``frame`` is that of the axis, z the way in; ``thick`` the way in which the last piece is thick,
    ``words`` what it is called. What is ``solid`` has no room in the wood but what is bored.
    """

    frame: Rigid
    thick: Vector
    pieces: tuple[PosedPiece, ...]
    bores: tuple[Drilled, ...]
    words: str
    at_home: tuple[Body, ...] = ()
    drawn_out: tuple[tuple[Turned, Rigid], ...] = ()
    solid: bool = False

    def plane(self, axial: Axial) -> Rigid:
        """Return the plane to cut by: x along the axis, y across it as a finding measures."""
        along = self.frame.z
        flat = cross(self.thick, along)
        ways = (axial.aside, flat if axial.flat else self.thick, flat, self.frame.x)
        across = next(each for each in ways if each is not None and _square(each, along))
        across = added(across, scaled(along, -dot(across, along)))
        across = scaled(across, 1.0 / length(across))
        return Rigid(self.frame.origin, along, across, cross(along, across))

    @cached_property
    def reach(self) -> tuple[float, float]:
        """How far hardware and bores reach along the axis, mm."""
        ends = [0.0]
        for each in self.at_home:
            start = dot(between(self.frame.origin, each.frame.origin), self.frame.z)
            ends += [start, start + (each.item.length or 0.0 if _lies_along(each, self) else 0.0)]
        for bore in self.bores:
            start = dot(between(self.frame.origin, bore.mouth), self.frame.z)
            ends += [start, start + bore.deep * dot(bore.inward, self.frame.z)]
        return min(ends), max(ends)


def along_fastening(posed: PosedFastening, pieces: Sequence[PosedPiece]) -> AlongAxis:
    """Return what lies along the axis of a fastening; ``pieces`` are those to show."""
    known = {each.label: each for each in pieces}
    settled = posed.settled
    bores = []
    for seat in settled.seats:
        if seat.is_bore and seat.diameter is not None and seat.piece in known:
            pose = known[seat.piece].pose
            mouth, inward = pose.point(seat.mouth), pose.vector(seat.inward)
            bores.append(Drilled(mouth, inward, room_in(seat), seat.diameter))
    last = known.get(settled.last.piece) or known[settled.under_head]
    out = []
    for fitting in fittings_of([posed], BuildOrder(steps=())):
        solid = hardware_solid(fitting.item)
        if solid is not None:
            out.append((solid, fitting.frame.moved(fitting.drawn_out((0.0, 0.0, 0.0)))))
    return AlongAxis(
        frame=posed.frame,
        thick=last.pose.z,
        pieces=tuple(pieces),
        bores=tuple(bores),
        words=listed([each.item.name for each in posed.bodies]),
        at_home=posed.bodies,
        drawn_out=tuple(out),
        solid=settled.kind in (BOLTED, DOWELLED),
    )


def bored_alone(settled: SettledPlan, name: str) -> AlongAxis | None:
    """Return a bore by hand (``part.bore``) in its part, as that is drawn; None for another."""
    for part in settled.parts:
        for bore in bores_of_part(part):
            if f"{part.name}.{bore.name}" == name and bore.level is not None:
                inward = (-bore.direction[0], -bore.direction[1], 0.0)
                mouth = (*bore.at, bore.level.value)
                piece = PosedPiece(
                    label=part.name,
                    mark=part.mark,
                    part=part.name,
                    sheet=part.sheet,
                    panel=panel_of(part),
                    pose=HERE,
                    mass=0.0,
                )
                return AlongAxis(
                    frame=Rigid(mouth, (0.0, 0.0, 1.0), cross(inward, (0.0, 0.0, 1.0)), inward),
                    thick=(0.0, 0.0, 1.0),
                    pieces=(piece,),
                    bores=(Drilled(mouth, inward, bore.length.value, bore.width.value),),
                    words="",
                )
    return None


def axial_view(found: AlongAxis, axial: Axial, title: str, unit: str) -> Drawing:
    """Return the picture, about 125 mm wide and 80 mm high at most; ``unit`` is the plan's."""
    reader = Reader(unit=unit)
    plane = found.plane(axial)
    items = list(_as_it_stands(found, axial))
    told = ""
    if axial.measured:
        size = dist(axial.measured.a, axial.measured.b)
        told = f"{length_in(size, reader)} {axial.measured.word}"
    items += _cut(found, axial, plane, told)
    labels = [each.label for each in found.pieces]
    rows = [(Ink.NEW_LIGHT, found.words)] if found.words else []
    items += key([*rows, (Ink.FACE_MID, listed(labels))], extent(items))
    said = f"{found.words} in {listed(labels)}" if found.words else listed(labels)
    return Drawing(
        box=box_around(items),
        items=tuple(items),
        title=title,
        description=f"{said}: {told}." if told else f"{said}.",
    )


def _as_it_stands(found: AlongAxis, axial: Axial) -> Iterator[Item]:
    """Yield the pieces with the hardware drawn out along its axis, the place ringed."""
    turned = [PosedTurned(solid, frame) for solid, frame in found.drawn_out]
    solids = solids_of([*turned, *(PosedPanel(each.panel, each.pose) for each in found.pieces)])
    new = range(len(turned))
    pieces = range(len(turned), len(turned) + len(found.pieces))
    view, made = best_view(solids, pieces, new, small=new)
    seat = fitted(view, extent_of(solids, view), padded(ROOM, -RING[1]))
    yield from solid_strokes(made, seat, new)
    low, high = found.reach
    line = _paper_line(seat, found.frame, low - _PAST, high + _PAST)
    yield Stroke(contour=open_path(*line), ink=Ink.ACCENT, width=FINE, dash=(4.0, 1.0, 0.6, 1.0))
    yield CutWindow((0.0, 0.0), 1.0).ring(seat.spot(found.frame.point((0.0, 0.0, axial.at))))


def _paper_line(seat: PaperSeat, frame: Rigid, low: float, high: float) -> tuple[Point, Point]:
    return seat.spot(frame.point((0.0, 0.0, low))), seat.spot(frame.point((0.0, 0.0, high)))


def _cut(found: AlongAxis, axial: Axial, plane: Rigid, told: str) -> Iterator[Item]:
    low, high = found.reach
    most = max(_LEAST_SEEN, (high - low) / 2 + _PAST)
    window = CutWindow(((low + high) / 2, 0.0), most)
    measured = axial.measured
    if measured:
        (x0, y0), (x1, y1) = measured.a, measured.b
        size = dist(measured.a, measured.b)
        half = half_window(size, max(most, 0.7 * size))
        window = CutWindow(((x0 + x1) / 2, (y0 + y1) / 2), half)
    bores = [_profile(plane, each.mouth, each.inward, each.wide, each.deep) for each in found.bores]
    wood = [without(cut(PosedPanel(each.panel, each.pose), plane), bores) for each in found.pieces]
    bodies = [shape for each in found.at_home for shape in _silhouette(plane, each)]
    yield window.ground()
    for shape in wood:
        yield from window.filled((shape,), Ink.FACE_MID)
    for shape in bodies:
        yield from window.filled((shape,), Ink.NEW_LIGHT)
    for shape in bodies if found.solid else ():
        for each in wood:
            yield from window.filled((shape, each), Ink.ACCENT)
    for shape in wood:
        yield from window.rim(shape, Ink.INK)
    for shape in bodies:
        yield from window.rim(shape, Ink.NEW_LINE)
    yield from window.axis((low - _PAST, 0.0), (high + _PAST, 0.0), Ink.NEW_LINE)
    for bore in found.bores:
        yield from _own_axis(window, plane, bore)
    yield window.border()
    if measured:
        yield from window.measured((x0, y0), (x1, y1), told)
    else:
        yield window.ring(window.seat.point((axial.at, 0.0)))


def _own_axis(window: CutWindow, plane: Rigid, bore: Drilled) -> Iterator[Item]:
    """Yield the axis of a bore where it is not that of what goes in."""
    mouth = plane.inverse.point(bore.mouth)
    way = plane.inverse.vector(bore.inward)
    if abs(mouth[1]) > _SAME or abs(way[1]) > _SAME:
        start = (mouth[0] - _PAST * way[0], mouth[1] - _PAST * way[1])
        far = bore.deep + _PAST
        end = (mouth[0] + far * way[0], mouth[1] + far * way[1])
        yield from window.axis(start, end, Ink.ACCENT)


def _profile(plane: Rigid, mouth: Vector, inward: Vector, wide: float, deep: float) -> Any:
    """Return a bore as a plane along its axis shows it."""
    return _stretch(plane, mouth, inward, 0.0, deep, (wide / 2, wide / 2))


def _silhouette(plane: Rigid, body: Body) -> Iterator[Any]:
    """Yield what a piece of hardware looks like from square to a plane."""
    solid = hardware_solid(body.item)
    for each in solid.frusta if solid else ():
        ends = (each.wide, each.ending)
        yield _stretch(plane, body.frame.origin, body.frame.z, each.low, each.high, ends)


def _stretch(
    plane: Rigid, origin: Vector, way: Vector, low: float, high: float, radii: tuple[float, float]
) -> Any:
    """Return a stretch of a turned solid in a plane: its outline, or a disc seen from its end."""
    x, y, _ = plane.inverse.point(origin)
    u, v, _ = plane.inverse.vector(way)
    share = hypot(u, v)
    if share < _EDGE_ON:
        return disc((x, y), max(radii))
    return shape_of(
        [
            (x + at * u - side * r * v / share, y + at * v + side * r * u / share)
            for at, r, side in (
                (low, radii[0], 1),
                (high, radii[1], 1),
                (high, radii[1], -1),
                (low, radii[0], -1),
            )
        ]
    )


def _lies_along(body: Body, found: AlongAxis) -> bool:
    return abs(dot(body.frame.z, found.frame.z)) > 1 - _EDGE_ON


def _square(way: Vector, along: Vector) -> bool:
    return length(cross(way, along)) > _EDGE_ON * length(way) and length(way) > _SAME
