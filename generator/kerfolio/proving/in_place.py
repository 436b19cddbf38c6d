"""Fastenings where they stand, at every point that a plan is put together at."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.building import Build, Fitted
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.assembly.fastening_axis import Entry
from kerfolio.basis.finding import Axial, Beside, Finding, Measured
from kerfolio.basis.measures import length
from kerfolio.basis.said import Words, said, strung
from kerfolio.geometry.rigid import Vector
from kerfolio.model.fastening import DOWELLED
from kerfolio.proving.folding import at
from kerfolio.proving.marks import about
from kerfolio.settling.fastened import Seat
from kerfolio.settling.settled import FitVariant, SettledPlan

SLANT = 1.0
"""Degrees between two axes that are no accident of arithmetic (common practice)."""

APART = 5.0
"""What is between two seats, mm, where something thin may lie between their pieces: a washer, felt
(our own choice)."""

_LESS_IS_WORSE = ("distance", "inside", "wood")
"""What quantities are called of which there is too little."""

_SEEN = 0.05
"""A part of a distance is told, mm, where it is no less."""


Line = tuple[tuple[float, float], tuple[float, float], str]
"""What is measured: from where to where, along an axis and across it, mm, and a word for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InPlace:
    """A fastening as it stands at one point of the range, with the plan and its pieces there."""

    posed: PosedFastening
    settled: SettledPlan
    pieces: tuple[PosedPiece, ...]

    @property
    def item(self) -> str:
        """What it is of, as the stock names it."""
        return self.posed.settled.item.name

    def pose(self, seat: Seat) -> PosedPiece:
        """Return the piece that a seat is in."""
        return next(each for each in self.pieces if each.label == seat.piece)

    def about(
        self,
        seat: Seat,
        line: Line | None = None,
        *,
        aside: Vector | None = None,
        flat: bool = False,
        others: tuple[str, ...] = (),
    ) -> Beside:
        """Return what a finding on a seat has besides its words.

        ``line`` is what its picture measures, ``aside`` the way across the axis, in the world, or
        ``flat`` in the plane of the last piece (see ``Axial``).
        """
        measured = Measured(a=line[0], b=line[1], word=line[2]) if line else None
        axial = Axial(
            place=self.posed.settled.stated.place,
            number=self.posed.settled.number,
            at=(line[0][0] + line[1][0]) / 2 if line else self.posed.start_of(seat),
            measured=measured,
            aside=aside,
            flat=flat,
            others=others,
            variant=self.settled.variant.label,
        )
        return {**about_seat(self.settled, seat), "axial": axial}


def about_seat(settled: SettledPlan, seat: Seat) -> Beside:
    """Return what a finding on a seat has besides its words, wherever its piece is."""
    if seat.part is None or seat.feature is None:
        return {"subject": seat.name}
    return about(settled, seat.part, seat.feature)


def along(a: float, b: float, word: str) -> Line:
    """Return what is measured along an axis, mm."""
    return (a, 0.0), (b, 0.0), word


def across(at: float, wide: float, word: str) -> Line:
    """Return what is measured across an axis, as much to either side of it, mm."""
    return (at, -wide / 2), (at, wide / 2), word


def beside(at: float, off: float, word: str) -> Line:
    """Return what is measured from an axis to one side, mm."""
    return (at, 0.0), (at, off), word


Look = Callable[[InPlace], Iterator[Finding]]


def at_points(build: Build, look: Look, *, slanted: bool = False) -> Iterator[Finding]:
    """Yield what is found of every fastening in its place, each remark once over the range.

    Of pieces whose joints do not agree nothing is asked, and where axes are ``slanted`` to each
    other only when that is the question: that has been told.
    """

    def looked(fitted: Fitted, off: Collection[str]) -> Iterator[Finding]:
        pieces = fitted.together.assembled.pieces
        for posed in fitted.fastenings:
            straight = all(
                each.tilt <= SLANT and abs(gap_before(posed, each)) <= APART
                for each in posed.entries
            )
            if (straight or slanted) and not any(each in off for each in posed.settled.pieces):
                yield from look(InPlace(posed=posed, settled=fitted.settled, pieces=pieces))

    yield from over_range(build, looked)


def over_range(
    build: Build, look: Callable[[Fitted, Collection[str]], Iterator[Finding]]
) -> Iterator[Finding]:
    """Yield what is found at the points a plan is put together at, each remark once, at its worst.

    ``look`` is given the pieces whose joints do not agree, too: of them nothing is to be asked.
    """
    off = {piece for gap in build.drawn.gaps for piece in (gap.pairing.a, gap.pairing.b)}
    tried = [each.together.assembled.variant for each in build.fitted]
    found = [
        (variant, each)
        for variant, fitted in zip(tried, build.fitted, strict=True)
        for each in look(fitted, off)
    ]
    yield from worst(found, tried)


def worst(
    found: Iterable[tuple[FitVariant, Finding]], tried: Sequence[FitVariant]
) -> Iterator[Finding]:
    """Yield one remark of those that differ only in their numbers, where the first tells most.

    It names the thickness where not all of them are concerned.
    """
    groups: dict[tuple[str, ...], list[tuple[FitVariant, Finding]]] = {}
    for point, finding in found:
        groups.setdefault(finding.identity, []).append((point, finding))
    for group in groups.values():
        point, finding = max(group, key=lambda each: _size(each[1]))
        concerned = {each.label for each, _ in group}
        yield finding if len(concerned) == len(tried) else at(finding, point)


def _size(finding: Finding) -> float:
    """Return how bad a finding is by the first number that it tells."""
    first = next(iter(finding.facts), None)
    if first is None:
        return 0.0
    return -first.value if first.name in _LESS_IS_WORSE else first.value


def seat_before(posed: PosedFastening, entry: Entry) -> Seat:
    """Return the seat that a fastening goes through before it enters another."""
    seats = [each.seat for each in posed.entries]
    place = seats.index(entry.seat)
    return seats[place - 1] if place else posed.settled.first


def gap_before(posed: PosedFastening, entry: Entry) -> float:
    """Return how far a seat begins behind the end of the one before it, mm; 0 where none tells.

    A plain side begins where the axis meets it; what leaves an edge begins at that.
    """
    before = seat_before(posed, entry)
    if posed.settled.kind is DOWELLED or entry.seat.side or not before.is_hole or not before.part:
        return 0.0
    start = posed.start_of(before)
    gap = entry.along - start - before.part.thickness
    return min(gap, gap + before.sunk, key=abs)  # the head may be on the other face


def play_of(seat: Seat, thread: float) -> float:
    """Return how far from its middle a shank may lie in a seat, mm: none where it cuts a thread."""
    if seat.is_pilot or seat.diameter is None:
        return 0.0
    return max(0.0, (seat.diameter - thread) / 2)


def told_off(there: InPlace, entry: Entry) -> Words:
    """Return how far, and which way as its part is drawn, a seat lies off: ``2 mm too low``."""
    pose = there.pose(entry.seat).pose
    return off_words(pose.inverse.vector(entry.aside))


def off_words(aside: Vector) -> Words:
    """Return the parts of a distance in a part's frame in words."""
    ways = (("far right", "far left"), ("high", "low"), ("near the show face", "near the back"))
    told = [
        said("{} too " + ways[axis][0 if mm > 0 else 1], length("off", abs(mm)))
        for axis, mm in enumerate(aside)
        if abs(mm) >= _SEEN
    ]
    return strung(told, " and ") if told else said("{} off", length("off", 0.0))
