"""What opens a section, what stands in the label column, and the foot of every page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from kerfolio.basis.figured import together
from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.edition.edition import Edition
from kerfolio.paper.band import (
    Band,
    Bands,
    beside,
    bookmarked,
    fresh,
    indented,
    kept,
    marked,
    paragraph,
    ruled,
    spaced,
    total,
)
from kerfolio.paper.flow import Foot
from kerfolio.paper.grid import Grid
from kerfolio.paper.running_text import plain
from kerfolio.paper.type import (
    CAPS,
    CAPS_LEADING,
    CAPS_LOUD,
    FOOT,
    HAIR,
    NOTE,
    NOTE_LEADING,
    READING,
    READING_LEADING,
    SECTION,
    caps,
)
from kerfolio.writing.page import Mark, Panel, Passage, Role, Rule, Run, Text
from kerfolio.writing.setting import on_one_line
from kerfolio.writing.typeface import MM_PER_POINT, Style, width_of

_SECTION_LEADING = 25 * MM_PER_POINT
SECTION_SPACE = 12.0
BLOCK_SPACE = 5.2


def section(title: str, grid: Grid, *, new_page: bool = False, under: str = "") -> Bands:
    """Return a section's title over a line, kept with what follows; it is a bookmark."""
    words = paragraph((Run(title, SECTION),), grid.width, _SECTION_LEADING, role=Role.TITLE)
    head = bookmarked(words, title, 1 if under else 0)
    line = spaced((ruled(grid.width, HAIR * 2),), 2.2)
    opening = kept((*head, *line, Band(height=5.0)), with_next=True)
    return fresh(opening) if new_page else spaced(opening, SECTION_SPACE)


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


def warned(text: str, measure: float, head: str = "Caution") -> Bands:
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


def whole(bands: Sequence[Band], grid: Grid) -> Bands:
    """Return the bands kept on one page, where a page can hold them at all."""
    return kept(bands) if total(bands) <= grid.height else tuple(bands)


def foot_of(edition: Edition, grid: Grid, what: str = "") -> Foot:
    """Return the foot: plan and release at the left, page x of y at the right."""
    plan = edition.plan
    rest = together(f" · release {plan.version}", *([" · ", what] if what else []))
    return foot(plan.title, rest, grid)


def foot(title: str, rest: str, grid: Grid) -> Foot:
    """Return a foot: a title and what follows it at the left, the page's number at the right."""
    y = grid.bottom - 11.0
    room = grid.width - width_of("  Page 999 of 999", FOOT)
    left = on_one_line(title, rest, FOOT, room)

    def at(page: int, pages: int) -> tuple[Passage, ...]:
        marks: tuple[Mark, ...] = (
            Text(x=grid.side, y=y, runs=(Run(left, FOOT),)),
            Text(
                x=grid.paper.width - grid.side,
                y=y,
                runs=(Run(f"Page {page} of {pages}", FOOT),),
                anchor=Anchor.END,
            ),
        )
        return (Passage(marks=marks, role=Role.DECORATION),)

    return at


def hairline(grid: Grid) -> Band:
    """Return a thin line across the page."""
    rule = Rule(x=0, y=0, to_x=grid.width, to_y=0, width=HAIR, ink=Ink.FAINT)
    return replace(marked(0.0, (rule,), Role.DECORATION), stick=True)
