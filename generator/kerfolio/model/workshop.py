"""A whole workshop as stated: who publishes, its stock, plans, log and pages."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from decimal import Decimal

from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import NOWHERE, Place
from kerfolio.basis.reader import Reader
from kerfolio.model.carrying import Carries
from kerfolio.model.circle import Circle
from kerfolio.model.consumable import Consumable
from kerfolio.model.hand_bore import HandBore
from kerfolio.model.look import Look
from kerfolio.model.plan import Plan
from kerfolio.model.play import Play
from kerfolio.model.prose import Prose
from kerfolio.model.router import Router
from kerfolio.model.sending import Sending
from kerfolio.model.statement import Amount
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Sent, Trial

_TAG = re.compile(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page of the maker's own: ``name`` is its file's stem; ``order`` its place in the menu."""

    name: str
    title: str
    text: Prose
    order: int = 100
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Identity:
    """What ``workshop.yaml`` states. ``units_first`` mm or in; ``paper`` a4 or letter.

    ``machine_hour`` is what an hour of the router costs, in the workshop's currency;
    ``relief_extra`` the extra of plans whose relief states none; ``play`` what its joints call
    tight and loose, ``hand_bore`` how far its bores by hand may be off. ``bed`` are the sides of
    its machine's bed in mm, None where it states none, ``machine`` what that can do; ``carries`` is
    what can be taken home from a yard. ``keys`` is the folder that circles' keys are kept in, as
    written; empty for the usual one. ``send`` is where its site goes live.
    """

    title: str
    maker: str
    tagline: str = ""
    base_url: str = ""
    contact: str = ""
    units_first: str = "mm"
    cut_files: tuple[str, ...] = ()
    licence: str = ""
    currency: str = "EUR"
    paper: str = "a4"
    language: str = "en"
    circles: tuple[Circle, ...] = ()
    keys: str = ""
    send: Sending = field(default_factory=Sending)
    machine_hour: Decimal | None = None
    relief_extra: Amount | None = None
    play: Play = field(default_factory=Play)
    hand_bore: HandBore = field(default_factory=HandBore)
    bed: tuple[float, float] | None = None
    machine: Router = field(default_factory=Router)
    carries: Carries = field(default_factory=Carries)
    consumables: tuple[Consumable, ...] = ()
    welcome: Prose = field(default_factory=Prose)
    look: Look = field(default_factory=Look)
    place: Place = NOWHERE

    def cut_files_of(self, plan: Plan) -> tuple[str, ...]:
        """Return the units that a plan's cut files come in besides mm: its own, else ours."""
        return plan.cut_files or self.cut_files

    @property
    def reader(self) -> Reader:
        """Whom its own pages are for; what is no tag of a language counts as ``en`` (BCP 47)."""
        language = self.language if _TAG.fullmatch(self.language) else "en"
        return Reader(unit=self.units_first, language=language)

    def reader_of(self, plan: Plan) -> Reader:
        """Return whom a plan is for: inches stand first where it or the workshop is in inches."""
        return self.reader.inches if plan.units == "in" else self.reader


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """What a picture file shows; its ``path`` is relative to the workshop, with forward slashes."""

    path: str
    pixels: Pixels


@dataclass(frozen=True, slots=True, kw_only=True)
class Workshop:
    """The documents of a workshop, read and checked for form; nothing is worked out yet."""

    identity: Identity
    stock: Stock
    plans: tuple[Plan, ...] = ()
    trials: tuple[Trial, ...] = ()
    sent: tuple[Sent, ...] = ()
    pages: tuple[Page, ...] = ()
    pictures: tuple[Picture, ...] = ()
