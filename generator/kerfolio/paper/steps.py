"""The steps of the assembly: what joins, with what, in how long, shown and told."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from kerfolio.basis.figures import minutes_short
from kerfolio.drawing.build_views import step_name
from kerfolio.drawing.vocabulary import Ink
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import numbered_steps
from kerfolio.model.plan import Step
from kerfolio.paper.band import Band, Bands, beside, indented, kept, paragraph, spaced, total
from kerfolio.paper.grid import Grid
from kerfolio.paper.picture import captioned, drawing_band, photo_band, photo_caption
from kerfolio.paper.running_text import prose
from kerfolio.paper.section import hairline, section, warned, whole
from kerfolio.paper.type import (
    CAPS_LEADING,
    CELL,
    CELL_LEADING,
    CELL_STRONG,
    FIGURES,
    HEADING,
    LEAD,
    LEAD_LEADING,
    MINOR,
    READING,
    READING_LEADING,
    caps,
)
from kerfolio.writing.page import Passage, Role, Run, Text
from kerfolio.writing.typeface import MM_PER_POINT, Style

TITLE = "Putting it together"
_STEP_SPACE = 7.5
_SHARE_PHOTO = 0.26  # of the page's height, so that two steps share a page
_SHARE_DRAWING = 0.34  # a drawing carries marks and hardware to be read
_HEAD = 25.0  # mm: the title of the section stands above the first step
_TITLE_LEADING = 17 * MM_PER_POINT


def steps_section(edition: Edition, grid: Grid) -> Bands:
    """Return all steps, each kept on one page where a page can hold it."""
    if not edition.plan.steps:
        return ()
    bands: list[Band] = list(section(TITLE, grid, new_page=True))
    for number, begins, step in numbered_steps(edition.plan):
        line = (hairline(grid), Band(height=4.5, stick=True)) if number > 1 else ()
        head = kept(paragraph((Run(begins, LEAD),), grid.width, LEAD_LEADING), with_next=True)
        opening = (*head, Band(height=3.0, stick=True)) if begins else ()
        body = (*line, *opening, *_step(edition, step, number, grid))
        bands += spaced(whole(body, grid), _STEP_SPACE if number > 1 else 0.0)
    return tuple(bands)


def _step(edition: Edition, step: Step, number: int, grid: Grid) -> Bands:
    left = _side(edition, step, number, grid.label)
    right = indented(_telling(edition, step, number, grid), grid.main_x)
    if total(left) > grid.height - _HEAD:  # no page holds such a list: it comes first
        return (*left, *spaced(right, _STEP_SPACE))
    return beside(left, right)


def _telling(edition: Edition, step: Step, number: int, grid: Grid) -> Bands:
    measure = grid.main
    title = paragraph((Run(step.title, HEADING),), measure, _TITLE_LEADING, role=Role.HEADING)
    bands: list[Band] = list(kept(title, with_next=True))
    photo, drawing = step.photo, edition.drawings.get(step_name(number))
    if drawing is not None:
        picture = drawing_band(drawing, measure, _SHARE_DRAWING * grid.height)
        bands += spaced(kept((picture,), with_next=bool(step.text)), 2.5)
    elif photo is not None and photo.file in edition.pictures:
        picture = photo_band(
            edition.pictures[photo.file], photo, grid.main, _SHARE_PHOTO * grid.height
        )
        figure = captioned(picture, photo_caption(photo), measure)
        bands += spaced(kept(figure, with_next=bool(step.text)), 2.5)
    bands += spaced(prose(step.text, measure), 3.0)
    if step.by_hand:
        told = (Run("By hand: ", MINOR), Run(step.by_hand, READING))
        bands += spaced(paragraph(told, measure, READING_LEADING), 2.5)
    if step.caution:
        bands += spaced(warned(step.caution, measure), 4.0)
    return tuple(bands)


def _side(edition: Edition, step: Step, number: int, measure: float) -> Bands:
    bands: list[Band] = [_numeral(number)]
    for head, entries in (
        ("Add", _added(edition, step)),
        ("Hardware", _hardware(edition, step)),
        ("Tools", [(Run(tool, CELL),) for tool in step.tools]),
        ("Time", _minutes(step)),
    ):
        if entries:
            bands += spaced(_short_list(head, entries, measure), 3.2)
    return tuple(bands)


def _numeral(number: int) -> Band:
    """Return the step's number; its foot stands on the baseline of the title beside it."""
    text = Text(x=-0.4, y=-0.78 * _TITLE_LEADING, runs=(Run(str(number), FIGURES),))
    passage = Passage(marks=(text,), role=Role.PARAGRAPH)
    return Band(height=_TITLE_LEADING, passages=(passage,))


def _short_list(head: str, entries: Sequence[tuple[Run, ...]], measure: float) -> Bands:
    bands: list[Band] = list(paragraph((caps(head),), measure, CAPS_LEADING))
    for index, entry in enumerate(entries):
        bands += spaced(paragraph(entry, measure, CELL_LEADING), 0.6 if index == 0 else 0.0)
    return tuple(bands)


def _added(edition: Edition, step: Step) -> list[tuple[Run, ...]]:
    marks = edition.piece_marks
    entries = []
    for each in step.add:
        mark = marks.get(each.name, "")
        strong = (Run(f"{mark} ", CELL_STRONG),) if mark else ()
        entries.append((*strong, Run(each.name, CELL)))
    return entries


def _hardware(edition: Edition, step: Step) -> list[tuple[Run, ...]]:
    titles = {row.item: row.title for row in edition.hardware}
    return [
        (
            Run(f"{use.count} × ", CELL_STRONG),
            Run(titles.get(use.item.name, use.item.name), CELL),
        )
        for use in step.hardware
    ]


def _minutes(step: Step) -> list[tuple[Run, ...]]:
    if step.minutes is None:
        return []
    soft: Style = replace(CELL, ink=Ink.INK)
    return [(Run(minutes_short(step.minutes), soft),)]
