"""What may be in the wrong place when joints do not agree: features of parts, as they are drawn.

All pieces of a part have the same features, so a feature in the wrong place spoils every joint it
is in, and always in the same way: it can only be misplaced within its own sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import cos, sin
from typing import NamedTuple

import numpy as np

from kerfolio.assembly.adjustment import LEVER, Numbers, kept
from kerfolio.assembly.ends import End
from kerfolio.assembly.feature_kinds import FEATURE_FREEDOMS, Freedom
from kerfolio.assembly.links import Link
from kerfolio.assembly.pairing import Pairing
from kerfolio.basis.place import Place
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, scaled
from kerfolio.settling.settled import SettledPart

_NORMAL: Vector = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """A feature, or several of one name or on one edge (no name), that may be misplaced.

    ``name`` is what it is called in a remark. ``seen`` are the ends it is at: the number of the
    pairing, and whether it is the first end. ``outward`` is where it looks, if it is on an edge.
    ``features`` are the settled ones that are meant. A set that may be turned as a whole is so
    ``about`` its middle; without one each feature turns about its own.
    """

    part: SettledPart
    feature: str
    name: str
    freedom: Freedom
    place: Place
    outward: Point
    seen: tuple[tuple[int, bool], ...]
    features: tuple[str, ...] = ()
    about: Point | None = None

    @property
    def axes(self) -> tuple[Vector, Vector]:
        """The two directions, in its part's face, in which it can be off."""
        if self.freedom.on_edge:
            out = (self.outward[0], self.outward[1], 0.0)
            return out, cross(_NORMAL, out)
        return (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)

    @property
    def turns(self) -> bool:
        """Whether it can be turned in its face."""
        return self.freedom is Freedom.FACE


def suspects_of(pairings: Sequence[Pairing], links: Sequence[Link]) -> tuple[Suspect, ...]:
    """Return all that may be misplaced, in the order of the joints.

    Copies of a feature are suspected together and one by one, features on an edge all together.
    """
    seen: dict[tuple[str, str], list[tuple[int, bool]]] = {}
    about: dict[tuple[str, str], tuple[SettledPart, _About]] = {}
    for number, each in enumerate(pairings):
        link = links[each.link]
        for end, first in ((link.a, True), (link.b, False)):
            for name, what in _named(end, each, link, first=first):
                seen.setdefault((end.part.name, name), []).append((number, first))
                about.setdefault((end.part.name, name), (end.part, what))
    found: dict[tuple[tuple[tuple[int, bool], ...], Point | None], Suspect] = {}
    for key, ends in seen.items():
        part, what = about[key]
        made = Suspect(
            part=part,
            feature=key[1].partition("@")[0],
            name=what.name,
            freedom=what.freedom,
            place=what.place,
            outward=what.outward,
            seen=tuple(ends),
            features=_meant(part, key[1].partition("@")[0]),
            about=what.about,
        )
        found.setdefault((made.seen, made.about), made)
    return tuple(found.values())


def _meant(part: SettledPart, name: str) -> tuple[str, ...]:
    """Return the features of a part that a suspect of that name is."""
    return tuple(f.name for f in part.features if name in (f.name, f.name.partition(".")[0]))


class _About(NamedTuple):
    """What a suspect is called, how it can be off, where it is stated, where it looks."""

    name: str
    freedom: Freedom
    place: Place
    outward: Point = (0.0, 0.0)
    about: Point | None = None


def _named(end: End, pairing: Pairing, link: Link, *, first: bool) -> Iterator[tuple[str, _About]]:
    """Yield what may be to blame at an end: all copies of a feature, this one, all on its edge.

    Names that begin with @ only tell groups apart.
    """
    part = end.part
    if end.features:
        feature = end.features[min(pairing.index, len(end.features) - 1)]
        freedom = FEATURE_FREEDOMS[feature.kind]
        names = tuple(dict.fromkeys((feature.name.partition(".")[0], feature.name)))
        for name in names:
            called = f"{part.name}.{name}"
            yield name, _About(called, freedom, feature.place, feature.direction)
        mine = [f.at for f in part.features if f.name.startswith(f"{names[0]}.")]
        if freedom is Freedom.FACE and len(mine) > 1:
            middle = (mine[0][0] + mine[-1][0]) / 2, (mine[0][1] + mine[-1][1]) / 2
            called = f"{part.name}.{names[0]}"
            yield f"{names[0]}@turned", _About(called, freedom, feature.place, about=middle)
        if freedom is Freedom.OUTLINE:
            x, y = (round(v, 6) + 0.0 for v in feature.direction)
            yield f"@{x},{y}", _About(part.name, freedom, part.place, feature.direction)
    elif end.side:
        z, called = pairing.pair[0].z, f"{part.name}.{end.side}"
        yield end.side, _About(called, Freedom.OUTLINE, part.place, (z[0], z[1]))
    elif not first and link.joint.at is not None and link.kind.flat:
        yield f"@{pairing.link}", _About("at", Freedom.FACE, link.joint.stated.place)


def columns(suspect: Suspect, pairings: Sequence[Pairing], poses: Mapping[str, Rigid]) -> Numbers:
    """Return how residuals change as the suspect is moved along its axes, and turned."""
    made = np.zeros((6 * len(pairings), 3 if suspect.turns else 2))
    for number, first in suspect.seen:
        each = pairings[number]
        sign, pose = (1.0, poses[each.a]) if first else (-1.0, poses[each.b])
        keep = kept(each, poses[each.b])
        for index, axis in enumerate(suspect.axes):
            made[6 * number : 6 * number + 3, index] = sign * keep @ np.array(pose.vector(axis))
        if suspect.turns:
            made[6 * number + 3 : 6 * number + 6, 2] = sign * np.array(pose.z)
            if suspect.about is not None:
                x, y, _ = each.pair[0 if first else 1].origin
                arm = (x - suspect.about[0], y - suspect.about[1], 0.0)
                way = pose.vector(cross(_NORMAL, arm))
                made[6 * number : 6 * number + 3, 2] = sign * keep @ np.array(way) / LEVER
    return made


def put_right(
    suspect: Suspect, by: Sequence[float], pairings: Sequence[Pairing]
) -> tuple[Pairing, ...]:
    """Return the pairings with the suspect moved: mm along its axes, then turned, mm at 200 mm."""
    made = list(pairings)
    off = added(scaled(suspect.axes[0], by[0]), scaled(suspect.axes[1], by[1]))
    angle = by[2] / LEVER if suspect.turns else 0.0
    for number, first in suspect.seen:
        one, other = made[number].pair
        pair = (
            (_moved(one, off, angle, suspect.about), other)
            if first
            else (one, _moved(other, off, angle, suspect.about))
        )
        made[number] = made[number].with_pair(pair)
    return tuple(made)


def _moved(frame: Rigid, off: Vector, angle: float, about: Point | None) -> Rigid:
    c, s = cos(angle), sin(angle)

    def turned(v: Vector) -> Vector:
        return c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]

    origin = frame.origin
    if about is not None:
        middle = (about[0], about[1], 0.0)
        origin = added(middle, turned(between(middle, origin)))
    return Rigid(added(origin, off), turned(frame.x), turned(frame.y), turned(frame.z))
