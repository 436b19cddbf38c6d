"""Checks of a plan put together for fastenings and joints that nobody wrote down.

What is told comes with the line to write: its ends are those that meet where the pieces stand.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.assembly.frames import nominal_bottom
from kerfolio.basis.finding import Beside, Finding, Meeting, Severity, warning
from kerfolio.basis.said import named, said, stated_name
from kerfolio.geometry.rigid import Vector, added, between, dot, length, scaled
from kerfolio.model.fastening import NUTS
from kerfolio.model.feature_kind import NOTCH
from kerfolio.model.joint_kind import NOTCH_JOINT
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, together
from kerfolio.settling.fastened import Seat, SettledFastening, empty_seats, fastenings_of
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_MEETS = 1.0
"""What lies no farther apart, mm, was drawn to meet (our own choice)."""

_STRAIGHT = 0.999
"""The cosine between two ways that run along one line."""


@together(
    "fastening-forgotten",
    reason="A hole for hardware that its like is fastened through stays empty.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def fastenings_complete(build: Build) -> Iterator[Finding]:
    """Look for holes for hardware that nothing goes through, while something does through others.

    Others are those for the same hardware. What a list or a step names may be meant for any hole.
    """
    settled, plan = build.settled, build.settled.plan
    used = [*plan.hardware, *(use for step in plan.steps for use in step.hardware)]
    loose = {use.item.name for use in used}
    posed = {each.label: each for each in build.drawn.assembled.pieces}
    empty = sorted(
        (
            each
            for each in empty_seats(settled)
            if each.piece in posed and each.for_item not in loose
        ),
        key=lambda each: _comes_late(each, settled),
    )
    told: set[str] = set()
    for seat in empty:
        twin = _twin(seat, fastenings_of(settled)) if seat.name not in told else None
        if twin is not None:
            line = _in_line(seat, empty, posed)
            ends = {each.piece for each in line}
            nut = twin.nut.name if twin.nut else ""
            told |= {
                each.name
                for each in (*line, *empty)
                if each in line or (each.piece in ends and each.for_item == nut)
            }
            yield _forgotten(settled, seat, twin, line)


def _comes_late(seat: Seat, settled: SettledPlan) -> bool:
    """Tell whether another hole tells more of what is forgotten: that of a head."""
    item = settled.stock.item(seat.for_item)
    return seat.is_pilot or (item is not None and item.kind in NUTS)


def _forgotten(
    settled: SettledPlan, seat: Seat, twin: SettledFastening, line: Sequence[Seat]
) -> Finding:
    assert seat.part is not None
    assert seat.feature is not None
    like = next(each for each in twin.taken if each.for_item == seat.for_item)
    message = said("no fastening goes through {}, as through {}", seat.called, like.called)
    joins = [seat.name, *(each.name for each in line)]
    joins += ["..."] * (len(joins) < min(2, len(twin.stated.joins)))
    advice = f"Write one like it under `fastenings`: `joins: [{', '.join(joins)}]`."
    what = about(settled, seat.part, seat.feature)
    return warning("fastening-forgotten", message, seat.feature.place, advice, **what)


def _twin(seat: Seat, fastenings: Sequence[SettledFastening]) -> SettledFastening | None:
    """Return a fastening through a hole for the same hardware; of the same set, if there is one."""
    if not seat.for_item:
        return None
    found = [
        (stated_name(one.name.removeprefix(one.piece)), each)
        for each in fastenings
        for one in each.taken
        if one.for_item == seat.for_item and one.is_pilot is seat.is_pilot
    ]
    own = stated_name(seat.name.removeprefix(seat.piece))
    return next((each for name, each in found if name == own), found[0][1] if found else None)


def _in_line(seat: Seat, empty: Sequence[Seat], posed: dict[str, PosedPiece]) -> list[Seat]:
    """Return the empty seats in other pieces that its axis goes through, nearest first."""
    at, way = _axis(seat, posed)
    found = []
    for each in empty:
        if each.piece != seat.piece and each.piece in posed:
            mouth, inward = _axis(each, posed)
            off = between(at, mouth)
            aside = added(off, scaled(way, -dot(off, way)))
            if length(aside) <= _MEETS and abs(dot(inward, way)) >= _STRAIGHT:
                found.append((length(off), each.name, each))
    return [each for _, _, each in sorted(found, key=lambda one: one[:2])]


def _axis(seat: Seat, posed: dict[str, PosedPiece]) -> tuple[Vector, Vector]:
    pose = posed[seat.piece].pose
    return pose.point(seat.mouth), pose.vector(seat.inward)


@together(
    "crossing-forgotten",
    reason="Where two notches lie in one another and no joint says so, nothing checks their fit.",
    source="geometry: the bottoms of two notches that cross meet",
    severity=Severity.WARNING,
)
def crossings_joined(build: Build) -> Iterator[Finding]:
    """Look for notches that lie in one another as the pieces stand, without a joint of theirs.

    Of pieces whose joints do not agree nothing is asked.
    """
    settled = build.settled
    off = {piece for gap in build.drawn.gaps for piece in (gap.pairing.a, gap.pairing.b)}
    joined = {end.name for joint in settled.plan.joints for end in (joint.a, joint.b)}
    posed = [each for each in build.drawn.assembled.pieces if each.label not in off]
    alone = [each for piece in posed for each in _alone(settled, piece, joined)]
    for one, other in combinations(alone, 2):
        if _cross(one, other):
            first, second = (one, other) if one.opening[2] < other.opening[2] else (other, one)
            message = said(
                "{} lies in {}, and no joint says so", named(first.name), named(second.name)
            )
            line = f"{{{NOTCH_JOINT.name}: {first.name}, {NOTCH_JOINT.other}: {second.name}}}"
            advice = f"Add to `joints`: `{line}`."
            meeting = Meeting(
                pieces=(first.piece,), others=(second.piece,), variant=settled.variant.label
            )
            what: Beside = {**about(settled, first.part, first.feature), "meeting": meeting}
            yield warning("crossing-forgotten", message, first.feature.place, advice, **what)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Notch:
    """A notch in its place: the middle of its bottom, and the way it opens, in the world, mm."""

    piece: str
    part: SettledPart
    feature: SettledFeature
    bottom: Vector
    opening: Vector
    face: Vector

    @property
    def name(self) -> str:
        return f"{self.piece}.{self.feature.name}"


def _alone(settled: SettledPlan, piece: PosedPiece, joined: Container[str]) -> Iterator[_Notch]:
    part = next(each for each in settled.parts if each.name == piece.part)
    for feature in part.features:
        name = f"{piece.label}.{feature.name}"
        if feature.kind is NOTCH and name not in joined and stated_name(name) not in joined:
            yield _Notch(
                piece=piece.label,
                part=part,
                feature=feature,
                bottom=piece.pose.point((*nominal_bottom(feature), part.thickness / 2)),
                opening=piece.pose.vector((*feature.direction, 0.0)),
                face=piece.pose.z,
            )


def _cross(one: _Notch, other: _Notch) -> bool:
    meets = length(between(one.bottom, other.bottom)) <= _MEETS
    against = dot(one.opening, other.opening) <= -_STRAIGHT
    return meets and against and abs(dot(one.face, other.face)) < _STRAIGHT
