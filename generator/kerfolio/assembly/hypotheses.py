"""What else than a length may be wrong with a plan: words of joints, counts, turns, mirror images.

Each hypothesis is one slip of a maker's: a word that says the wrong way round, a set counted from
its other end, two things exchanged, a feature turned, a piece that wants to be the mirror image of
what was drawn. It says what it changes in words, and makes the changed plan.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum, auto
from functools import partial
from itertools import combinations, islice

from kerfolio.assembly.ends import End
from kerfolio.assembly.frames import BACK, SHOW
from kerfolio.assembly.links import Link
from kerfolio.assembly.mirrored import mirrored
from kerfolio.basis.place import Place
from kerfolio.basis.said import Text, said
from kerfolio.model.feature_kind import GROOVE, POCKET, SLOT, WINDOW, FeatureKind
from kerfolio.model.joint import Joint
from kerfolio.model.statement import Named
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_MOST = 40
"""So many hypotheses of a kind are made at most."""


class Slip(IntEnum):
    """The kinds of slips, the smallest change of a plan first."""

    WAY = auto()
    BACKWARD = auto()
    FAR_END = auto()
    ANOTHER = auto()
    EXCHANGED = auto()
    TURNED = auto()
    MIRRORED = auto()
    EDGE = auto()
    MISPLACED = auto()


Change = Callable[[SettledPlan], SettledPlan]


@dataclass(frozen=True, slots=True, kw_only=True)
class Hypothesis:
    """One slip: ``words`` say what is wrong, ``cure`` what to write, ``place`` where.

    ``change`` gives the plan without it. ``parts`` are those whose shape or joints it changes.
    ``mixed`` says that it is two slips of different kinds; ``alike`` by how many numbers
    more the names of what meets agree, ``aside`` that it changes joints that nothing accuses.
    """

    slip: Slip
    words: Text
    cure: Text
    place: Place
    subject: str
    parts: frozenset[str]
    change: Change
    mixed: bool = False
    alike: int = 0
    aside: bool = False


def hypotheses(
    settled: SettledPlan, links: Sequence[Link], accused: Collection[int]
) -> Iterator[Hypothesis]:
    """Yield what may be wrong near joints that are accused, the smallest changes first."""
    near = {end.piece for i in accused for end in (links[i].a, links[i].b)}
    close = [link for link in links if not near.isdisjoint((link.a.piece, link.b.piece))]
    for made in (
        _other_ways(links),
        _counted_back(close),
        _exchanged(links, accused),
        _exchanged_in_part(close),
        _turned(close),
        _mirrored(settled, close),
    ):
        yield from islice(made, _MOST)


def ways_round(links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield other ways round than are stated, then sets counted from their other end."""
    for made in (_other_ways(links), _counted_back(links)):
        yield from islice(made, _MOST)


def both(one: Hypothesis, other: Hypothesis) -> Hypothesis:
    """Return two slips at once as one hypothesis."""
    return Hypothesis(
        slip=max(one.slip, other.slip),
        words=said("{}, and {}", one.words, other.words),
        cure=one.cure if one.cure == other.cure else said("{} {}", one.cure, other.cure),
        place=one.place,
        subject=one.subject,
        parts=one.parts | other.parts,
        change=lambda settled: other.change(one.change(settled)),
        mixed=one.slip is not other.slip,
        alike=one.alike + other.alike,
        aside=one.aside or other.aside,
    )


def _other_ways(links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield each joint with another word for the way round, where it states one."""
    for link in links:
        stated = link.joint.stated
        if not (stated.face or stated.looking):
            continue
        faces = [stated.face, *({BACK, SHOW} - {stated.face})] if stated.face else [""]
        words = ("away", "toward") if link.kind.flat else ("right", "left", "up", "down")
        looks = [stated.looking, *(w for w in words if w != stated.looking)]
        for face in faces:
            for looking in looks if stated.looking else [""]:
                if (face, looking) != (stated.face, stated.looking):
                    yield _other_way(link, face, looking)


def _other_way(link: Link, face: str, looking: str) -> Hypothesis:
    stated = link.joint.stated
    other = replace(stated, face=face, looking=looking)
    wrong = [
        (was, now)
        for was, now in (
            (_face_words(link, stated.face), _face_words(link, face)),
            (f"looking: {stated.looking}", f"looking: {looking}"),
        )
        if was != now
    ]
    what = " and ".join(f"`{was}`" for was, _ in wrong)
    return Hypothesis(
        slip=Slip.WAY,
        words=f"`{stated.a}` and `{stated.b}` meet the wrong way round: {what}",
        cure=f"Write {' and '.join(f'`{now}`' for _, now in wrong)}.",
        place=stated.place,
        subject=stated.a.name,
        parts=frozenset((link.a.part.name, link.b.part.name)),
        change=partial(with_joints, joints={stated: other}),
    )


def _face_words(link: Link, face: str) -> str:
    if link.kind.flat:
        return f"side: {face}"
    return f"show: {'out' if face == BACK else 'in'}"


def with_joints(settled: SettledPlan, joints: Mapping[Joint, Joint]) -> SettledPlan:
    """Return a plan with some joints stated otherwise."""
    made = tuple(
        replace(each, stated=joints.get(each.stated, each.stated)) for each in settled.joints
    )
    return replace(settled, joints=made)


def _sets(links: Sequence[Link]) -> Iterator[tuple[Link, End, End]]:
    """Yield each set of a part once, second ends first, with a link it is in and the other end."""
    known: set[tuple[str, tuple[str, ...]]] = set()
    ends = [(link, link.b, link.a) for link in links] + [(link, link.a, link.b) for link in links]
    for link, end, other in ends:
        key = (end.part.name, tuple(f.name for f in end.features))
        if len(end.features) > 1 and key not in known:
            known.add(key)
            yield link, end, other


def _counted_back(links: Sequence[Link]) -> Iterator[Hypothesis]:
    for link, end, other in _sets(links):
        names = [f.name for f in end.features]
        stated = link.joint.stated
        mine, theirs = (stated.b, stated.a) if end is link.b else (stated.a, stated.b)
        yield Hypothesis(
            slip=Slip.BACKWARD,
            words=f"`{mine}` count from the other end than `{theirs}`",
            cure="Each meets the one of its number: begin one of the two at its other end.",
            place=stated.place,
            subject=mine.name,
            parts=frozenset((end.part.name, other.part.name)),
            change=partial(
                _renamed, part=end.part.name, names=dict(zip(names, reversed(names), strict=True))
            ),
        )


def _renamed(settled: SettledPlan, part: str, names: Mapping[str, str]) -> SettledPlan:
    """Return a plan with features of a part in each other's places."""

    def made(each: SettledPart) -> SettledPart:
        if each.name != part:
            return each
        found = [replace(f, name=names.get(f.name, f.name)) for f in each.features]
        called = {f.name: f for f in found}
        return replace(each, features=tuple(called[f.name] for f in each.features))

    return replace(settled, parts=tuple(map(made, settled.parts)))


def _exchanged(links: Sequence[Link], accused: Collection[int]) -> Iterator[Hypothesis]:
    """Yield each two joints with their second ends exchanged, those that are accused first.

    Of several alike that a piece is in, any two may be, since which of them do not agree with the
    rest hangs on which the rest is.
    """
    pairs = list(combinations(sorted(accused), 2))
    pairs += [(i, j) for i in sorted(accused) for j in range(len(links)) if j not in accused]
    pairs += [(i, j) for i, j in combinations(range(len(links)), 2) if not {i, j} & {*accused}]
    for i, j in pairs:
        one, other = links[i], links[j]
        alike = one.kind is other.kind and len(one.a.features) == len(other.a.features)
        share = one.b.piece == other.b.piece or one.a.piece == other.a.piece
        apart = one.a.piece != other.b.piece and other.a.piece != one.b.piece
        if not (alike and share and apart):
            continue
        a, b = one.joint.stated.a, one.joint.stated.b
        c, d = other.joint.stated.a, other.joint.stated.b
        named = (b, d) if one.b.piece == other.b.piece else (a, c)
        yield Hypothesis(
            slip=Slip.EXCHANGED,
            words=f"`{named[0]}` and `{named[1]}` are exchanged",
            cure=f"Every joint agrees once `{a}` meets `{d}`, and `{c}` meets `{b}`.",
            place=one.joint.stated.place,
            subject=named[0].name,
            parts=frozenset(end.part.name for link in (one, other) for end in (link.a, link.b)),
            change=partial(
                with_joints,
                joints={
                    one.joint.stated: replace(one.joint.stated, b=d),
                    other.joint.stated: replace(other.joint.stated, b=b),
                },
            ),
            aside=not {i, j} <= {*accused},
            alike=numbers_shared(a, d)
            + numbers_shared(c, b)
            - numbers_shared(a, b)
            - numbers_shared(c, d),
        )


def numbers_shared(one: Named, other: Named) -> int:
    """Return how many numbers two names share: `divider.3.tabs` and `back.slots-3` share one.

    Words are none of it: left and right change places with the face that is seen.
    """
    numbers = (frozenset(re.findall(r"\d+", each.name)) for each in (one, other))
    return len(frozenset.intersection(*numbers))


def _exchanged_in_part(links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield each two features of a part, alike and both in joints, in each other's places."""
    used: dict[str, dict[str, End]] = {}
    for link in links:
        for end in (link.a, link.b):
            for feature in end.features:
                used.setdefault(end.part.name, {})[feature.name] = end
    for part, found in used.items():
        for one, other in combinations(found, 2):
            first, second = (_named(found[name], name) for name in (one, other))
            pair = len(found[one].features) == 2 and second in found[one].features  # counted back
            if first.kind is second.kind and _size(first) == _size(second) and not pair:
                yield Hypothesis(
                    slip=Slip.EXCHANGED,
                    words=f"`{part}.{one}` and `{part}.{other}` are exchanged",
                    cure="Every joint agrees once each lies where the other does.",
                    place=first.place,
                    subject=f"{part}.{one}",
                    parts=frozenset((part,)),
                    change=partial(_renamed, part=part, names={one: other, other: one}),
                )


def _named(end: End, name: str) -> SettledFeature:
    return next(each for each in end.features if each.name == name)


def _size(feature: SettledFeature) -> tuple[float, float]:
    return round(feature.width.value, 2), round(feature.length.value, 2)


_TURNABLE: tuple[FeatureKind, ...] = (SLOT, POCKET, WINDOW, GROOVE)


def _turned(links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield each feature or set in a face turned by a quarter or a half about its middle."""
    known: set[tuple[str, str]] = set()
    for link in links:
        base = link.joint.stated.b.name
        end = link.b
        key = (end.part.name, end.features[0].name.partition(".")[0] if end.features else "")
        if not end.features or end.features[0].kind not in _TURNABLE or key in known:
            continue
        known.add(key)
        several = len(end.features) > 1
        for degrees in (90, 180, 270) if several else (90,):
            yield Hypothesis(
                slip=Slip.TURNED,
                words=f"`{base}` is turned by {min(degrees, 360 - degrees)} degrees",
                cure=f"Every joint agrees with {degrees} added to its `angle`.",
                place=end.features[0].place,
                subject=f"{key[0]}.{key[1]}",
                parts=frozenset((end.part.name,)),
                change=partial(
                    _with_turned,
                    part=end.part.name,
                    names=frozenset(f.name for f in end.features),
                    quarters=degrees // 90,
                ),
            )


def _with_turned(
    settled: SettledPlan, part: str, names: frozenset[str], quarters: int
) -> SettledPlan:
    """Return a plan with features of a part turned about the middle of them all.

    Only where they meet others is changed, not what is cut: their old openings stand.
    """

    def made(each: SettledPart) -> SettledPart:
        if each.name != part:
            return each
        mine = [f.at for f in each.features if f.name in names]
        mx, my = (mine[0][0] + mine[-1][0]) / 2, (mine[0][1] + mine[-1][1]) / 2

        def turn(x: float, y: float) -> tuple[float, float]:
            for _ in range(quarters):
                x, y = -y, x
            return x, y

        def put(f: SettledFeature) -> SettledFeature:
            if f.name not in names:
                return f
            x, y = turn(f.at[0] - mx, f.at[1] - my)
            return replace(f, at=(mx + x, my + y), direction=turn(*f.direction))

        return replace(each, features=tuple(map(put, each.features)))

    return replace(settled, parts=tuple(map(made, settled.parts)))


def _mirrored(settled: SettledPlan, links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield each piece, and each part of several pieces, as its own mirror image."""
    parts = {part.name: part for part in settled.parts}
    seen = dict.fromkeys((end.piece, end.part.name) for link in links for end in (link.a, link.b))
    for piece, name in seen:
        yield _as_mirrored(piece, parts[name], frozenset((piece,)))
    for name in dict.fromkeys(name for _, name in seen):
        labels = frozenset(piece.label for piece in parts[name].pieces)
        if len(labels) > 1:
            yield _as_mirrored(name, parts[name], labels)


def _as_mirrored(called: str, part: SettledPart, labels: frozenset[str]) -> Hypothesis:
    alone = len(labels) == len(part.pieces)
    cure = (
        "Every joint agrees with its mirror image: let its other face show, or count `x` from its "
        "other side."
        if alone
        else f"Every joint agrees with the mirror image of `{part.name}` there: let its other face "
        "show, or give it a part of its own, `x` counted from its other side."
    )
    return Hypothesis(
        slip=Slip.MIRRORED,
        words=f"`{called}` wants to be turned over or mirrored",
        cure=cure,
        place=part.place,
        subject=called,
        parts=frozenset((part.name,)),
        change=partial(_with_mirrored, part=part.name, labels=labels),
    )


def _with_mirrored(settled: SettledPlan, part: str, labels: frozenset[str]) -> SettledPlan:
    made: list[SettledPart] = []
    for each in settled.parts:
        if each.name != part:
            made.append(each)
            continue
        rest = tuple(piece for piece in each.pieces if piece.label not in labels)
        made += [replace(each, pieces=rest)] if rest else []
        own = tuple(piece for piece in each.pieces if piece.label in labels)
        made.append(replace(mirrored(each), pieces=own))
    return replace(settled, parts=tuple(made))
