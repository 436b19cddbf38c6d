"""Pages as plain records: text, rules, panels, pictures and drawings at spots, in mm, y up.

Whoever composes pages makes these; the writer of a format replays them. They know no plan.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum

from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink
from kerfolio.writing.typeface import Style


class Role(StrEnum):
    """What a passage is to someone who hears the page; decoration is left out (PDF structure)."""

    DECORATION = "Artifact"
    TITLE = "H1"
    HEADING = "H2"
    PARAGRAPH = "P"
    FIGURE = "Figure"


@dataclass(frozen=True, slots=True)
class Run:
    """Text in one style; ``link`` is an address or empty."""

    text: str
    style: Style
    link: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """One line of runs; ``x``, ``y`` is the anchor on the baseline, ``angle`` in degrees."""

    x: float
    y: float
    runs: tuple[Run, ...]
    anchor: Anchor = Anchor.START
    angle: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A straight line ``width`` mm thick."""

    x: float
    y: float
    to_x: float
    to_y: float
    width: float = 0.1
    ink: Ink = Ink.INK
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A filled rectangle from its lower left corner."""

    x: float
    y: float
    width: float
    height: float
    ink: Ink


@dataclass(frozen=True, slots=True, kw_only=True)
class Image:
    """A picture (the bytes of a PNG or JPEG file), centred in its box and never distorted."""

    x: float
    y: float
    width: float
    height: float
    content: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Replay:
    """A drawing at a scale; the lower left corner of its box stands at ``x``, ``y``.

    ``clip`` (left, bottom, right, top on the page) hides what lies outside; None hides nothing.
    A drawing that is shown several times may be held by its file ``once``; its lines are then as
    much thinner as it is smaller, and it may be turned by an ``angle`` in degrees about that
    corner. What of a drawing never follows a number is ``still``.
    """

    x: float
    y: float
    drawing: Drawing
    scale: float = 1.0
    clip: tuple[float, float, float, float] | None = None
    once: bool = False
    angle: float = 0.0
    still: bool = False


Mark = Text | Rule | Panel | Image | Replay


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """Marks that belong together, in the order of reading.

    ``alt`` tells of a figure in words. ``continues`` joins it to the passage before (the lines of
    one paragraph). ``bookmark`` names an entry of the outline at the ``level`` 0, 1 ...
    What stands alike on many pages, and says nothing that is measured, a file may hold ``once``.
    """

    marks: tuple[Mark, ...]
    role: Role = Role.PARAGRAPH
    alt: str = ""
    continues: bool = False
    bookmark: str = ""
    level: int = 0
    once: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page of a size in mm."""

    width: float
    height: float
    passages: tuple[Passage, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What a document says of itself; ``full_size`` asks to be printed without scaling."""

    title: str
    author: str
    subject: str
    language: str
    date: date
    full_size: bool = False


def moved(mark: Mark, x: float, y: float) -> Mark:
    """Return the mark shifted by ``x``, ``y`` mm; a clip moves with its drawing."""
    if isinstance(mark, Rule):
        return replace(mark, x=mark.x + x, y=mark.y + y, to_x=mark.to_x + x, to_y=mark.to_y + y)
    if isinstance(mark, Replay) and mark.clip:
        left, bottom, right, top = mark.clip
        clip = (left + x, bottom + y, right + x, top + y)
        return replace(mark, x=mark.x + x, y=mark.y + y, clip=clip)
    return replace(mark, x=mark.x + x, y=mark.y + y)
