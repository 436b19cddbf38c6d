"""What of an older release is what of a newer one: parts, pieces and joints, renamed ones too."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.same_shape import Placing, placing_of
from kerfolio.model.release_record import (
    RecordedContour,
    RecordedJoint,
    RecordedPart,
    RecordedPoint,
    ReleaseRecord,
    Shape,
)

NEAR = 0.005
"""Vertices of one shape in two records lie so near, mm: both are written to 0.0001 mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Matched:
    """Names of the newer release with those of the older one; joints by their places in a list.

    ``same`` are the newer parts whose shape is as it was at all the points, ``placings`` how the
    older shape is placed on the newer one where it is the same but drawn otherwise.
    """

    parts: Mapping[str, str]
    pieces: Mapping[str, str]
    joints: Mapping[int, int]
    same: frozenset[str]
    placings: Mapping[str, tuple[Placing, ...]]

    def is_same(self, name: str) -> bool:
        """Tell whether a newer part has the shape it had, perhaps drawn otherwise."""
        placings = self.placings.get(name)
        return name in self.same or bool(placings and not placings[0].over)

    def cut_otherwise(self, old: ReleaseRecord, new: ReleaseRecord, name: str) -> bool:
        """Tell whether reliefs or engravings of a part changed though no edge did.

        That can be told only where all sheets are drawn for the same thickness.
        """
        drawn_alike = all(
            any(a.name == b.name and a.drawn == b.drawn for b in new.sheets) for a in old.sheets
        )
        differ = old.part(self.parts[name]).cut != new.part(name).cut
        return drawn_alike and name in self.same and differ


Both = tuple[RecordedPoint, RecordedPoint]
"""The older and the newer release at one point."""


def matched(old: ReleaseRecord, new: ReleaseRecord, points: Sequence[Both]) -> Matched:
    """Return what is what; parts that bear another name are known by their shape."""
    known = {each.name for each in old.parts}
    parts = {each.name: each.name for each in new.parts if each.name in known}
    gone = [each.name for each in old.parts if each.name not in parts]
    for each in new.parts:
        if each.name not in parts:
            was = next((n for n in gone if _is_same(n, each.name, points)), None)
            if was is not None:
                parts[each.name] = was
                gone.remove(was)
    placings = {}
    same = {name for name, was in parts.items() if _is_same(was, name, points)}
    for name, was in parts.items():
        found = None if name in same else _placings(was, name, points)
        if found is not None:
            placings[name] = found
    pieces = dict(_pieces(old, new, parts))
    return Matched(
        parts=parts,
        pieces=pieces,
        joints=dict(_joints(old.joints, new.joints, pieces)),
        same=frozenset(same),
        placings=placings,
    )


def _is_same(was: str, name: str, points: Sequence[Both]) -> bool:
    return bool(points) and all(
        is_same_shape(old.shapes[was], new.shapes[name]) for old, new in points
    )


def is_same_shape(one: Shape, other: Shape) -> bool:
    """Tell whether two shapes have the same contours, in whatever order, each as deep."""
    left = list(other)
    for each in one:
        found = next((o for o in left if _is_same_contour(each, o)), None)
        if found is None:
            return False
        left.remove(found)
    return not left


def _is_same_contour(one: RecordedContour, other: RecordedContour) -> bool:
    count = len(one.line)
    if count != len(other.line) or abs(one.depth - other.depth) > NEAR:
        return False
    return any(
        all(_near(one.line[i], other.line[(i + first) % count]) for i in range(count))
        for first in range(count)
        if _near(one.line[0], other.line[first])
    )


def _near(one: tuple[float, float, float], other: tuple[float, float, float]) -> bool:
    return math.dist(one[:2], other[:2]) <= NEAR and abs(one[2] - other[2]) <= 1e-4


def _placings(was: str, name: str, points: Sequence[Both]) -> tuple[Placing, ...] | None:
    """Return how a shape lies on the other at each point, None where it is another shape.

    One that would lie where it lay is another: such shapes were compared more finely before.
    """
    found = []
    for old, new in points:
        placing = placing_of(region_of(old.shapes[was]), region_of(new.shapes[name]))
        if placing is None or _stays(placing):
            return None
        if not _covers(placing, old.shapes[was], new.shapes[name]):
            return None
        found.append(placing)
    return tuple(found) if len({(each.over, each.degrees) for each in found}) == 1 else None


def _stays(placing: Placing) -> bool:
    return not placing.over and placing.degrees == 0 and math.hypot(*placing.shift) <= NEAR


def _covers(placing: Placing, one: Shape, other: Shape) -> bool:
    """Tell whether recesses come to lie on recesses; what is turned over has none."""
    mine, theirs = ([each for each in shape if each.depth] for shape in (one, other))
    if placing.over or len(mine) != len(theirs):
        return not mine and not theirs
    placed = [
        RecordedContour(
            line=placing.of(Contour(each.line)).vertices,
            depth=each.depth,
        )
        for each in mine
    ]
    return is_same_shape(tuple(placed), tuple(theirs))


def region_of(shape: Shape) -> Region:
    """Return what of a shape goes through: its outline with its openings."""
    outer, *openings = (Contour(each.line) for each in shape if not each.depth)
    return Region(outer, tuple(openings))


def _pieces(
    old: ReleaseRecord, new: ReleaseRecord, parts: Mapping[str, str]
) -> Iterator[tuple[str, str]]:
    """Yield the pieces of parts with what they were: by the name within the part, else in turn."""
    for name, was in parts.items():
        now, before = new.part(name), old.part(was)
        left = list(before.pieces)
        waiting = []
        for label in now.pieces:
            meant = f"{was}{label.removeprefix(now.name)}"
            if meant in left:
                left.remove(meant)
                yield label, meant
            else:
                waiting.append(label)
        yield from zip(waiting, left, strict=False)


def _joints(
    old: Sequence[RecordedJoint], new: Sequence[RecordedJoint], pieces: Mapping[str, str]
) -> Iterator[tuple[int, int]]:
    """Yield joints with what they were: of the same pieces, by names of features, else in turn."""
    left = dict(enumerate(old))
    waiting = []
    for index, joint in enumerate(new):
        named = next((i for i, was in left.items() if _was(joint, was, pieces, named=True)), None)
        if named is None:
            waiting.append(index)
        else:
            del left[named]
            yield index, named
    for index in waiting:
        found = (i for i, was in left.items() if _was(new[index], was, pieces, named=False))
        first = next(found, None)
        if first is not None:
            del left[first]
            yield index, first


def _was(
    joint: RecordedJoint, was: RecordedJoint, pieces: Mapping[str, str], *, named: bool
) -> bool:
    ends = ((joint.a, was.a), (joint.b, was.b))
    return joint.kind == was.kind and all(
        pieces.get(now.piece) == then.piece and (not named or now.feature == then.feature)
        for now, then in ends
    )


def part_of(record: ReleaseRecord, piece: str) -> RecordedPart:
    """Return the part that a piece is of; KeyError when there is no such piece."""
    for each in record.parts:
        if piece in each.pieces:
            return each
    raise KeyError(piece)
