"""Joints as links between pieces: the ways each can go, and why some cannot go at all."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import acos, degrees

from kerfolio.assembly.ends import End, end_of, pieces_of
from kerfolio.assembly.joint_kinds import ways_of
from kerfolio.assembly.ways import Meeting, Way, spread
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import number
from kerfolio.basis.said import said
from kerfolio.geometry.rigid import Rigid, dot
from kerfolio.model.joint_kind import FINGER_JOINT, PIECE, SIDE, EndKind, JointKind
from kerfolio.settling.settled import SettledJoint, SettledPlan

_SURE = 1.0
"""A way is ruled out where its features match worse, mm, by this than those of the best one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """A joint between pieces ``a`` and ``b`` with the ways it can go, the usual ones first."""

    joint: SettledJoint
    a: End
    b: End
    ways: tuple[Way, ...]

    @property
    def kind(self) -> JointKind:
        """The kind of the joint."""
        return self.joint.stated.kind

    def names(self, index: int) -> tuple[str, str]:
        """Return what the two features of a pair are called."""
        return self.a.name(index), self.b.name(index)


def links_of(settled: SettledPlan) -> tuple[tuple[Link, ...], tuple[Finding, ...]]:
    """Return a link for each joint that can be understood, and findings for the rest.

    Ends that name nothing, or features of kinds that cannot meet, are left to the rules over what
    the plan states; they give no link and no finding here.
    """
    pieces = pieces_of(settled)
    links: list[Link] = []
    findings: list[Finding] = []
    for joint in settled.joints:
        a, b = end_of(joint.stated.a.name, pieces), end_of(joint.stated.b.name, pieces)
        if a is None or b is None or a.piece == b.piece or not _meet(joint, a, b):
            continue
        faults = tuple(_uncountable(joint, a, b))
        findings += faults
        if faults:
            continue
        link = _linked(joint, a, b)
        if link.ways:
            links.append(link)
        else:
            findings.append(_impossible(joint))
    return tuple(links), tuple(findings)


def _linked(joint: SettledJoint, a: End, b: End) -> Link:
    ways = _likely(ways_of(Meeting(joint=joint, a=a, b=b)))
    return Link(joint=joint, a=a, b=b, ways=ways)


def _meet(joint: SettledJoint, a: End, b: End) -> bool:
    firsts, seconds = joint.stated.kind.ends
    return _kinds(a) <= {*firsts} and _kinds(b) <= {*seconds}


def _kinds(end: End) -> set[EndKind]:
    if end.side:
        return {SIDE}
    return {each.kind for each in end.features} or {PIECE}


def _uncountable(joint: SettledJoint, a: End, b: End) -> Iterator[Finding]:
    """Yield a finding where the two ends are not sets of the same count."""
    stated, counts = joint.stated, (len(a.features), len(b.features))
    if not stated.kind.paired:
        return
    if stated.kind.flat and counts != (0, 0) and 0 in counts:
        message = "a face joint is between two sets of holes, or two pieces with `at`"
        advice = "Name holes at both ends or at none."
        yield error("joint-count", message, stated.place, advice, subject=stated.a.name)
    elif stated.kind.flat and counts == (0, 0) and joint.at is None:
        message = f"nobody knows where `{stated.a}` lies on `{stated.b}`"
        advice = "Add `at: [x, y]`: where its 0,0 lies; or name holes that come together."
        yield error("joint-count", message, stated.place, advice, subject=stated.a.name)
    elif counts[0] != counts[1]:
        ours, theirs = number("count", counts[0]), number("other-count", counts[1])
        words = said("`{}` are {}, `{}` are {}", str(stated.a), ours, str(stated.b), theirs)
        advice = "Both ends need as many: each meets the one of its number."
        yield error("joint-count", words, stated.place, advice, subject=stated.a.name)
    elif stated.kind is FINGER_JOINT and counts != (1, 1):
        rows, advice = number("rows", counts[0]), "Name one row at each end."
        words = said("`{}` are {} rows of fingers", str(stated.a), rows)
        yield error("joint-count", words, stated.place, advice, subject=stated.a.name)


def _likely(ways: tuple[Way, ...]) -> tuple[Way, ...]:
    """Drop the ways that two or more pairs of features rule out."""
    cost = [spread(way) + _twist(way) for way in ways]
    return tuple(w for w, c in zip(ways, cost, strict=True) if c <= min(cost) + _SURE)


def _twist(way: Way) -> float:
    """Return by how much the pairs ask for different turns, degrees."""
    places = [first.after(second.inverse) for first, second in way.pairs]
    return max((_angle(places[0], each) for each in places[1:]), default=0.0)


def _angle(one: Rigid, other: Rigid) -> float:
    trace = dot(one.x, other.x) + dot(one.y, other.y) + dot(one.z, other.z)
    return degrees(acos(max(-1.0, min(1.0, (trace - 1) / 2))))


def _impossible(joint: SettledJoint) -> Finding:
    stated = joint.stated
    message = f"`{stated.a}` cannot meet `{stated.b}` that way round"
    advice = "Take `show`, `side` or `looking` away, or state another one."
    if stated.kind is FINGER_JOINT:
        advice = "One row begins with a finger where the other begins with a gap (`first:`)."
    return error("joint-way", message, stated.place, advice, subject=stated.a.name)


def root_of(links: Sequence[Link]) -> str:
    """Return the piece that most joints hold; the first of them in the order of joints."""
    counts = Counter(piece for link in links for piece in (link.a.piece, link.b.piece))
    return max(counts, key=lambda piece: counts[piece])
