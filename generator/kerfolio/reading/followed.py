"""A set that follows its mate, written out: the statement that it comes to."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import cast

from kerfolio.model.feature import (
    ByMate,
    Cutting,
    EdgeLine,
    Feature,
    Fingers,
    Groove,
    Hole,
    Notch,
    Pocket,
    Repeat,
    Slot,
    Tabs,
)
from kerfolio.model.feature_kind import (
    FINGERS,
    GROOVE,
    HOLE,
    NOTCH,
    POCKET,
    SLOT,
    TAB,
    FeatureKind,
)
from kerfolio.model.joint_kind import (
    FACE_JOINT,
    FINGER_JOINT,
    NOTCH_JOINT,
    TAB_JOINT,
    JointKind,
)
from kerfolio.model.outline import Rectangle
from kerfolio.model.statement import Amount, Named, Spot
from kerfolio.reading.mate_places import Axis, CannotFollowError, edge_axis, hole_axes
from kerfolio.reading.sums import half, negative, plus, times


@dataclass(frozen=True, slots=True, kw_only=True)
class Mate:
    """The feature that a set follows: ``number`` of its copies, 0 for all; what it is cut from."""

    feature: Feature
    number: int
    sheet: Named


Written = tuple[Cutting, Repeat | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Following:
    """What a kind that follows comes from: the kind of its mate, the joint they make, how.

    ``mate_first``: its mate is the first end of that joint.
    """

    mate: FeatureKind
    joint: JointKind
    mate_first: bool
    write: Callable[[ByMate, Mate], Written]


def _slots(stated: ByMate, mate: Mate) -> Written:
    axis, way = _tab_axis(mate), _Way.of(stated.angle)
    spots, repeat = _spots(stated, (axis, way))
    cutting = Slot(at=spots, length=_tab(mate).width, angle=way.axis, takes=mate.sheet)
    return cutting, repeat


def _housings(stated: ByMate, mate: Mate) -> Written:
    axis, way = _tab_axis(mate), _Way.of(stated.angle)
    spots, repeat = _spots(stated, (axis, way))
    assert stated.depth is not None, "its form requires it"
    length, across = _tab(mate).width, Amount(f"thickness({mate.sheet})", mate.sheet.place)
    cutting = Pocket(
        at=spots,
        outline=Rectangle(width=length, height=across),
        depth=stated.depth,
        angle=way.axis,
        takes=mate.sheet,
        length=length,
    )
    return cutting, repeat


def _grooves(stated: ByMate, mate: Mate) -> Written:
    axis, way = _tab_axis(mate), _Way.of(stated.angle)
    if len(axis.places) > 1 or axis.count is not None:
        message = f"`{mate.feature.name}` are several, and a groove takes one"
        raise CannotFollowError(message, "Name one of them, such as `.1`, or write `slots`.")
    (spot,), _ = _spots(stated, (axis, way))
    assert stated.depth is not None, "its form requires it"
    reach = half(_tab(mate).width.text)
    ends = [way.moved(spot, each) for each in (negative(reach), reach)]
    return Groove(start=ends[0], end=ends[1], depth=stated.depth, takes=mate.sheet), None


def _notches(stated: ByMate, mate: Mate) -> Written:
    other = cast(Notch, mate.feature.cutting)
    axis = _chosen(edge_axis(mate.feature), mate)
    assert stated.edge is not None, "its form requires it"
    base = cast(Amount, stated.at or stated.zero)
    sign = "-1" if stated.backward else "1"
    places = tuple(
        Amount(plus(base.text, times(sign, each)), base.place)
        for each in axis.offsets(from_zero=stated.zero is not None)
    )
    cutting = Notch(
        edge=stated.edge, at=places, depth=stated.depth or other.depth, takes=mate.sheet
    )
    return cutting, _repeat(axis, _along(stated.edge, times(sign, axis.step), axis))


def _along(edge: EdgeLine, step: str, axis: Axis) -> Spot:
    """Return a step along an edge. Raises CannotFollowError for copies along a slanted one."""
    if axis.count is not None and not edge.side:
        message = "copies cannot follow along an edge from one point to another"
        raise CannotFollowError(message, "Write the `count` of its mate's `repeat` as a number.")
    x, y = ("0", step) if edge.side in ("left", "right") else (step, "0")
    return Spot(Amount(x), Amount(y))


def _fingers(stated: ByMate, mate: Mate) -> Written:
    other = cast(Fingers, mate.feature.cutting)
    assert stated.edge is not None, "its form requires it"
    begins = other.first
    if not stated.backward or _is_odd(other.count):
        begins = "finger" if other.first == "gap" else "gap"
    return Fingers(edge=stated.edge, count=other.count, takes=mate.sheet, first=begins), None


def _is_odd(count: Amount) -> bool:
    """Tell whether a row ends as it begins. Raises CannotFollowError where that is not known."""
    if not count.text.isdigit():
        message = f"whether `{count.text}` fingers and gaps are even is known only with its value"
        raise CannotFollowError(message, "Write the `count` as a number, or leave `backward` out.")
    return int(count.text) % 2 == 1


def _holes(stated: ByMate, mate: Mate) -> Written:
    other, way = cast(Hole, mate.feature.cutting), _Way.of(stated.angle)
    x, y = (_chosen(each, mate) for each in hole_axes(mate.feature))
    if stated.mirrored:
        x = _turned_over(x)
    spots, repeat = _spots(stated, (x, way), (y, way.across))
    bore = stated.bore or Hole(at=())
    if bore.diameter is None and bore.for_ is None and bore.pilot is None:
        bore = replace(bore, diameter=other.diameter, for_=other.for_, pilot=other.pilot)
    return replace(bore, at=spots, depth=stated.depth), repeat


def _turned_over(axis: Axis) -> Axis:
    return replace(
        axis,
        places=tuple(map(negative, axis.places)),
        middle=negative(axis.middle),
        step=negative(axis.step),
    )


FOLLOWING: dict[FeatureKind, Following] = {
    SLOT: Following(mate=TAB, joint=TAB_JOINT, mate_first=True, write=_slots),
    POCKET: Following(mate=TAB, joint=TAB_JOINT, mate_first=True, write=_housings),
    GROOVE: Following(mate=TAB, joint=TAB_JOINT, mate_first=True, write=_grooves),
    NOTCH: Following(mate=NOTCH, joint=NOTCH_JOINT, mate_first=False, write=_notches),
    FINGERS: Following(mate=FINGERS, joint=FINGER_JOINT, mate_first=False, write=_fingers),
    HOLE: Following(mate=HOLE, joint=FACE_JOINT, mate_first=True, write=_holes),
}
"""What each kind follows that may be stated by its mate."""


def followed(feature: Feature, mate: Mate) -> Feature:
    """Return a feature that follows its mate as it would be written out.

    Raises CannotFollowError.
    """
    stated = cast(ByMate, feature.cutting)
    cutting, repeat = FOLLOWING[stated.kind].write(stated, mate)
    return replace(feature, cutting=cutting, repeat=repeat)


def _tab(mate: Mate) -> Tabs:
    return cast(Tabs, mate.feature.cutting)


def _tab_axis(mate: Mate) -> Axis:
    return _chosen(edge_axis(mate.feature), mate)


def _chosen(axis: Axis, mate: Mate) -> Axis:
    """Return the axis of the copies that are followed. Raises CannotFollowError."""
    if not mate.number:
        return axis
    name = f"`{mate.feature.name}`"
    if axis.count is not None:
        message = f"how many {name} are is known only once sizes have their values"
        raise CannotFollowError(message, "Write the `count` of its `repeat` as a number.")
    if mate.number > len(axis.places):
        message = f"{name} are {len(axis.places)}, so there is no `.{mate.number}`"
        raise CannotFollowError(message, f"Name one from `.1` to `.{len(axis.places)}`.")
    return axis.only(mate.number)


@dataclass(frozen=True, slots=True)
class _Way:
    """A direction in a part's face, as expressions; ``axis`` is the angle of what lies along it."""

    x: str
    y: str
    axis: Amount | None

    @staticmethod
    def of(angle: Amount | None) -> _Way:
        """Return the way at an angle: exact at quarter turns; a slot is alike both ways."""
        if angle is None:
            return _Way("1", "0", None)
        text = angle.text.removeprefix("-").strip()
        if text.isdigit() and int(text) % 90 == 0:
            quarter = int(text) // 90 * (-1 if angle.text.startswith("-") else 1) % 4
            x, y = (("1", "0"), ("0", "1"), ("-1", "0"), ("0", "-1"))[quarter]
            return _Way(x, y, replace(angle, text=str(quarter % 2 * 90)))
        return _Way(f"cos({angle.text})", f"sin({angle.text})", angle)

    @property
    def across(self) -> _Way:
        """The way a quarter turn on."""
        return _Way(negative(self.y), self.x, self.axis)

    def moved(self, spot: Spot, by: str) -> Spot:
        """Return a point moved along the way."""
        return replace(
            spot,
            x=replace(spot.x, text=plus(spot.x.text, times(by, self.x))),
            y=replace(spot.y, text=plus(spot.y.text, times(by, self.y))),
        )


def _spots(stated: ByMate, *lines: tuple[Axis, _Way]) -> tuple[tuple[Spot, ...], Repeat | None]:
    """Return where a set has its places in the face, each of its axes along a way."""
    base = cast(Spot, stated.at or stated.zero)
    spots: Sequence[Spot] = [base] * len(lines[0][0].places)
    step = Spot(Amount("0", base.place), Amount("0", base.place), base.place)
    for axis, way in lines:
        offsets = axis.offsets(from_zero=stated.zero is not None)
        spots = [way.moved(spot, by) for spot, by in zip(spots, offsets, strict=True)]
        step = way.moved(step, axis.step)
    return tuple(spots), _repeat(lines[0][0], step)


def _repeat(axis: Axis, step: Spot) -> Repeat | None:
    return None if axis.count is None else Repeat(count=axis.count, step=step)
