"""Logged tests and jobs: settings in, outcome out."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.plan import Photo
from kerfolio.model.prose import Prose
from kerfolio.model.statement import Named


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """One logged test or job; anything not known stays None. Lengths mm.

    ``outcome`` is one of the ordinal grades ``clean``, ``light fuzz``, ``fuzz to sand``,
    ``chipped``, ``burned``; ``public`` lets the plan's page show it.
    """

    date: date
    title: str
    plan: Named | None = None
    stock: Named | None = None
    thickness: float | None = None
    cutter: Named | None = None
    speed_rpm: float | None = None
    feed_mm_per_min: float | None = None
    plunge_mm_per_min: float | None = None
    passes: tuple[float, ...] = ()
    fit: float | None = None
    outcome: str = ""
    public: bool = False
    photo: Photo | None = None
    text: Prose = field(default_factory=Prose)
    place: Place = NOWHERE
