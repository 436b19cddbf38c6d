"""Fastenings settled: where each of them sits in the pieces it joins, and what all of them take."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import hypot

from kerfolio.basis.names import split_feature
from kerfolio.basis.said import Words, named, stated_name
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Vector
from kerfolio.model.fastening import (
    BRACKETED,
    CLAMPED,
    CROSS_NUT,
    INTO_WALL,
    Fastening,
    FasteningKind,
)
from kerfolio.model.feature import EdgeBore, Hole
from kerfolio.model.feature_kind import BORE, HOLE
from kerfolio.model.plan import Assembly, HardwareUse, Plan, Step
from kerfolio.model.statement import Named
from kerfolio.model.stock import HardwareStock, Stock
from kerfolio.settling.settled import SettledBoard, SettledFeature, SettledPart, SettledPlan

SHOW = "show"
FACES = (SHOW, "back")
"""The faces of a piece, as places of boards and of clamps name them."""

OUTWARD: Mapping[str, Point] = {
    "left": (-1.0, 0.0),
    "right": (1.0, 0.0),
    "top": (0.0, 1.0),
    "bottom": (0.0, -1.0),
}
"""Where the sides of a part look, by the names that ends of joints and fastenings have for them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """What a fastening goes through or into: a hole, a bore, a side, a board or the wall.

    ``feature`` is None for all but holes and bores, ``part`` for a board and the wall. ``face``
    (``show``, ``back``) and ``side`` are what a clamp presses on. ``for_item``
    is what the feature is for, by its name in the stock, ``is_pilot`` that a screw cuts its thread
    into it, ``guided`` that something leads the bit that bores it.
    """

    name: str
    piece: str
    part: SettledPart | None
    feature: SettledFeature | None = None
    side: str = ""
    face: str = ""
    board: SettledBoard | None = None
    for_item: str = ""
    is_pilot: bool = False
    guided: bool = False

    @property
    def is_hole(self) -> bool:
        """Whether it is a hole in a face."""
        return self.feature is not None and self.feature.kind is HOLE

    @property
    def is_bore(self) -> bool:
        """Whether it is a bore into an edge."""
        return self.feature is not None and self.feature.kind is BORE

    @property
    def into_edge(self) -> bool:
        """Whether it goes into an edge, with a bore or without one."""
        return self.is_bore or bool(self.side)

    @property
    def is_wall(self) -> bool:
        """Whether it is the wall that the whole is fixed to."""
        return self.part is None and self.board is None

    @property
    def called(self) -> Words:
        """What it is called in a remark."""
        return named(self.name)

    @property
    def diameter(self) -> float | None:
        """How wide it is, mm; None where nothing is bored."""
        return self.feature.width.value if self.feature else None

    @property
    def sunk(self) -> float:
        """The depth of its counterbore on the show face, mm."""
        wider = self.feature.counterbore if self.feature else None
        return wider[1].value if wider else 0.0

    @property
    def mouth(self) -> Vector:
        """Where a bore begins, or a hole on the show face, in the part's frame, mm."""
        assert self.part is not None
        assert self.feature is not None
        x, y = self.feature.at
        level = self.feature.level
        return x, y, level.value if level else self.part.thickness

    @property
    def inward(self) -> Vector:
        """The way into it, in the part's frame: of a hole from the show face to the back."""
        if self.side:
            x, y = OUTWARD[self.side]
            return -x, -y, 0.0
        assert self.feature is not None
        if self.feature.kind is HOLE:
            return 0.0, 0.0, -1.0
        (x, y) = self.feature.direction
        return -x, -y, 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledFastening:
    """One fastening: what it is of, and the seats it goes through, that of its head first.

    ``number`` counts from 1 where its statement stands for several. ``cross`` is the hole that a
    barrel nut lies in, ``at`` where a clamp presses, mm.
    """

    stated: Fastening
    number: int
    item: HardwareStock
    seats: tuple[Seat, ...]
    at: Point | None = None
    nut: HardwareStock | None = None
    washer: HardwareStock | None = None
    under_nut: HardwareStock | None = None
    by: HardwareStock | None = None
    cross: Seat | None = None

    @property
    def kind(self) -> FasteningKind:
        """The kind of the fastening."""
        return self.stated.kind

    @property
    def under_head(self) -> str:
        """The piece that its head bears on, or that lies under the board which it bears on."""
        return self.first.piece or next(iter(self.pieces), "")

    @property
    def first(self) -> Seat:
        """The seat of its head."""
        return self.seats[0]

    @property
    def last(self) -> Seat:
        """The seat that it ends in."""
        return self.seats[-1]

    @property
    def taken(self) -> tuple[Seat, ...]:
        """Its seats, and the hole of its barrel nut."""
        return self.seats if self.cross is None else (*self.seats, self.cross)

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces it joins, without boards."""
        return tuple(dict.fromkeys(each.piece for each in self.seats if each.piece))

    @property
    def items(self) -> tuple[HardwareStock, ...]:
        """What it takes, one of each."""
        found = (self.item, self.nut, self.washer, self.under_nut)
        return tuple(each for each in found if each is not None)


def is_meant(name: str, wanted: str) -> bool:
    """Tell whether a feature is meant by a name: its own, or that of its set without a number."""
    return name == wanted or (
        name.startswith(f"{wanted}.") and name[len(wanted) + 1 :].replace(".", "").isdigit()
    )


def fastenings_of(settled: SettledPlan) -> tuple[SettledFastening, ...]:
    """Return every fastening of a settled plan, sets paired by their order.

    One that names what is not there, or sets that do not pair, is left to the rules.
    """
    found = _Finder(settled.plan, settled.stock, settled.parts, settled.boards, settled.pressed)
    return tuple(each for stated in settled.plan.fastenings for each in found.settled(stated))


def seats_meant(stated: Fastening, settled: SettledPlan) -> tuple[tuple[Seat, ...], ...]:
    """Return for each of ``joins`` the seats that it means; none where it means nothing."""
    found = _Finder(settled.plan, settled.stock, settled.parts, settled.boards)
    return tuple(found.seats(each, stated.kind) for each in stated.joins)


def empty_seats(settled: SettledPlan) -> tuple[Seat, ...]:
    """Return the holes and bores of all pieces that no fastening goes through or into."""
    found = _Finder(settled.plan, settled.stock, settled.parts, settled.boards)
    taken = {each.name for one in fastenings_of(settled) for each in one.taken}
    every = (
        each
        for part in settled.parts
        for piece in part.pieces
        for each in found.all_of(piece.label, part)
    )
    return tuple(each for each in every if each.name not in taken)


class _Finder:
    """Finds the seats of fastenings among the parts and boards of one plan."""

    def __init__(
        self,
        plan: Plan,
        stock: Stock,
        parts: Sequence[SettledPart],
        boards: Sequence[SettledBoard],
        pressed: Sequence[tuple[Fastening, Point]] = (),
    ) -> None:
        self._stock, self._pressed = stock, dict(pressed)
        self._pieces = {piece.label: part for part in parts for piece in part.pieces}
        self._boards = {each.use.name: each for each in boards}
        self._stated = {
            (part.name, each.name): each.cutting
            for part in plan.parts
            for each in part.features
            if isinstance(each.cutting, Hole | EdgeBore)
        }

    def settled(self, stated: Fastening) -> Iterator[SettledFastening]:
        """Yield what a statement stands for, one for each place."""
        item = self._stock.item(stated.item.name)
        known = ((self._stock.item(each.name), kinds) for each, kinds in stated.parts)
        if any(found is None or found.kind not in kinds for found, kinds in known):
            return
        sets = [self.seats(each, stated.kind) for each in stated.joins]
        counts = {len(each) for each in sets if len(each) != 1}
        if item is None or 0 in counts or len(counts) > 1:
            return
        for index in range(max(counts, default=1)):
            seats = tuple(each[index] if len(each) > 1 else each[0] for each in sets)
            nut = self._item(stated.nut)
            cross = self._cross(seats, nut)
            if cross is not None and cross in seats and len(seats) > 1:
                seats = tuple(each for each in seats if each != cross)
            yield SettledFastening(
                stated=stated,
                number=index + 1,
                item=item,
                seats=seats,
                at=self._pressed.get(stated),
                nut=nut,
                washer=self._item(stated.washer),
                under_nut=self._item(stated.under_nut),
                by=self._item(stated.by),
                cross=cross,
            )

    def seats(self, end: Named, kind: FasteningKind) -> tuple[Seat, ...]:
        """Return the seats that a name means, in the plan's order."""
        if end.name in self._boards:
            return (Seat(name=end.name, piece="", part=None, board=self._boards[end.name]),)
        piece, wanted = split_feature(end.name, self._pieces)
        if not piece and end.name == INTO_WALL:
            return (Seat(name=INTO_WALL, piece="", part=None),)
        if not piece:
            return ()
        part = self._pieces[piece]
        found = tuple(
            self._seat(piece, part, each) for each in part.features if is_meant(each.name, wanted)
        )
        if found:
            return found
        if kind is CLAMPED and wanted in FACES:
            return (Seat(name=end.name, piece=piece, part=part, face=wanted),)
        is_side = wanted in OUTWARD
        return (Seat(name=end.name, piece=piece, part=part, side=wanted),) if is_side else ()

    def all_of(self, piece: str, part: SettledPart) -> Iterator[Seat]:
        """Yield the seats in a piece of a part."""
        for each in part.features:
            if each.kind in (HOLE, BORE):
                yield self._seat(piece, part, each)

    def _seat(self, piece: str, part: SettledPart, feature: SettledFeature) -> Seat:
        stated = self._stated.get((part.name, stated_name(feature.name)))
        named_item = (stated.for_ or stated.pilot) if stated else None
        return Seat(
            name=f"{piece}.{feature.name}",
            piece=piece,
            part=part,
            feature=feature,
            for_item=named_item.name if named_item else "",
            is_pilot=stated is not None and stated.pilot is not None,
            guided=isinstance(stated, EdgeBore) and stated.guided,
        )

    def _item(self, stated: Named | None) -> HardwareStock | None:
        return self._stock.item(stated.name) if stated else None

    def _cross(self, seats: Sequence[Seat], nut: HardwareStock | None) -> Seat | None:
        """Return the hole of a barrel nut: the one named last, else the nearest that is for it."""
        last = seats[-1]
        if nut is None or nut.kind != CROSS_NUT or last.part is None:
            return None
        if last.is_hole and len(seats) > 1 and last.piece == seats[-2].piece:
            return last
        holes = [
            self._seat(last.piece, last.part, each)
            for each in last.part.features
            if each.kind is HOLE
        ]
        fitting = [each for each in holes if each.for_item == nut.name]
        if not last.is_bore:
            return fitting[0] if len(fitting) == 1 else None
        return min(fitting, key=lambda each: _beside(each, last), default=None)


def _beside(hole: Seat, bore: Seat) -> float:
    """Return how far the middle of a hole lies from the axis of a bore, as far as it goes, mm."""
    assert hole.feature is not None
    assert bore.feature is not None
    (x, y), (ux, uy) = bore.feature.at, bore.feature.direction
    dx, dy = hole.feature.at[0] - x, hole.feature.at[1] - y
    ahead = -(dx * ux + dy * uy)
    reached = min(max(ahead, 0.0), bore.feature.length.value)
    return hypot(ahead - reached, dx * uy - dy * ux)


def with_fastened(
    plan: Plan,
    stock: Stock,
    parts: Sequence[SettledPart],
    boards: Sequence[SettledBoard],
) -> Plan:
    """Return a plan whose steps tell what its fastenings take in them.

    A fastening is done in the step it names, else in the first after which all of its pieces are
    there; what no step tells is the plan's own. The rest of the plan is as it was stated.
    """
    if not any(each.fastenings for each in plan.made):
        return plan
    found = _Finder(plan, stock, parts, boards)
    left: Counter[Named] = Counter()
    things = []
    for thing in plan.made:
        steps, own = _told_in(thing, found)
        things.append(replace(thing, steps=steps))
        for named_item, count in own.items():
            left[named_item] += count * thing.count
    return replace(
        plan,
        assemblies=tuple(things) if plan.is_set else (),
        steps=tuple(step for each in things for step in each.steps),
        fastened=_uses(left),
    )


def _told_in(thing: Assembly, found: _Finder) -> tuple[tuple[Step, ...], Counter[Named]]:
    """Return the steps of a thing with what they fasten, and what none of them does."""
    counts: list[Counter[Named]] = [Counter() for _ in thing.steps]
    left: Counter[Named] = Counter()
    for stated in thing.fastenings:
        for each in found.settled(stated):
            number = step_number(each, thing.steps)
            taken = left if number is None else counts[number]
            for item, of in _taken(each):
                taken[Named(item.name, stated.place)] += of
    steps = (
        replace(step, fastened=_uses(count))
        for step, count in zip(thing.steps, counts, strict=True)
    )
    return tuple(steps), left


def _taken(each: SettledFastening) -> Iterator[tuple[HardwareStock, int]]:
    """Yield what a fastening takes, with how many: a bracket once, its screws for each hole."""
    if each.by is not None:
        yield each.by, sum(seat.feature is not None for seat in each.seats)
    if each.number == 1 or each.kind not in (BRACKETED, CLAMPED):
        for item in each.items:
            yield item, 1


def step_number(fastening: SettledFastening, steps: Sequence[Step]) -> int | None:
    """Return in which step, from 0, a fastening is done; None where there is none."""
    if not steps:
        return None
    if fastening.stated.step is not None:
        titles = [each.title for each in steps]
        wanted = fastening.stated.step.name
        return titles.index(wanted) if wanted in titles else len(steps) - 1
    added = {each.name: number for number, step in enumerate(steps) for each in step.add}
    known = [added[piece] for piece in fastening.pieces if piece in added]
    return max(known) if known else len(steps) - 1


def _uses(counts: Counter[Named]) -> tuple[HardwareUse, ...]:
    """Return lines of hardware, one for each item; the first that names it gives the place."""
    merged: dict[str, HardwareUse] = {}
    for item, count in counts.items():
        before = merged.get(item.name)
        first = before.item if before else item
        total = count + (before.count if before else 0)
        merged[item.name] = HardwareUse(item=first, count=total, place=first.place)
    return tuple(merged.values())
