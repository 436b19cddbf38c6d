"""How features meet: where a piece lies when one of its own meets another's, and what else does."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import dist

from kerfolio.adopting.edge_key import row_key
from kerfolio.adopting.finger_rows import FingerRow
from kerfolio.adopting.recognised import AS_LONG, Notch, Recognised, Slot, Tab
from kerfolio.geometry.contour import Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.panel_solid import PanelSolid, solid_of
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, dot, length, scaled
from kerfolio.geometry.same_shape import Placing, symmetries
from kerfolio.geometry.shapes import unit
from kerfolio.model.feature_kind import FINGERS, NOTCH, TAB, FeatureKind

_NEAR = 0.4
"""What meets lies so near, mm: drawn with play, rounded, joined by hand."""

_SHORT = 1.2
"""A tongue may be so much shorter than its housing is deep, mm."""

_SQUARE = 0.9995


@dataclass(frozen=True, slots=True)
class Meet:
    """Two features that meet: of a piece each, by kind (TAB, NOTCH or FINGERS) and number.

    A tab comes first, and of notches and fingers the piece with the lower number.
    """

    kind: FeatureKind
    one: int
    first: int
    other: int
    second: int


@dataclass(frozen=True, eq=False)
class Body:
    """A part as it is put together: its features in its own frame, z from rear to show face.

    Its slots may be so much longer than tabs that go into them (``play``, mm).
    """

    part: Recognised
    thickness: float
    play: float = AS_LONG

    @cached_property
    def solid(self) -> PanelSolid:
        """Its solid."""
        openings = [tuple(points(each.contour, 0.05)) for each in self.part.draft.openings]
        deep = {slot.opening: slot.depth for slot in self.part.slots if slot.depth is not None}
        deep |= dict(self.part.pockets)
        through = tuple(each for index, each in enumerate(openings) if index not in deep)
        shape = Flat(tuple(points(self.part.draft.outline.contour, 0.05)), through)
        recesses = tuple(Recess(Flat(openings[i]), depth) for i, depth in deep.items())
        return solid_of(Panel(shape=shape, thickness=self.thickness, recesses=recesses))

    @cached_property
    def selves(self) -> tuple[Rigid, ...]:
        """The placements in which it covers itself: as it lies, turned, turned over."""
        found = symmetries(self.part.draft.region)
        kept = [each for each in found if not (each.over and self.part.is_one_sided)]
        return tuple(_of_placing(each, self.thickness) for each in kept)

    @cached_property
    def tab_rows(self) -> tuple[tuple[Tab, ...], ...]:
        """Its tabs by edges and sizes, each row along its edge."""
        rows: dict[tuple[int, ...], list[Tab]] = {}
        for tab in self.part.tabs:
            rows.setdefault(row_key(tab), []).append(tab)
        return tuple(tuple(row) for row in rows.values())

    def mid(self, at: Point) -> Vector:
        """Return a point of its drawing half way through the sheet."""
        return (at[0], at[1], self.thickness / 2)


def places_at(
    body: Body, number: int, other: Body, there: Rigid, taken: set[tuple[int, int]]
) -> Iterator[Rigid]:
    """Yield where a body may lie so that a feature of it meets one of another that has its place.

    ``taken`` are slots by piece and number that a tab is in already.
    """
    ours, theirs = body.part, other.part
    for row in body.tab_rows:
        for index, way in _runs(row, other, body):
            if (number, index) not in taken:
                yield from _tab_in_slot(body, row[0], other, theirs.slots[index], there, way)
    for row in other.tab_rows:
        for index, way in _runs(row, body, other):
            yield from _slot_on_tab(body, ours.slots[index], other, row[0], there, way)
    for mine in ours.notches:
        for notch in theirs.notches:
            if _takes(mine.width, other) and _takes(notch.width, body):
                yield from _crossing(body, mine, other, notch, there)
    for fingers in ours.fingers:
        for comb in theirs.fingers:
            if _match(fingers, comb):
                yield from _corner(body, fingers, other, comb, there)


def _runs(row: Sequence[Tab], into: Body, body: Body) -> Iterator[tuple[int, float]]:
    """Yield the slots that the first tab of a row goes into, and which way along them the row runs.

    All others of the row find slots as well, or those before a gap: so many tabs are seldom meant
    for two pieces.
    """
    first = row[0]
    for index, slot in enumerate(into.part.slots):
        if not (_goes_in(first.width, slot, into) and _takes(slot.width, body)):
            continue
        for way in (1.0, -1.0):
            if len(row) < 2 or _is_there(row[1], first, slot, way, into):
                yield index, way


def _is_there(tab: Tab, first: Tab, slot: Slot, way: float, into: Body) -> bool:
    """Tell whether there is a slot for a tab, where the first of its row is in another."""
    run = (tab.at[0] - first.at[0]) * first.along[0] + (tab.at[1] - first.at[1]) * first.along[1]
    there = (slot.at[0] + way * run * slot.along[0], slot.at[1] + way * run * slot.along[1])
    slots = into.part.slots
    return any(dist(each.at, there) <= _NEAR and _goes_in(tab.width, each, into) for each in slots)


def _goes_in(width: float, slot: Slot, body: Body) -> bool:
    return -0.1 <= slot.length - width <= body.play


def _takes(width: float, body: Body) -> bool:
    return -0.15 <= width - body.thickness <= AS_LONG


def _framed(
    local: tuple[Vector, Vector, Vector],
    world: tuple[Vector, Vector, Vector],
    at: Vector,
    to: Vector,
) -> Rigid:
    """Return the placement that turns one set of axes into another and takes a point to a point."""

    def image(along: Vector) -> Vector:
        a, b, c = (dot(along, each) for each in local)
        parts = [scaled(each, by) for each, by in zip(world, (a, b, c), strict=True)]
        return added(added(parts[0], parts[1]), parts[2])

    axes = [image(each) for each in ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))]
    turned = Rigid((0.0, 0.0, 0.0), axes[0], axes[1], axes[2])
    return Rigid(between(turned.vector(at), to), axes[0], axes[1], axes[2])


def _flat(vector: Point) -> Vector:
    return (vector[0], vector[1], 0.0)


_UP: Vector = (0.0, 0.0, 1.0)


def _tab_in_slot(
    body: Body, tab: Tab, other: Body, slot: Slot, there: Rigid, way: float
) -> Iterator[Rigid]:
    """Yield the two ways for a tab to go into a slot of a piece that has its place."""
    out, along = _flat(tab.out), _flat(tab.along)
    centre = there.point(other.mid(slot.at))
    run, face = there.vector(_flat(slot.along)), there.z
    for side in (1.0, -1.0) if slot.depth is None else (-1.0,):
        o, a = scaled(face, side), scaled(run, way)
        root = added(centre, scaled(o, -other.thickness / 2))
        yield _framed((along, out, _UP), (a, o, cross(a, o)), body.mid(tab.at), root)


def _slot_on_tab(
    body: Body, slot: Slot, other: Body, tab: Tab, there: Rigid, way: float
) -> Iterator[Rigid]:
    """Yield the two ways for a slot to come over a tab of a piece that has its place."""
    run, face = _flat(slot.along), _UP
    out, along = there.vector(_flat(tab.out)), there.vector(_flat(tab.along))
    root = there.point(other.mid(tab.at))
    centre = added(root, scaled(out, body.thickness / 2))
    for side in (1.0, -1.0) if slot.depth is None else (-1.0,):
        z, x = scaled(out, side), scaled(along, way)
        local = (run, cross(face, run), face)
        yield _framed(local, (x, cross(z, x), z), body.mid(slot.at), centre)


def _crossing(body: Body, mine: Notch, other: Body, notch: Notch, there: Rigid) -> Iterator[Rigid]:
    """Yield the two ways for two notches to cross, end to end."""
    out, theirs = _flat(mine.out), there.vector(_flat(notch.out))
    across = there.vector((notch.out[1], 0.0 - notch.out[0], 0.0))
    end = there.point(other.mid(notch.at))
    for way in (1.0, -1.0):
        z, o = scaled(across, way), scaled(theirs, -1.0)
        local = (cross(out, _UP), out, _UP)
        yield _framed(local, (cross(o, z), o, z), body.mid(mine.at), end)


def _match(row: FingerRow, comb: FingerRow) -> bool:
    return row.count == comb.count and abs(row.pitch - comb.pitch) <= AS_LONG / row.count


def _interlock(row: FingerRow, comb: FingerRow, way: float) -> bool:
    """Tell whether fingers of one row come where the gaps of the other are, run so or against."""
    theirs = comb.pattern if way > 0 else comb.pattern[::-1]
    return all(one != other for one, other in zip(row.pattern, theirs, strict=True))


def _corner(
    body: Body, row: FingerRow, other: Body, comb: FingerRow, there: Rigid
) -> Iterator[Rigid]:
    """Yield the ways for two rows of fingers to make a corner, flush outside."""
    out, along = _flat(row.out), _flat(row.along)
    theirs, run, face = there.vector(_flat(comb.out)), there.vector(_flat(comb.along)), there.z
    tips = there.point(other.mid(comb.middle))
    for side in (1.0, -1.0):
        for way in (1.0, -1.0):
            if _interlock(row, comb, way):
                o, a = scaled(face, side), scaled(run, way)
                to = added(
                    added(tips, scaled(o, other.thickness / 2)), scaled(theirs, -body.thickness / 2)
                )
                yield _framed((along, out, _UP), (a, o, cross(a, o)), body.mid(row.middle), to)


def meets_of(
    mine: int,
    body: Body,
    pose: Rigid,
    poses: Mapping[int, Rigid],
    bodies: Mapping[int, Body],
) -> Iterator[Meet]:
    """Yield what of a piece meets what of those that have their places."""
    away = pose.inverse
    for number, there in poses.items():
        other = bodies[number]
        onto = there.inverse.after(pose)
        for i, j in _tabs_met(body, other, onto):
            yield Meet(TAB, mine, i, number, j)
        if other.part.tabs and body.part.slots:
            for i, j in _tabs_met(other, body, away.after(there)):
                yield Meet(TAB, number, i, mine, j)
        for i, j in _notches_met(body, other, onto):
            yield _met(NOTCH, (mine, i), (number, j))
        for i, j in _fingers_met(body, other, onto):
            yield _met(FINGERS, (mine, i), (number, j))


def _tabs_met(body: Body, other: Body, onto: Rigid) -> Iterator[tuple[int, int]]:
    """Yield which tabs of a body meet which slots of the other, in whose frame it lies ``onto``."""
    if not (body.part.tabs and other.part.slots) or abs(onto.z[2]) > 0.5:
        return
    for i, tab in enumerate(body.part.tabs):
        out = onto.vector(_flat(tab.out))
        if abs(out[2]) < _SQUARE:
            continue
        x, y, z = onto.point(body.mid(tab.at))
        off = abs(z - (0.0 if out[2] > 0 else other.thickness))
        if off > (_NEAR if tab.stretch else _SHORT):
            continue
        along = onto.vector(_flat(tab.along))
        for j, slot in enumerate(other.part.slots):
            if dist((x, y), slot.at) > _NEAR or (slot.depth is not None and out[2] > 0):
                continue
            if (tab.stretch is None or tab.depth < other.thickness / 2) and slot.depth is None:
                continue
            level = abs(along[0] * slot.along[0] + along[1] * slot.along[1]) >= _SQUARE
            if level and _goes_in(tab.width, slot, other) and _takes(slot.width, body):
                yield i, j


def _notches_met(body: Body, other: Body, onto: Rigid) -> Iterator[tuple[int, int]]:
    if not (body.part.notches and other.part.notches) or abs(onto.z[2]) > 1 - _SQUARE:
        return
    for i, mine in enumerate(body.part.notches):
        out, end = onto.vector(_flat(mine.out)), onto.point(body.mid(mine.at))
        for j, notch in enumerate(other.part.notches):
            away = between(end, other.mid(notch.at))
            if dot(out, _flat(notch.out)) < -_SQUARE and length(away) <= _NEAR:
                yield i, j


def _fingers_met(body: Body, other: Body, onto: Rigid) -> Iterator[tuple[int, int]]:
    if not (body.part.fingers and other.part.fingers):
        return
    for i, row in enumerate(body.part.fingers):
        out, run = onto.vector(_flat(row.out)), onto.vector(_flat(row.along))
        if abs(out[2]) < _SQUARE:
            continue
        tips = onto.point(body.mid(row.middle))
        for j, comb in enumerate(other.part.fingers):
            way = dot(run, _flat(comb.along))
            if not _match(row, comb) or abs(way) < _SQUARE or not _interlock(row, comb, way):
                continue
            goal = added(other.mid(comb.middle), scaled(out, other.thickness / 2))
            goal = added(goal, scaled(_flat(comb.out), -body.thickness / 2))
            if dist(tips, goal) <= 2 * _NEAR:
                yield i, j


def _met(kind: FeatureKind, *ends: tuple[int, int]) -> Meet:
    (one, first), (other, second) = sorted(ends)
    return Meet(kind, one, first, other, second)


def _of_placing(placing: Placing, thickness: float) -> Rigid:
    """Return how a panel lies that is placed so, in its own frame."""
    (cos, sin), (x, y) = unit(placing.degrees), placing.shift
    if placing.over:
        return Rigid((x, y, thickness), (-cos, -sin, 0.0), (-sin, cos, 0.0), (0.0, 0.0, -1.0))
    return Rigid((x, y, 0.0), (cos, sin, 0.0), (-sin, cos, 0.0), (0.0, 0.0, 1.0))
