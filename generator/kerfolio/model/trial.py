"""Logged tests and jobs: settings in, outcome out; and what readers measured and sent home."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from statistics import median

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.outcome import Feel, Grade, Operation, Outcome
from kerfolio.model.plan import Photo
from kerfolio.model.prose import Prose
from kerfolio.model.statement import Named


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """Sheets bought together: their ``name``, what a caliper said at several places (mm) and the
    moisture in percent of the dry mass.
    """

    name: str = ""
    readings: tuple[float, ...] = ()
    moisture: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent:
    """What a job took: minutes as reckoned and as they were, hours of all work, money.

    ``metres`` are those that the cutter cut.
    """

    metres: float | None = None
    reckoned_minutes: float | None = None
    minutes: float | None = None
    hours: float | None = None
    money: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """One logged test, or a ``job``; anything not known stays None or empty. Lengths mm.

    ``id`` never changes: it is the entry's address. ``public`` lets the plan's page show it.
    ``passes`` are how deep each pass goes below the one before. ``fit`` is the clearance on each
    side between mating faces, ``went`` how the joint went together with it. ``climb`` tells whether
    the cutter ran with the feed (climb) or against it (conventional).
    """

    id: str = ""
    date: date
    title: str = ""
    job: bool = False
    plan: Named | None = None
    release: str = ""
    part: Named | None = None
    stock: Named | None = None
    thickness: float | None = None
    batch: Batch | None = None
    cutter: Named | None = None
    operation: Operation | None = None
    speed_rpm: float | None = None
    feed_mm_per_min: float | None = None
    plunge_mm_per_min: float | None = None
    passes: tuple[float, ...] = ()
    climb: bool | None = None
    workholding: str = ""
    extraction: str = ""
    fit: float | None = None
    went: Feel | None = None
    true_cut: float | None = None
    outcome: Outcome = field(default_factory=Outcome)
    spent: Spent = field(default_factory=Spent)
    finishes: tuple[str, ...] = ()
    glues: tuple[str, ...] = ()
    mistakes: tuple[str, ...] = ()
    repairs: tuple[str, ...] = ()
    public: bool = False
    photo: Photo | None = None
    text: Prose = field(default_factory=Prose)
    place: Place = NOWHERE

    @property
    def grade(self) -> Grade | None:
        """The verdict, None where there is none yet."""
        return self.outcome.grade

    @property
    def first_pass(self) -> float | None:
        """How deep the first pass went, mm."""
        return self.passes[0] if self.passes else None

    @property
    def thick(self) -> float | None:
        """The sheet's thickness in mm: as stated, else the middle of the readings."""
        if self.thickness is not None or self.batch is None or not self.batch.readings:
            return self.thickness
        return median(self.batch.readings)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """What a reader measured and sent home: no name, nothing else. Lengths mm.

    ``thickness`` is what their sheet measured, ``true_cut`` what their cutter really cuts, ``fit``
    the clearance of the files they took, ``went`` how the joints went together.
    """

    id: str = ""
    date: date
    plan: Named
    release: str = ""
    sheet: str = ""
    thickness: float | None = None
    true_cut: float | None = None
    fit: float | None = None
    went: Feel | None = None
    grade: Grade | None = None
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """A file of the log, or all of them: ``trials`` are tests and jobs."""

    trials: tuple[Trial, ...] = ()
    sent: tuple[Sent, ...] = ()

    @property
    def entries(self) -> tuple[Trial | Sent, ...]:
        """All that has an id."""
        return (*self.trials, *self.sent)
