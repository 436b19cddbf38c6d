"""The cover: what it is, what it looks like, whose it is, which release, for which sheets."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from kerfolio.basis.words import day_text
from kerfolio.drawing.layout_view import layout_view
from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.edition.cover import cover_photo
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import drawn_for
from kerfolio.edition.licence_words import contact_words, licence_sentence
from kerfolio.model.plan import Plan
from kerfolio.paper.band import Band, Bands, beside, indented, paragraph, shifted, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.phrases import published_for
from kerfolio.paper.picture import drawing_band, photo_band
from kerfolio.paper.running_text import plain
from kerfolio.paper.type import (
    BOOK_TITLE,
    CAPS,
    CAPS_LEADING,
    CELL,
    CELL_LEADING,
    FIRM,
    HAIR,
    LEAD,
    LEAD_LEADING,
    NOTE,
    NOTE_LEADING,
    caps,
)
from kerfolio.writing.page import Page, Passage, Role, Rule, Run, Text
from kerfolio.writing.setting import shortened
from kerfolio.writing.typeface import MM_PER_POINT, width_of

_TYPES = ((36.0, 13.0), (27.0, 11.5), (20.0, 10.0), (16.0, 9.0))
"""Points of title and summary, the largest first; the usual one is that of ``type.py``."""

_TITLES_SHARE = 0.5
"""Share of the page that title and summary may take: the picture needs the rest."""

_SUMMARY_WIDTH = 128.0
_HEAD = 26.0
_BETWEEN = 11.0


def cover(edition: Edition, grid: Grid, foot: tuple[Passage, ...]) -> Page:
    """Return the first page of a booklet."""
    top = _stack(_titles(edition, grid), grid, grid.ceiling - _HEAD)
    facts = _facts(edition, grid)
    facts_top = grid.bottom + _height(facts)
    title_end = grid.ceiling - _HEAD - _height(_titles(edition, grid))
    room = title_end - facts_top - 2 * _BETWEEN
    picture = _stack((_picture(edition, grid, room),), grid, title_end - _BETWEEN)
    passages = (
        *_banner(edition, grid),
        *top,
        *picture,
        *_stack(facts, grid, facts_top),
        *foot,
    )
    return Page(width=grid.paper.width, height=grid.paper.height, passages=passages)


def _height(bands: Sequence[Band]) -> float:
    return math.fsum(band.height + band.space for band in bands)


def _stack(bands: Sequence[Band], grid: Grid, top: float) -> list[Passage]:
    passages = []
    for band in bands:
        top -= band.space
        passages += [shifted(passage, grid.side, top) for passage in band.passages]
        top -= band.height
    return passages


def _banner(edition: Edition, grid: Grid) -> tuple[Passage, ...]:
    y = grid.ceiling - 3.0
    right, room = grid.side + grid.width, grid.width - width_of("  BOOKLET", CAPS)
    line = Rule(x=grid.side, y=y - 3.4, to_x=right, to_y=y - 3.4, width=FIRM)
    names = (
        Text(x=grid.side, y=y, runs=(caps(shortened(edition.identity.title.upper(), CAPS, room)),)),
        Text(x=right, y=y, runs=(caps("Booklet"),), anchor=Anchor.END),
    )
    return (Passage(marks=(line,), role=Role.DECORATION), Passage(marks=names))


def _titles(edition: Edition, grid: Grid) -> Bands:
    """Return title and summary in the largest type that leaves the picture its room."""
    made = [_titles_in(edition.plan, grid, *points) for points in _TYPES]
    most = _TITLES_SHARE * grid.height
    return next((bands for bands in made if _height(bands) <= most), made[-1])


def _titles_in(plan: Plan, grid: Grid, large: float, small: float) -> Bands:
    big, lead = replace(BOOK_TITLE, points=large), replace(LEAD, points=small)
    title = paragraph(
        (Run(plan.title, big),), grid.width, large / 0.9 * MM_PER_POINT, role=Role.TITLE
    )
    measure = _SUMMARY_WIDTH if small == LEAD.points else grid.width
    leading = LEAD_LEADING * small / LEAD.points
    return (*title, *spaced(plain(plan.summary, min(grid.width, measure), lead, leading), 4.0))


def _picture(edition: Edition, grid: Grid, room: float) -> Band:
    photo = cover_photo(edition)
    if photo is not None:
        return photo_band(edition.pictures[photo.file], photo, grid.width, room)
    if not edition.layout.sheets:
        return Band(height=0.0)
    first = edition.first
    drawing = layout_view(edition.settled, edition.layout.sheets[0], (grid.width, room), first)
    return drawing_band(drawing, grid.width, room)


def _facts(edition: Edition, grid: Grid) -> Bands:
    plan = edition.plan
    facts = [
        ("Designed by", edition.identity.maker),
        ("Release", f"{plan.version}, {day_text(plan.released)}"),
        ("Drawn for", drawn_for(edition.settled, edition.first)),
        ("Published for", published_for(edition)),
    ]
    step = grid.width / len(facts)
    columns: Bands = ()
    for index, (head, text) in enumerate(facts):
        column = indented(_fact(head, text, step - 5.0), index * step)
        columns = beside(columns, column) if columns else column
    sentence = licence_sentence(plan.licence or edition.identity.licence)
    line = Rule(x=0, y=0, to_x=grid.width, to_y=0, width=HAIR, ink=Ink.SOFT)
    ruled = Band(height=4.0, passages=(Passage(marks=(line,), role=Role.DECORATION),))
    words = f"{sentence} {contact_words(edition.identity)}".strip()
    licence = spaced(paragraph((Run(words, NOTE),), grid.width, NOTE_LEADING), 4.0)
    return (ruled, *columns, *licence)


def _fact(head: str, text: str, measure: float) -> Bands:
    title = paragraph((caps(head, CAPS),), measure, CAPS_LEADING)
    return (*title, *spaced(paragraph((Run(text, CELL),), measure, CELL_LEADING), 0.6))
