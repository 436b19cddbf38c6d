"""The ways two ends of a joint can meet: which face, which way round."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product
from math import dist

from kerfolio.assembly.ends import End
from kerfolio.assembly.frames import (
    BACK,
    SHOW,
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
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds, centroid
from kerfolio.geometry.rigid import Rigid, Vector, dot
from kerfolio.settling.settled import SettledFeature, SettledJoint

Pair = tuple[Rigid, Rigid]
"""The frames of two features, each in its own part: they coincide when the pieces are home."""

_ALIKE = 0.3
"""A direction counts as up, down, left or right where its share of it is above this."""

_WORDS: dict[str, Vector] = {
    "right": (1.0, 0.0, 0.0),
    "up": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "down": (0.0, -1.0, 0.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """A joint with what its ends mean; ``fits`` is the clearance a side, mm, by sheet."""

    joint: SettledJoint
    a: End
    b: End
    fits: Mapping[str, float]

    def fit(self, feature: SettledFeature) -> float:
        """Return the clearance a side that a feature has been given, mm."""
        return self.fits.get(feature.takes, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to meet: a pair of frames for each two features.

    ``face`` is the face of the second piece that is met. ``rank`` says how unusual the way is:
    first of its faces (show faces look out), then of its turn (what is drawn up points up).
    ``slides`` says that the pieces may lie anywhere along x (a tongue in a longer groove).
    ``number`` tells it from the joint's other ways, at every thickness alike.
    """

    pairs: tuple[Pair, ...]
    face: str
    rank: tuple[int, int]
    slides: bool = False
    number: int = 0

    @property
    def look(self) -> Vector:
        """Where the first piece's show face looks, in the second part's frame."""
        return _look(*self.pairs[0])

    def words(self, kind: str) -> tuple[str, str]:
        """Return (face, looking) as a maker would state this way."""
        look = self.look
        if kind == "face":
            out = look[2] if self.face == SHOW else -look[2]
            return self.face, "away" if out > 0 else "toward"
        return self.face, max(_WORDS, key=lambda word: round(dot(look, _WORDS[word]), 6))

    def is_stated(self, kind: str, face: str, looking: str) -> bool:
        """Tell whether a maker's words allow this way."""
        if face and face != self.face:
            return False
        if kind == "face":
            return self.words(kind)[1] == (looking or "away")
        if not looking:
            return True
        return dot(self.look, _WORDS[looking]) > _ALIKE


def ways_of(meeting: Meeting) -> tuple[Way, ...]:
    """Return every way the ends can meet that the stated words allow, the usual ones first."""
    stated = meeting.joint.stated
    found = [replace(w, number=n) for n, w in enumerate(_WAYS[stated.kind](meeting))]
    allowed = [way for way in found if way.is_stated(stated.kind, stated.face, stated.looking)]
    return tuple(sorted(allowed, key=lambda way: way.rank))


def _tab_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    slides = any(
        f.kind == "groove" and abs(f.length.value - t.width.value) > 1.0
        for t, f in zip(a.features, b.features, strict=True)
    )
    roots = [tab_frame(f.at, f.direction, a.part.thickness) for f in a.features]
    for index, face in enumerate(_entered(b.features)):
        for sign in (1.0, -1.0):
            entries = []
            for tab, into in zip(a.features, b.features, strict=True):
                at, along = _opening(tab, into, meeting)
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
    recessed = any(each.kind in ("pocket", "groove") for each in features)
    return (SHOW,) if recessed else (BACK, SHOW)


def _opening(tab: SettledFeature, into: SettledFeature, meeting: Meeting) -> tuple[Point, Point]:
    """Return the middle and the direction of what a tab goes into; it lies at a notch's bottom."""
    if into.kind != "notch":
        return into.at, into.direction
    (x, y), (dx, dy) = nominal_bottom(into, meeting.fit(into)), into.direction
    half = tab.width.value / 2
    return (x + half * dx, y + half * dy), into.direction


def _notch_ways(meeting: Meeting) -> Iterator[Way]:
    a, b = meeting.a, meeting.b
    opened = [_bottoms(f, meeting.fit(f)) for f in a.features]
    crossed = [_bottoms(f, meeting.fit(f)) for f in b.features]
    for first, second, sign in product(range(len(opened[0])), range(len(crossed[0])), (1.0, -1.0)):
        pairs = tuple(
            (
                crossing_frame(*one[min(first, len(one) - 1)], a.part.thickness),
                crossed_frame(*other[min(second, len(other) - 1)], sign, b.part.thickness),
            )
            for one, other in zip(opened, crossed, strict=True)
        )
        x, y, _ = _look(*pairs[0])
        usual = upward((x, y)) == (x, y)
        yield Way(pairs=pairs, face="", rank=(0, 2 * (first + second) + (0 if usual else 1)))


def _bottoms(feature: SettledFeature, fit: float) -> tuple[tuple[Point, Point], ...]:
    """Return (bottom, direction to the open end) of a notch; a slot can be hung on either end."""
    if feature.kind == "notch":
        return ((nominal_bottom(feature, fit), feature.direction),)
    half = feature.length.value / 2 - fit
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


_WAYS = {
    "tab": _tab_ways,
    "notch": _notch_ways,
    "fingers": _finger_ways,
    "face": _face_ways,
    "edge": _edge_ways,
    "wedge": _wedge_ways,
}


def _look(first: Rigid, second: Rigid) -> Vector:
    """Return where the first piece's show face looks, in the second part's frame."""
    return second.vector(first.inverse.vector((0.0, 0.0, 1.0)))


def spread(way: Way) -> float:
    """Return how badly the features of two sets match when met this way, mm.

    It is the distance between two places of the second piece that two pairs ask for.
    """
    places = [first.after(second.inverse).origin for first, second in way.pairs]
    return max((dist(places[0], each) for each in places[1:]), default=0.0)
