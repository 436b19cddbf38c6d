"""The ways each kind of joint can go: the frames of its features, face by face, turn by turn."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import product

from kerfolio.assembly.frames import (
    BACK,
    SHOW,
    at_ends,
    corner_frames,
    crossed_frame,
    crossing_frame,
    entry_frame,
    lying_frame,
    middle,
    nominal_bottom,
    side_line,
    tab_frame,
    through_frame,
    towards,
    turned_to,
    upward,
)
from kerfolio.assembly.ways import Meeting, Way, look_of
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds, centroid
from kerfolio.geometry.rigid import Rigid
from kerfolio.model.feature_kind import GROOVE, NOTCH
from kerfolio.model.joint_kind import (
    EDGE_JOINT,
    FACE_JOINT,
    FINGER_JOINT,
    NOTCH_JOINT,
    TAB_JOINT,
    WEDGE_JOINT,
    JointKind,
)
from kerfolio.settling.settled import SettledFeature


def _tab_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    slides = any(
        f.kind is GROOVE and abs(f.length.value - t.width.value) > 1.0
        for t, f in zip(a.features, b.features, strict=True)
    )
    roots = [tab_frame(f.at, f.direction, a.part.thickness) for f in a.features]
    for index, face in enumerate(_entered(b.features)):
        for sign in (1.0, -1.0):
            entries = []
            for tab, into in zip(a.features, b.features, strict=True):
                at, along = _opening(tab, into)
                x, y = upward(along)
                entries.append(entry_frame(at, (sign * x, sign * y), face, b.part.thickness))
            drawn = roots[0].x[:2]
            upright = (upward(drawn) == drawn) == (sign > 0)
            yield Way(
                pairs=tuple(zip(roots, entries, strict=True)),
                face=face,
                rank=(index, 0 if upright else 1),
                slides=slides,
            )


def _entered(features: tuple[SettledFeature, ...]) -> tuple[str, ...]:
    """Return the faces that openings can be entered from, the usual one first.

    What goes through is entered from the back, so that the show face looks out; a recess is
    entered where the cutter made it.
    """
    recessed = any(each.kind.recessed for each in features)
    return (SHOW,) if recessed else (BACK, SHOW)


def _opening(tab: SettledFeature, into: SettledFeature) -> tuple[Point, Point]:
    """Return the middle and the direction of what a tab goes into; it lies at a notch's bottom."""
    if into.kind is not NOTCH:
        return into.at, into.direction
    (x, y), (dx, dy) = nominal_bottom(into), into.direction
    half = tab.width.value / 2
    return (x + half * dx, y + half * dy), into.direction


def _notch_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    opened = [_bottoms(f) for f in a.features]
    crossed = [_bottoms(f) for f in b.features]
    for first, second, sign in product(range(len(opened[0])), range(len(crossed[0])), (1.0, -1.0)):
        pairs = tuple(
            (
                crossing_frame(*one[min(first, len(one) - 1)], a.part.thickness),
                crossed_frame(*other[min(second, len(other) - 1)], sign, b.part.thickness),
            )
            for one, other in zip(opened, crossed, strict=True)
        )
        x, y, _ = look_of(*pairs[0])
        usual = upward((x, y)) == (x, y)
        yield Way(pairs=pairs, face="", rank=(0, 2 * (first + second) + (0 if usual else 1)))


def _bottoms(feature: SettledFeature) -> tuple[tuple[Point, Point], ...]:
    """Return (bottom, direction to the open end) of a notch; a slot can be hung on either end."""
    if feature.kind is NOTCH:
        return ((nominal_bottom(feature), feature.direction),)
    half = feature.length.value / 2 - at_ends(feature)
    (x, y), (dx, dy) = feature.at, feature.direction
    return tuple(((x - s * half * dx, y - s * half * dy), (s * dx, s * dy)) for s in (1.0, -1.0))


def _finger_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    (one,), (other,) = a.features, b.features
    edges = [(f.at, f.direction, end.part.thickness) for f, end in ((one, a), (other, b))]
    for rank, (b_out, a_out) in enumerate(product((True, False), repeat=2)):
        first, second = corner_frames(edges[0], edges[1], a_out, b_out)
        if _fill_each_other(one, first, other, second):
            face = BACK if b_out else SHOW
            yield Way(pairs=((first, second),), face=face, rank=(rank, 0))


def _fill_each_other(
    one: SettledFeature, first: Rigid, other: SettledFeature, second: Rigid
) -> bool:
    """Tell whether the gaps of one row lie where the other row's fingers are."""
    gaps = [_along_corner(one, first), _along_corner(other, second)]
    pitch = one.width.value / max(len(gaps[0]) + len(gaps[1]), 1)
    return all(abs(s - r) > pitch / 2 for s, r in product(*gaps))


def _along_corner(row: SettledFeature, frame: Rigid) -> list[float]:
    z = frame.z
    spots = [bounds(each).centre for each in row.shape]
    return [(x - row.at[0]) * z[0] + (y - row.at[1]) * z[1] for x, y in spots]


def _face_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    if a.features and b.features:
        spots = [[f.at for f in end.features] for end in (a, b)]
    elif meeting.joint.at is not None:
        spots = [[(0.0, 0.0)], [meeting.joint.at]]
    else:
        return
    several = len(spots[0]) > 1
    x_a = towards(spots[0][0], spots[0][-1]) if several else (1.0, 0.0)
    x_b = towards(spots[1][0], spots[1][-1]) if several else turned_to(meeting.joint.turn)
    for rank, (away, face) in enumerate(product((True, False), (SHOW, BACK))):
        pairs = tuple(
            (
                lying_frame(one, x_a, away, a.part.thickness),
                entry_frame(other, x_b, face, b.part.thickness),
            )
            for one, other in zip(*spots, strict=True)
        )
        yield Way(pairs=pairs, face=face, rank=(rank, 0))


def _edge_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    at, outward, _ = side_line(a.part, a.side)
    root = tab_frame(at, outward, a.part.thickness)
    spots = [f.at for f in b.features]
    along = upward(towards(spots[0], spots[-1]))
    lines = [along] if len(spots) > 1 else [(0.0, 1.0), (1.0, 0.0)]
    for index, (line, face) in enumerate(product(lines, (BACK, SHOW))):
        for sign in (1.0, -1.0):
            x, y = line
            entry = entry_frame(middle(spots), (sign * x, sign * y), face, b.part.thickness)
            upright = (upward(root.x[:2]) == root.x[:2]) == (sign > 0)
            rank = (index, 0 if upright else 1)
            yield Way(pairs=((root, entry),), face=face, rank=rank)


def _wedge_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    at = meeting.joint.at or centroid(a.part.plain)
    root = tab_frame(at, (0.0, -1.0), a.part.thickness)
    slot = b.features[0]
    x, y = upward(slot.direction)
    for face, sign in product((BACK, SHOW), (1.0, -1.0)):
        through = through_frame(slot.at, (sign * x, sign * y), face, b.part.thickness)
        rank = (0 if face == BACK else 1, 0 if sign > 0 else 1)
        yield Way(pairs=((root, through),), face=face, rank=rank)


JOINT_WAYS: dict[JointKind, Callable[[Meeting], Iterator[Way]]] = {
    TAB_JOINT: _tab_ways,
    NOTCH_JOINT: _notch_ways,
    FINGER_JOINT: _finger_ways,
    FACE_JOINT: _face_ways,
    EDGE_JOINT: _edge_ways,
    WEDGE_JOINT: _wedge_ways,
}
"""What yields every way that the ends of a joint of each kind can meet."""


def ways_of(meeting: Meeting) -> tuple[Way, ...]:
    """Return every way the ends can meet that the stated words allow, the usual ones first."""
    stated = meeting.joint.stated
    found = [replace(w, number=n) for n, w in enumerate(JOINT_WAYS[stated.kind](meeting))]
    allowed = [way for way in found if way.is_stated(stated.kind, stated.face, stated.looking)]
    return tuple(sorted(allowed, key=lambda way: way.rank))
