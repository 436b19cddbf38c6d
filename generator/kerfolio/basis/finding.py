"""What is wrong, doubtful or worth knowing in a maker's files, as plain values."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TypedDict, Unpack

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Quantity, Text, facts, skeleton, told


class Severity(StrEnum):
    """How much a finding weighs: an error stops a publish, the others do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Ring:
    """A circle round a spot in a part's own frame, mm."""

    x: float
    y: float
    r: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Where on a part a finding is: its rings, at the fit variant of that label.

    ``at`` is what the variant is called in remarks.
    """

    part: str
    rings: tuple[Ring, ...]
    variant: str
    at: Text


Spot = tuple[float, float]
Run = tuple[Spot, ...]
"""Points one after the other in a part's own frame, mm; the first is not repeated at the end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sketch:
    """What is known of the shape of a part that could not be made: closed runs.

    ``outline`` is that without features, ``wrong`` what the finding is about, or ``spots`` where it
    is, ``beside`` the other features.
    """

    part: str
    outline: Run
    wrong: tuple[Run, ...] = ()
    beside: tuple[Run, ...] = ()
    spots: tuple[Spot, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What a finding measures: from ``a`` to ``b``, mm, and a word for it (``off``, ``gap``)."""

    a: tuple[float, ...]
    b: tuple[float, ...]
    word: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """Pieces of which a finding says how they meet, at the fit variant of that label.

    ``pieces`` are those it is about, ``others`` what they meet; empty ``others`` are all the rest.
    ``way`` is the direction in the world, unit, in which the first ones cannot go, or are pushed;
    without one it is about the place where they meet. ``grounded``: it is about how they lie or
    stand on the floor, ``measured`` in the world.
    """

    pieces: tuple[str, ...]
    others: tuple[str, ...] = ()
    way: tuple[float, float, float] | None = None
    grounded: bool = False
    measured: Measured | None = None
    variant: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Axial:
    """What a finding says along the axis of a fastening, or of a bore alone, at a fit variant.

    The fastening is the one stated at ``place``, its ``number``; 0 is the bore of that name
    (``rail.bore``). ``at`` is how far along the axis it is, from where the head bears or a bore
    begins; ``measured`` likewise: along, and across. ``aside`` is which way across is, in the world
    (of a bore alone in its part); without it that is along the thickness of the last piece, or
    ``flat`` in its plane. ``others`` are pieces in the way.
    """

    place: Place = NOWHERE
    number: int = 0
    bore: str = ""
    at: float = 0.0
    measured: Measured | None = None
    aside: tuple[float, float, float] | None = None
    flat: bool = False
    others: tuple[str, ...] = ()
    variant: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One remark on a maker's input.

    ``rule`` is the id of the check (``unknown-key``); ``words`` quote what was found and stay
    short; ``counsel`` says what to write instead. ``subject`` is the thing of the plan it is
    about, as the plan states it (``side.rail-slot``, ``side.left``, ``ply``), empty where there is
    none. ``more`` are quantities besides those in the words. ``mark`` shows where on a part it is,
    ``sketch`` the same where that could not be made, ``meeting`` which pieces do not go together,
    ``axial`` how a fastening or a bore sits.
    ``silenced`` is the maker's reason for not wanting to hear it, empty where it is heard.
    ``count`` says how many it stands for (see ``basis/shortened.py``).
    ``unit`` (``mm`` or ``in``) is the plan's, set by ``in_unit``. All who show a finding show its
    ``message`` and ``advice``: the words told in that unit.
    """

    rule: str
    words: Text
    counsel: Text = ""
    severity: Severity = Severity.ERROR
    place: Place = NOWHERE
    subject: str = ""
    more: tuple[Quantity, ...] = ()
    mark: Mark | None = None
    sketch: Sketch | None = None
    meeting: Meeting | None = None
    axial: Axial | None = None
    silenced: str = ""
    count: int = 1
    unit: str = "mm"

    @property
    def message(self) -> str:
        """What was found, in the plan's unit."""
        return told(self.words, Reader(unit=self.unit))

    @property
    def advice(self) -> str:
        """What to write instead, in the plan's unit."""
        return told(self.counsel, Reader(unit=self.unit))

    @property
    def facts(self) -> tuple[Quantity, ...]:
        """All its quantities in their base units, in the order told."""
        return (*facts(self.words, self.counsel), *self.more)

    @property
    def identity(self) -> tuple[str, ...]:
        """What findings share that differ only in their numbers and in the copy they name."""
        place = (self.place.file, str(self.place.line), str(self.place.column))
        return (self.rule, self.severity, *place, self.subject, skeleton(self.words))

    def __str__(self) -> str:
        tail = f"\n    {self.advice}" if self.advice else ""
        return f"{self.place}: {self.severity}: {self.message} [{self.rule}]{tail}"


class Beside(TypedDict, total=False):
    """What a finding may have besides its words (see ``Finding``)."""

    mark: Mark | None
    sketch: Sketch | None
    meeting: Meeting | None
    axial: Axial | None
    subject: str
    more: tuple[Quantity, ...]


def error(
    rule: str, words: Text, place: Place, advice: Text = "", **beside: Unpack[Beside]
) -> Finding:
    """Return a finding that stops a publish."""
    return Finding(rule=rule, words=words, counsel=advice, place=place, **beside)


def warning(
    rule: str, words: Text, place: Place, advice: Text = "", **beside: Unpack[Beside]
) -> Finding:
    """Return a finding that a maker should look at but may publish with."""
    return replace(error(rule, words, place, advice, **beside), severity=Severity.WARNING)


def note(
    rule: str, words: Text, place: Place, advice: Text = "", **beside: Unpack[Beside]
) -> Finding:
    """Return a finding that only informs."""
    return replace(error(rule, words, place, advice, **beside), severity=Severity.NOTE)


def in_unit(findings: Iterable[Finding], unit: str) -> tuple[Finding, ...]:
    """Return findings told in a plan's unit, ``mm`` or ``in``."""
    return tuple(replace(each, unit=unit) for each in findings)


def has_errors(findings: Iterable[Finding]) -> bool:
    """Tell whether any finding stops a publish."""
    return any(finding.severity is Severity.ERROR for finding in findings)


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort by place, then rule, and drop exact repeats."""
    unique = dict.fromkeys(findings)
    return tuple(sorted(unique, key=lambda f: (f.place, f.rule, f.message)))
