"""What changed from one release to a newer one, and which older pieces still serve."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise

from kerfolio.basis.keeper import kept
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import area
from kerfolio.geometry.rigid import HERE, Rigid, between, length
from kerfolio.model.release_record import ReleaseRecord, Shape
from kerfolio.releasing.between import at, common_points
from kerfolio.releasing.laying import Laying, Way, rigid_of
from kerfolio.releasing.least import Kept, fewest
from kerfolio.releasing.matching import Both, Matched, matched, part_of, region_of

_MOVED = 0.02
"""A mating feature that lies further from where it lay, mm, counts as moved."""


class Weight(StrEnum):
    """What a release is to those who have the one before it."""

    WORDS = "words"  # nothing is cut, bought or put together otherwise
    BETTER = "better"  # something is, and every older piece still serves
    CORRECTION = "correction"  # some older piece does not


class State(StrEnum):
    """What became of a part."""

    SAME = "same"
    CHANGED = "changed"
    MIRRORED = "mirrored"
    NEW = "new"
    GONE = "gone"


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedFeature:
    """A mating feature that lies elsewhere: where it was and is on the newer part as drawn, mm.

    ``size`` is how long or wide it is, the larger of both, 0 where that is not known.
    """

    name: str
    was: Point
    now: Point
    size: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PartChange:
    """A part in two releases; ``was`` is its name in the older one, empty where it is new.

    ``before`` is the older shape laid on the newer one, ``after``, both as drawn, None where there
    is none. ``over``: it had to be turned over for that. ``cut`` tells that reliefs or engravings
    changed, though no edge did. ``more`` are pieces it gained, ``fewer`` how many it lost.
    """

    name: str
    title: str
    was: str
    state: State
    before: Region | None = None
    after: Region | None = None
    moved: tuple[MovedFeature, ...] = ()
    over: bool = False
    cut: bool = False
    more: tuple[str, ...] = ()
    fewer: int = 0

    @property
    def renamed(self) -> bool:
        """Whether it bore another name."""
        return bool(self.was) and self.state is not State.GONE and self.was != self.name


@dataclass(frozen=True, slots=True, kw_only=True)
class CountChange:
    """An item of a list with how many there were and are; its ``length`` in mm, 0 of no board."""

    name: str
    was: int
    now: int
    length: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetChange:
    """A sheet whose stock, range or fit changed; None where it was or is not."""

    name: str
    was: tuple[str, float, float, float] | None
    now: tuple[str, float, float, float] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class StepsChange:
    """What became of the steps, by their titles; ``order`` tells whether that changed."""

    new: tuple[str, ...] = ()
    gone: tuple[str, ...] = ()
    told: tuple[str, ...] = ()
    order: bool = False

    def __bool__(self) -> bool:
        return bool(self.new or self.gone or self.told or self.order)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReleaseChange:
    """What changed between two releases of a plan.

    ``anew`` are the pieces to cut anew by whoever has all of the older ones, ``over`` those that
    serve turned over, ``together`` sets of pieces that are cut anew together or not at all. All are
    labels of the newer release. ``apart``: the two are for no thickness in common.
    """

    plan: str
    old: str
    new: str
    parts: tuple[PartChange, ...]
    anew: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    together: tuple[tuple[str, ...], ...] = ()
    kept: tuple[str, ...] = ()
    apart: bool = False
    sheets: tuple[SheetChange, ...] = ()
    hardware: tuple[CountChange, ...] = ()
    boards: tuple[CountChange, ...] = ()
    steps: StepsChange = StepsChange()
    words: bool = False
    sheet_count: tuple[int, int] = (0, 0)
    weight: tuple[float, float] = (0.0, 0.0)

    @property
    def all_anew(self) -> bool:
        """Whether no older piece serves."""
        return bool(self.anew) and not self.kept

    @property
    def added(self) -> tuple[str, ...]:
        """The pieces that were not there: to be cut whatever else is."""
        return tuple(label for part in self.parts for label in part.more)

    @property
    def class_(self) -> Weight:
        """What the newer release is to those who have the older one."""
        if self.anew:
            return Weight.CORRECTION
        cut = any(each.state is not State.SAME or each.cut or each.fewer for each in self.parts)
        listed = self.sheets or self.hardware or self.boards or self.added
        return Weight.BETTER if cut or listed else Weight.WORDS

    @property
    def nothing(self) -> bool:
        """Whether nothing at all changed."""
        renamed = any(each.renamed for each in self.parts)
        return self.class_ is Weight.WORDS and not (self.steps or self.words or renamed)


def without_shapes(change: ReleaseChange) -> ReleaseChange:
    """Return a change without outlines, nor where features lie, for who may not see them."""
    parts = tuple(replace(each, before=None, after=None, moved=()) for each in change.parts)
    return replace(change, parts=parts)


def changes_of(records: Sequence[ReleaseRecord]) -> tuple[ReleaseChange, ...]:
    """Return what changed from each release to the next, and from each to the last one."""
    pairs = [*pairwise(records), *((each, records[-1]) for each in records[:-2])]
    return tuple(kept(change_between, old, new) for old, new in pairs)


def change_between(old: ReleaseRecord, new: ReleaseRecord) -> ReleaseChange:
    """Return what changed from one release to a newer one, decided over the range of both."""
    thicknesses = common_points(old, new)
    points = tuple((at(old, each), at(new, each)) for each in thicknesses)
    seen = points or ((old.drawn, new.drawn),)
    known = matched(old, new, seen)
    laying = Laying(old, new, known, seen)
    least = _least(old, new, known, laying) if points else None
    chosen: Mapping[str, Way | None] = least.chosen if least else dict.fromkeys(known.pieces)
    anew = tuple(label for label in new.pieces if label in chosen and chosen[label] is None)
    return ReleaseChange(
        plan=new.plan,
        old=old.version,
        new=new.version,
        parts=tuple(_parts(old, new, known, laying, chosen, seen)),
        anew=anew,
        over=tuple(label for label, way in chosen.items() if way is not None and way.over),
        together=least.together if least else (),
        kept=tuple(label for label in known.pieces if label not in anew),
        apart=not points,
        sheets=tuple(_sheets(old, new)),
        hardware=tuple(
            CountChange(name=name, was=old.hardware.get(name, 0), now=new.hardware.get(name, 0))
            for name in dict.fromkeys((*old.hardware, *new.hardware))
            if old.hardware.get(name, 0) != new.hardware.get(name, 0)
        ),
        boards=tuple(_boards(old, new)),
        steps=_steps(old, new, known),
        words=old.words != new.words,
        sheet_count=(old.sheet_count, new.sheet_count),
        weight=(old.weight, new.weight),
    )


def _least(old: ReleaseRecord, new: ReleaseRecord, known: Matched, laying: Laying) -> Kept:
    areas = {
        label: area(region_of(new.drawn.shapes[part.name]))
        for part in new.parts
        for label in part.pieces
    }
    matched_ones = set(known.joints.values())
    gone = [index for index, _ in enumerate(old.joints) if index not in matched_ones]
    return fewest(laying, areas, gone)


def _parts(
    old: ReleaseRecord,
    new: ReleaseRecord,
    known: Matched,
    laying: Laying,
    chosen: Mapping[str, Way | None],
    points: Sequence[Both],
) -> Iterator[PartChange]:
    for part in new.parts:
        was = known.parts.get(part.name, "")
        if not was:
            yield PartChange(
                name=part.name,
                title=part.title,
                was="",
                state=State.NEW,
                after=region_of(new.drawn.shapes[part.name]),
                more=part.pieces,
            )
            continue
        before = old.part(was)
        more = tuple(label for label in part.pieces if label not in known.pieces)
        fewer = len(before.pieces) - (len(part.pieces) - len(more))
        if known.is_same(part.name):
            yield PartChange(
                name=part.name,
                title=part.title,
                was=was,
                state=State.SAME,
                cut=known.cut_otherwise(old, new, part.name),
                more=more,
                fewer=fewer,
            )
            continue
        yield _changed(old, new, part.name, was, known, laying, chosen, points, more, fewer)
    there = set(known.parts.values())
    for part in old.parts:
        if part.name not in there:
            yield PartChange(
                name=part.name,
                title=part.title,
                was=part.name,
                state=State.GONE,
                before=region_of(old.drawn.shapes[part.name]),
            )


def _changed(
    old: ReleaseRecord,
    new: ReleaseRecord,
    name: str,
    was: str,
    known: Matched,
    laying: Laying,
    chosen: Mapping[str, Way | None],
    points: Sequence[Both],
    more: tuple[str, ...],
    fewer: int,
) -> PartChange:
    """Return a part that changed: the older one laid on it as it serves, or as most of it meets."""
    part = new.part(name)
    label = next((each for each in part.pieces if each in known.pieces), "")
    index = _drawn_at(new, points)
    way = chosen.get(label) or _nearest(laying, label)
    place = way.places[index] if way else HERE
    shapes = points[index]
    placings = known.placings.get(name)
    return PartChange(
        name=name,
        title=part.title,
        was=was,
        state=State.MIRRORED if placings else State.CHANGED,
        before=_placed(shapes[0].shapes[was], place),
        after=region_of(shapes[1].shapes[name]),
        moved=tuple(_moved(old, new, name, known, points[index], place)),
        over=bool(way and way.over),
        more=more,
        fewer=fewer,
    )


def _drawn_at(new: ReleaseRecord, points: Sequence[Both]) -> int:
    """Return which of the points is nearest to how the newer release is drawn."""
    wanted = new.drawn.thickness
    apart = [
        math.fsum(abs(there.thickness[name] - mm) for name, mm in wanted.items())
        for _, there in points
    ]
    return apart.index(min(apart))


def _nearest(laying: Laying, label: str) -> Way | None:
    """Return the way to lay a piece down in which most of its features lie where they are now."""
    if not label:
        return None

    def meeting(way: Way) -> int:
        return sum(laying.meets(joint, {label: way}) for joint in laying.joints_of(label))

    flat = [each for each in laying.ways(label) if not each.over] or list(laying.ways(label))
    return max(flat, key=meeting, default=None)


def _placed(shape: Shape, place: Rigid) -> Region:
    """Return what goes through of a shape that is laid down so, turned over where it is."""
    flat = region_of(shape)
    return Region(_put(flat.outer, place), tuple(_put(each, place) for each in flat.openings))


def _put(contour: Contour, place: Rigid) -> Contour:
    spots = [place.point((x, y, 0.0)) for x, y, _ in contour.vertices]
    bulges = [bulge for _, _, bulge in contour.vertices]
    if place.z[2] < 0:  # it runs the other way; each edge keeps its bulge
        spots.reverse()
        bulges = [*reversed(bulges[:-1]), bulges[-1]]
    return Contour(tuple((x, y, b) for (x, y, _), b in zip(spots, bulges, strict=True)))


def _moved(
    old: ReleaseRecord,
    new: ReleaseRecord,
    name: str,
    known: Matched,
    point: Both,
    place: Rigid,
) -> Iterator[MovedFeature]:
    """Yield the mating features of a part that lie elsewhere than they did, each once."""
    seen = set()
    for joint, was in known.joints.items():
        now, then = new.joints[joint], old.joints[was]
        for end, meant in enumerate((now.a, now.b)):
            if part_of(new, meant.piece).name != name:
                continue
            before = point[0].pairs[was]
            after = point[1].pairs[joint]
            for number in range(min(len(before), len(after))):
                there = rigid_of(after[number][end].frame).origin
                lay = place.point(rigid_of(before[number][end].frame).origin)
                if length(between((*lay[:2], 0.0), (*there[:2], 0.0))) <= _MOVED:
                    continue
                spot = (round(there[0], 2), round(there[1], 2))
                if spot not in seen:
                    seen.add(spot)
                    feature = meant.feature or (then.a, then.b)[end].feature
                    yield MovedFeature(
                        name=feature, was=lay[:2], now=there[:2], size=max(after[number][end].size)
                    )


def _sheets(old: ReleaseRecord, new: ReleaseRecord) -> Iterator[SheetChange]:
    before = {each.name: (each.stock, each.least, each.most, each.fit) for each in old.sheets}
    after = {each.name: (each.stock, each.least, each.most, each.fit) for each in new.sheets}
    for name in dict.fromkeys((*before, *after)):
        if before.get(name) != after.get(name):
            yield SheetChange(name=name, was=before.get(name), now=after.get(name))


def _boards(old: ReleaseRecord, new: ReleaseRecord) -> Iterator[CountChange]:
    before = {(each.name, each.length): each.count for each in old.boards}
    after = {(each.name, each.length): each.count for each in new.boards}
    for name, mm in dict.fromkeys((*before, *after)):
        was, now = before.get((name, mm), 0), after.get((name, mm), 0)
        if was != now:
            yield CountChange(name=name, was=was, now=now, length=mm)


def _steps(old: ReleaseRecord, new: ReleaseRecord, known: Matched) -> StepsChange:
    called = {was: now for now, was in known.pieces.items()} | {
        was: now for now, was in known.parts.items()
    }
    before = {each.title: each for each in old.steps}
    after = {each.title: each for each in new.steps}
    both = [title for title in after if title in before]
    order = [title for title in before if title in after] != both
    told = [
        title
        for title in both
        if before[title].words != after[title].words
        or [called.get(each, each) for each in before[title].add] != [*after[title].add]
    ]
    return StepsChange(
        new=tuple(title for title in after if title not in before),
        gone=tuple(title for title in before if title not in after),
        told=tuple(told),
        order=order,
    )
