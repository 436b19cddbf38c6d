"""What stands in the label column, remarks and cautions, and the foot of every page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from kerfolio.basis.figured import together
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.edition.edition import Edition
from kerfolio.paper.band import (
    Band,
    Bands,
    beside,
    indented,
    kept,
    paragraph,
    spaced,
)
from kerfolio.paper.flow import Foot
from kerfolio.paper.grid import Grid
from kerfolio.paper.phrases import release_told
from kerfolio.paper.running_text import plain
from kerfolio.paper.type import (
    CAPS,
    CAPS_LEADING,
    CAPS_LOUD,
    FOOT,
    NOTE,
    NOTE_LEADING,
    READING,
    READING_LEADING,
    caps,
)
from kerfolio.writing.page import Mark, Panel, Passage, Role, Run, Text
from kerfolio.writing.setting import on_one_line
from kerfolio.writing.typeface import Style, width_of


def label(text: str, grid: Grid, style: Style = CAPS) -> Bands:
    """Return a head in the label column, on the first baseline of the text beside it."""
    lowered = Band(height=(READING_LEADING - CAPS_LEADING) * 0.62)
    head = paragraph((caps(text, style),), grid.label, CAPS_LEADING, role=Role.HEADING)
    return (lowered, *head)


def hung(text: str, body: Sequence[Band], grid: Grid, style: Style = CAPS) -> Bands:
    """Return a body in the text column with its head hung in the label column."""
    return beside(label(text, grid, style), indented(body, grid.main_x))


def note(text: str, measure: float, style: Style = NOTE) -> Bands:
    """Return a remark in small sans; in ``NOTE_LOUD`` one that nobody should pass over."""
    return spaced(paragraph((Run(text, style),), measure, NOTE_LEADING), 2.0)


def warned(head: str, text: str, measure: float) -> Bands:
    """Return a caution: a firm bar at its left, its head and its sentence, kept together."""
    inner = 5.0
    title = paragraph((caps(head, CAPS_LOUD),), measure, CAPS_LEADING)
    bands = (*title, *spaced(plain(text, measure - inner, READING), 0.8))
    height = math.fsum(band.height + band.space for band in bands)
    bar = Panel(x=0, y=-height - 0.6, width=0.8, height=height + 0.2, ink=Ink.ACCENT)
    moved = indented(bands, inner)
    decoration = Passage(marks=(bar,), role=Role.DECORATION)
    first = replace(moved[0], passages=(decoration, *moved[0].passages))
    return kept((first, *moved[1:]))


def foot_of(edition: Edition, grid: Grid, what: str = "") -> Foot:
    """Return the foot: plan and release at the left, page x of y at the right."""
    plan, reader = edition.plan, edition.reader
    release = release_told(plan.version, reader)
    rest = together(release, *([" · ", what] if what else []))
    return foot(plan.title, rest, grid, reader)


def foot(title: str, rest: str, grid: Grid, reader: Reader) -> Foot:
    """Return a foot: a title and what follows it at the left, the page's number at the right."""
    y = grid.bottom - 11.0
    room = grid.width - width_of(f"  {_page(999, 999, reader)}", FOOT)
    left = on_one_line(title, rest, FOOT, room)

    def at(page: int, pages: int) -> tuple[Passage, ...]:
        marks: tuple[Mark, ...] = (
            Text(x=grid.side, y=y, runs=(Run(left, FOOT),)),
            Text(
                x=grid.paper.width - grid.side,
                y=y,
                runs=(Run(_page(page, pages, reader), FOOT),),
                anchor=Anchor.END,
            ),
        )
        return (Passage(marks=marks, role=Role.DECORATION),)

    return at


def _page(page: int, pages: int, reader: Reader) -> str:
    return say(reader, "printed-page", page=page, pages=pages)
