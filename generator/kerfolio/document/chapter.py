"""A chapter: blocks under a title, with who wants it and how soon."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from kerfolio.document.blocks import Block, Fact
from kerfolio.document.picture import Picture


class Who(StrEnum):
    """A way to get the parts cut, or none; a reader takes one."""

    ROUTER = "router"
    SAW = "saw"
    HAND = "hand"
    SHOP = "shop"
    LOOK = "look"


EVERYONE = frozenset(Who)
CUTTERS = frozenset({Who.ROUTER, Who.SAW, Who.HAND})
BUILDERS = EVERYONE - {Who.LOOK}


class Soon(StrEnum):
    """When a reader wants to know it."""

    FIRST = "first"  # before deciding to build it
    WORKING = "working"  # at the bench
    BACKGROUND = "background"  # where the figures come from


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A chapter by its ``id``, which is its address within a page.

    ``who`` wants it: a chapter for everyone is on every path.
    """

    id: str
    title: str
    blocks: tuple[Block, ...]
    who: frozenset[Who] = EVERYONE
    soon: Soon = Soon.WORKING


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """What stands before all chapters: what it is, what it looks like, what decides.

    ``kicker`` stands over the title. ``notices`` must not be passed over: an earlier release was
    wrong. ``facts`` are those that decide; ``small`` whose it is and what may be done with it.
    """

    title: str
    summary: str
    kicker: str = ""
    picture: Picture | None = None
    alt: str = ""
    facts: tuple[Fact, ...] = ()
    notices: tuple[str, ...] = ()
    small: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """An opening and chapters; what it says of itself to programs and at the foot of its pages.

    ``title`` names it among others: ``Stool: booklet``. ``address`` is where its newest release
    stands, empty where nobody knows; ``day`` in ISO form, empty where none is stated.
    """

    title: str
    opening: Opening
    chapters: tuple[Chapter, ...]
    author: str
    subject: str
    language: str
    foot: str
    address: str = ""
    day: str = ""

    def has(self, chapter: str) -> bool:
        """Tell whether a chapter of that id is part of it."""
        return any(each.id == chapter for each in self.chapters)


def kept(chapters: Sequence[Chapter | None]) -> tuple[Chapter, ...]:
    """Return the chapters that have something to tell."""
    return tuple(each for each in chapters if each is not None and each.blocks)
