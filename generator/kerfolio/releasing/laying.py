"""Ways to lay an older piece among newer ones, and whether its joints meet there.

Both ends of a joint meet where their frames coincide. So all that counts is how far, in the frame
of the newer joint, the older feature lies from the newer one once its piece is laid down: an older
piece meets a newer one where it is off by no more than play, and two older ones meet where they are
off alike. No place in the whole need be known.

A piece is laid down on the newer part just as it is drawn, or so that one of its features comes to
lie where the newer one does, turned over if nothing is cut into one face alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from kerfolio.geometry.rigid import HERE, Rigid, between, cross, dot, scaled
from kerfolio.geometry.same_shape import Placing
from kerfolio.geometry.transform import turned_point
from kerfolio.model.joint_kind import FINGER_JOINT, NOTCH_JOINT, TAB_JOINT
from kerfolio.model.release_record import Frame, RecordedJoint, RecordedSeat, ReleaseRecord
from kerfolio.releasing.matching import Both, Matched, part_of
from kerfolio.releasing.meeting import EXACT, TURN, meet, same_row

MOST_WAYS = 24
"""So many ways to lay a piece down are looked at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A way to lay a piece down: where its part lies on the newer one, at each point."""

    places: tuple[Rigid, ...]

    @property
    def over(self) -> bool:
        """Whether it is turned over."""
        return self.places[0].z[2] < 0


class Laying:
    """The pieces of a release whose shape changed, with the ways to lay the older ones down."""

    def __init__(
        self, old: ReleaseRecord, new: ReleaseRecord, known: Matched, points: Sequence[Both]
    ) -> None:
        self._old, self._new, self._known, self._points = old, new, known, points
        self._ways: dict[str, tuple[Way, ...]] = {}

    @cached_property
    def changed(self) -> tuple[str, ...]:
        """The pieces that were there and are of another shape now."""
        return tuple(
            label
            for part in self._new.parts
            for label in part.pieces
            if label in self._known.pieces and not self._is_as_it_was(part.name)
        )

    def _is_as_it_was(self, part: str) -> bool:
        """Tell whether a part has its shape, drawn elsewhere or turned in its plane at most."""
        placings = self._known.placings.get(part)
        return part in self._known.same or (placings is not None and not placings[0].over)

    def ways(self, piece: str) -> tuple[Way, ...]:
        """Return the ways to lay an older piece down, the usual one first."""
        if piece not in self._ways:
            self._ways[piece] = tuple(self._found(piece))
        return self._ways[piece]

    def joints_of(self, piece: str) -> tuple[int, ...]:
        """Return the joints of a piece, by their places in the newer release."""
        joints = enumerate(self._new.joints)
        return tuple(i for i, each in joints if piece in (each.a.piece, each.b.piece))

    def pieces_of(self, joint: int) -> tuple[str, str]:
        """Return the two pieces of a joint of the newer release."""
        stated = self._new.joints[joint]
        return stated.a.piece, stated.b.piece

    def pieces_gone(self, joint: int) -> tuple[str, str]:
        """Return what the two pieces of an older joint are now; empty for those that are gone."""
        stated = self._old.joints[joint]
        return self._now(stated.a.piece), self._now(stated.b.piece)

    def meets(self, joint: int, laid: Mapping[str, Way | None]) -> bool:
        """Tell whether a joint meets at all points; a piece that is laid in no way is a newer one.

        A piece that is not in ``laid`` has the shape that it had.
        """
        stated = self._new.joints[joint]
        a, b = laid.get(stated.a.piece), laid.get(stated.b.piece)
        if a is None and b is None:
            return True
        was = self._known.joints.get(joint)
        if was is None:
            return False
        for index, (before, now) in enumerate(self._points):
            then, there = before.pairs[was], now.pairs[joint]
            if len(then) != len(there) and (a is None or b is None):
                return False
            for pair in range(min(len(then), len(there))):
                if not self._pair_meets(joint, index, pair, (a, b)):
                    return False
        return True

    def lost(self, joint: int, laid: Mapping[str, Way | None]) -> bool:
        """Tell whether what an older piece had for a joint that is gone is in a newer one's way."""
        stated = self._old.joints[joint]
        a, b = self._now(stated.a.piece), self._now(stated.b.piece)
        if not a or not b:
            return False
        old = laid.get(a) is not None, laid.get(b) is not None
        if stated.kind == TAB_JOINT.name:
            return old == (True, False)
        return stated.kind == FINGER_JOINT.name and old[0] != old[1]

    def _off(self, joint: int, index: int, pair: int, end: int, way: Way | None) -> Rigid:
        """Return where the older feature of an end lies in the frame of the newer one, at a point.

        It lies in that very frame where a newer piece takes its place.
        """
        was = self._known.joints.get(joint)
        if way is None or was is None:
            return HERE
        before, now = self._points[index]
        then, there = before.pairs[was][pair][end], now.pairs[joint][pair][end]
        stated = self._old.joints[was]
        back = rigid_of(there.frame).inverse.after(way.places[index])
        thick = self._thickness(stated, end, index)
        likely = (back.after(each) for each in _alike(then, stated, end, thick))
        return min(likely, key=_oddness)

    def _now(self, piece: str) -> str:
        return next((now for now, was in self._known.pieces.items() if was == piece), "")

    def _thickness(self, stated: RecordedJoint, end: int, index: int) -> float:
        label = (stated.a, stated.b)[end].piece
        sheet = part_of(self._old, label).sheet
        return self._points[index][0].thickness[sheet]

    def _pair_meets(
        self, joint: int, index: int, pair: int, laid: tuple[Way | None, Way | None]
    ) -> bool:
        before, now = self._points[index]
        then, there = before.pairs[self._known.joints[joint]][pair], now.pairs[joint][pair]
        first, second = (self._off(joint, index, pair, end, laid[end]) for end in (0, 1))
        mixed = tuple(then[end] if laid[end] is not None else there[end] for end in (0, 1))
        stated = self._new.joints[joint]
        if stated.kind == FINGER_JOINT.name and None in laid:
            end, off = (0, first) if laid[0] is not None else (1, second)
            if not same_row(then[end], there[end], off.origin[2]):
                return False
        return meet(stated, (first, second), mixed, (then, there))

    def following(self, piece: str, joint: int, mate: Way) -> Iterator[Way]:
        """Yield the ways to lay a piece down so that a joint meets its mate, which is laid so."""
        was = self._known.joints.get(joint)
        if was is None:
            return
        end = 0 if self._new.joints[joint].a.piece == piece else 1
        for which in range(self._count_alike(joint, was, end)):
            place = self._laid_on(joint, was, end, 0, which, mate)
            way = self._flat(piece, place)
            if way is not None:
                yield way

    def _found(self, piece: str) -> Iterator[Way]:
        """Yield the ways to lay a piece down by itself, each once."""
        seen: list[Way] = []
        for make in self._makers(piece, part_of(self._new, piece).name):
            way = self._flat(piece, make)
            if way is not None and not any(is_same_way(each, way) for each in seen):
                seen.append(way)
                yield way
            if len(seen) == MOST_WAYS:
                return

    def _flat(self, piece: str, make: Callable[[int], Rigid]) -> Way | None:
        """Return a way in which a piece lies in its plane, on the face that it may lie on."""
        was = part_of(self._old, self._known.pieces[piece])
        try:
            places = tuple(make(index) for index in range(len(self._points)))
        except IndexError:  # a set that has become smaller
            return None
        way = Way(places=places)
        flat = all(self._lies_flat(place, was.sheet, i) for i, place in enumerate(places))
        return way if flat and not (way.over and was.one_face) else None

    def _makers(self, piece: str, part: str) -> Iterator[Callable[[int], Rigid]]:
        yield lambda _: HERE
        placings = self._known.placings.get(part)
        if placings is not None:
            sheet = part_of(self._old, self._known.pieces[piece]).sheet
            yield lambda index: _lifted(placings[index], self._points[index][0].thickness[sheet])
        for joint in self.joints_of(piece):
            was = self._known.joints.get(joint)
            if was is None:
                continue
            end = 0 if self._new.joints[joint].a.piece == piece else 1
            pairs = self._points[0][1].pairs[joint]
            first = self._points[0][0].pairs[was]
            for pair in range(min(len(pairs), len(first))):
                for which in range(self._count_alike(joint, was, end)):
                    yield self._laid_on(joint, was, end, pair, which)

    def _count_alike(self, joint: int, was: int, end: int) -> int:
        """Return how many frames serve for a feature of an end; 0 where it has none."""
        before, now = self._points[0]
        if not before.pairs[was] or not now.pairs[joint]:
            return 0
        return len(list(_alike(before.pairs[was][0][end], self._old.joints[was], end, 1.0)))

    def _laid_on(
        self, joint: int, was: int, end: int, pair: int, which: int, mate: Way | None = None
    ) -> Callable[[int], Rigid]:
        """Return what lays a piece so that its feature lies on the newer one, at each point.

        With a ``mate`` it lies where that older piece has the other feature.
        """
        stated = self._old.joints[was]

        def place(index: int) -> Rigid:
            before, now = self._points[index]
            seat = before.pairs[was][pair][end]
            thick = self._thickness(stated, end, index)
            alike = list(_alike(seat, stated, end, thick))[which]
            there = rigid_of(now.pairs[joint][pair][end].frame)
            off = self._off(joint, index, pair, 1 - end, mate)
            return there.after(off).after(alike.inverse)

        return place

    def _lies_flat(self, place: Rigid, sheet: str, index: int) -> bool:
        """Tell whether a piece so laid lies in its plane, on either face."""
        thick = self._points[index][0].thickness[sheet]
        level = 0.0 if place.z[2] > 0 else thick
        return abs(abs(place.z[2]) - 1) < TURN and abs(place.origin[2] - level) < EXACT


def rigid_of(frame: Frame) -> Rigid:
    """Return a recorded frame as a placement."""
    origin, x, z = frame
    return Rigid(origin, x, cross(z, x), z)


def _lifted(placing: Placing, thickness: float) -> Rigid:
    """Return how a sheet so thick is placed: mirrored in its plane, it is turned over."""
    sign = -1.0 if placing.over else 1.0
    xx, xy = turned_point((sign, 0.0), placing.degrees)
    yx, yy = turned_point((0.0, 1.0), placing.degrees)
    level = thickness if placing.over else 0.0
    return Rigid((*placing.shift, level), (xx, xy, 0.0), (yx, yy, 0.0), (0.0, 0.0, sign))


def _alike(
    seat: RecordedSeat, stated: RecordedJoint, end: int, thickness: float
) -> Iterator[Rigid]:
    """Yield the frames that a feature has as well: turned half round, entered from behind."""
    frame, kind = rigid_of(seat.frame), stated.kind
    yield frame
    if kind not in (TAB_JOINT.name, NOTCH_JOINT.name):
        return
    half = replace(frame, x=scaled(frame.x, -1.0), y=scaled(frame.y, -1.0))
    yield half
    if kind == TAB_JOINT.name and end == 1 and stated.b.through:
        behind = Rigid(
            frame.moved(scaled(frame.z, thickness)).origin,
            frame.x,
            scaled(frame.y, -1.0),
            scaled(frame.z, -1.0),
        )
        yield behind
        yield replace(behind, x=scaled(behind.x, -1.0), y=scaled(behind.y, -1.0))


def _oddness(place: Rigid) -> tuple[float, float]:
    """Return how much a frame is turned against another, then how far it lies from it."""
    turned = 2 - place.x[0] - place.z[2]
    return (0.0 if turned < TURN else turned), dot(place.origin, place.origin)


def is_same_way(one: Way, other: Way) -> bool:
    """Tell whether two ways lay a piece down alike."""
    return _same(one.places[0], other.places[0])


def _same(one: Rigid, other: Rigid) -> bool:
    apart = between(one.origin, other.origin)
    near = dot(apart, apart) < (EXACT / 10) ** 2
    return near and dot(one.x, other.x) > 1 - 1e-9 and dot(one.z, other.z) > 1 - 1e-9
