"""Fastenings as stated: a piece of hardware with what it joins, so that its place follows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.place import NOWHERE, Place
from kerfolio.model.statement import Named, Spot


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FasteningKind:
    """A kind of fastening; one is told from another by identity (``fastening.kind is DRIVEN``).

    ``name`` is the key that states it, ``noun`` what one is called, ``items`` the kinds of
    hardware (``HARDWARE_KINDS``) that it may be.
    """

    name: str
    noun: str
    items: tuple[str, ...]

    def __str__(self) -> str:
        return self.name


BOLTED = FasteningKind(name="bolt", noun="a bolt", items=("bolt",))
SCREWED = FasteningKind(name="screw", noun="a screw", items=("screw", "connector"))
DOWELLED = FasteningKind(name="dowel", noun="a dowel", items=("dowel",))
INSERTED = FasteningKind(name="insert", noun="an insert", items=("insert", "tee-nut"))
BRACKETED = FasteningKind(name="bracket", noun="a bracket", items=("bracket",))
CLAMPED = FasteningKind(name="clamp", noun="a clamp", items=("clamp",))
FASTENING_KINDS = (BOLTED, SCREWED, DOWELLED, INSERTED, BRACKETED, CLAMPED)
"""Every kind, in the order in which a plan's schema lists them; wedges are pieces, and joints."""

NUTS = ("barrel-nut", "nut", "lock-nut", "tee-nut", "insert")
WASHERS = ("washer",)
SCREWS = ("screw",)

INTO_WALL = "wall"
"""What ``joins`` calls the wall that a thing is fixed to, where no piece is called so."""

TEE_NUT = "tee-nut"
SUNK_NUTS = ("insert", TEE_NUT)
"""The kinds of nut that sit in the hole that their bolt goes into, a tee nut from behind."""

CROSS_NUT = "barrel-nut"
"""The kind of nut that lies across its bolt, in a hole of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fastening:
    """A piece of hardware and what it joins, in the order that it goes through it.

    ``joins`` name features of pieces (``side.left.rail-bolt``), the first that of its head; the
    last may be a side of a piece (``shelf.left``), a board, or the wall; the first of a bolt or a
    screw may be a board. Sets of several features
    pair by their order, and stand for so many fastenings. A barrel nut's hole need not be named: it
    is that of the last piece which is for the nut and lies nearest to the bolt.

    ``washer`` lies under the head, ``under_nut`` under the nut, ``by`` are the screws of a bracket
    or a clamp, one for each hole. ``head_on`` is the face that the head is on (``show`` or
    ``back``) where what it joins does not tell. ``step`` is the title of the step it is done in,
    where that is not the one in which the last of its pieces joins.

    A clamp joins faces (``top.show``) and sides, those of its two jaws; ``at`` is where the first
    one presses: on a face as its part is drawn, on a side along it and from the back face.
    """

    kind: FasteningKind
    item: Named
    joins: tuple[Named, ...]
    nut: Named | None = None
    washer: Named | None = None
    under_nut: Named | None = None
    by: Named | None = None
    head_on: str = ""
    step: Named | None = None
    at: Spot | None = None
    purpose: str = ""
    place: Place = NOWHERE

    @property
    def parts(self) -> Iterator[tuple[Named, tuple[str, ...]]]:
        """Yield each item that one of it takes, with the kinds of hardware that it may be."""
        yield self.item, self.kind.items
        for named, kinds in (
            (self.nut, NUTS),
            (self.washer, WASHERS),
            (self.under_nut, WASHERS),
            (self.by, SCREWS),
        ):
            if named is not None:
                yield named, kinds
