"""Checks of gaps between pieces that fingers and heads go into, for plans that are for children.

Only pieces that stand square to one another are looked at, by their boxes: a gap between slanted or
hollowed pieces is not found. Nothing here certifies anything.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.assembly.extent import Box, box_around
from kerfolio.basis.finding import Finding, Meeting, Severity, warning
from kerfolio.basis.measures import length
from kerfolio.basis.said import named, said
from kerfolio.proving.children import HEADS, OF_FINGERS, OF_HEADS, TRAPS
from kerfolio.proving.rule import together

_SQUARE = 0.999
_REACH = 300.0
"""A child's body goes through where so much, mm, is free on either side (our own choice)."""

_SIDE = 5.0
"""What two pieces must stand opposite one another along, mm, to hold a finger between them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Gap:
    """What is between two pieces: how wide along one axis, and the box of it, mm."""

    a: str
    b: str
    axis: int
    wide: float
    box: Box

    @property
    def sides(self) -> tuple[tuple[float, int], ...]:
        """How long it is along the other two axes, the shorter first."""
        low, high = self.box
        return tuple(sorted((high[i] - low[i], i) for i in range(3) if i != self.axis))


@together(
    "finger-gap",
    reason="Two pieces a child's finger apart hold it.",
    source=OF_FINGERS,
    severity=Severity.WARNING,
)
def finger_gaps(build: Build) -> Iterator[Finding]:
    """Look for pieces that stand a finger's width apart with nothing between them."""
    yield from _told(build, "finger-gap", TRAPS, "a finger's width", through=False)


@together(
    "head-gap",
    reason="A gap that lets a child's body through and not the head can strangle.",
    source=OF_HEADS,
    severity=Severity.WARNING,
)
def head_gaps(build: Build) -> Iterator[Finding]:
    """Look for pieces that stand so far apart that a body goes through and a head does not.

    What a third piece closes, behind or before, is not passed.
    """
    yield from _told(build, "head-gap", HEADS, "it holds a head", through=True)


def _told(
    build: Build, rule: str, bounds: tuple[float, float], what: str, *, through: bool
) -> Iterator[Finding]:
    plan, assembled = build.settled.plan, build.drawn.assembled
    if not plan.for_children or build.drawn.gaps:
        return
    places = {each.label: part.place for part in build.settled.parts for each in part.pieces}
    for gap in _gaps(assembled.pieces, bounds, through=through):
        template = "{} and {} are {} apart: {}"
        message = said(template, named(gap.a), named(gap.b), length("apart", gap.wide), what)
        least, most = length("least", bounds[0]), length("most", bounds[1])
        advice = said("Stay below {} or above {}, or close it.", least, most)
        meeting = Meeting(pieces=(gap.a,), others=(gap.b,), variant=build.settled.variant.label)
        yield warning(rule, message, places[gap.a], advice, subject=gap.a, meeting=meeting)


def _gaps(
    pieces: Sequence[PosedPiece], bounds: tuple[float, float], *, through: bool
) -> Iterator[_Gap]:
    """Yield the gaps of a width that nothing fills, or that are closed on no side."""
    boxes = {each.label: box_around([each]) for each in pieces if _is_square(each)}
    every = [box_around([each]) for each in pieces]
    for a, b in combinations(boxes, 2):
        gap = _between(a, b, boxes[a], boxes[b])
        if gap is None or not bounds[0] <= gap.wide <= bounds[1]:
            continue
        (short, way), (long, _) = gap.sides
        if short < _SIDE or (through and long < gap.wide):
            continue
        if any(
            not any(_share(room, box) for box in every)
            for room in _rooms(gap, way, _REACH if through else 0.0)
        ):
            yield gap


def _is_square(piece: PosedPiece) -> bool:
    axes = (piece.pose.x, piece.pose.z)
    return all(max(map(abs, axis)) >= _SQUARE for axis in axes)


def _between(a: str, b: str, one: Box, other: Box) -> _Gap | None:
    """Return what is between two boxes that lie apart along one axis alone."""
    low = [max(x, y) for x, y in zip(one[0], other[0], strict=True)]
    high = [min(x, y) for x, y in zip(one[1], other[1], strict=True)]
    apart = [axis for axis in range(3) if high[axis] <= low[axis]]
    if len(apart) != 1:
        return None
    axis = apart[0]
    low[axis], high[axis] = high[axis], low[axis]
    box = (low[0], low[1], low[2]), (high[0], high[1], high[2])
    return _Gap(a=a, b=b, axis=axis, wide=high[axis] - low[axis], box=box)


def _rooms(gap: _Gap, way: int, beyond: float) -> Iterator[Box]:
    """Yield boxes in a gap, at quarters of its length, that a third piece fills where it closes it.

    They reach so far ``beyond`` it along the axis ``way``. Its ends, which lie in what both pieces
    are joined to, are left out.
    """
    long = gap.sides[1][1]
    for quarter in (1, 2, 3):
        low, high = list(gap.box[0]), list(gap.box[1])
        at, eighth = low[long] + quarter * (high[long] - low[long]) / 4, _part(gap, long) / 2
        low[long], high[long] = at - eighth, at + eighth
        inset = 0.0 if beyond else _part(gap, way)
        low[way], high[way] = low[way] - beyond + inset, high[way] + beyond - inset
        yield (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _part(gap: _Gap, axis: int) -> float:
    return (gap.box[1][axis] - gap.box[0][axis]) / 8


def _share(one: Box, other: Box) -> bool:
    """Tell whether two boxes share space, more than they touch."""
    pairs = zip(zip(*one, strict=True), zip(*other, strict=True), strict=True)
    return all(min(a[1], b[1]) - max(a[0], b[0]) > 1.0 for a, b in pairs)
