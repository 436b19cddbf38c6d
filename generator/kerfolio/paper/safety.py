"""What stands before the first cut: the usual cautions and the plan's own."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.edition.cautions import OPENING, cautions_of
from kerfolio.edition.edition import Edition
from kerfolio.paper.band import Band, Bands, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.running_text import bullets, plain
from kerfolio.paper.section import hung, section
from kerfolio.paper.type import CAPS_LOUD, LEAD, READING

TITLE = "Before you cut"
_OPENING = replace(LEAD, points=11.0)
_TEXT = replace(READING, points=9.6)
_SPACE = 4.4  # so that contents and cautions share a page even where a plan adds a few of its own


def safety_section(edition: Edition, grid: Grid) -> Bands:
    """Return the cautions, those of the plan first among them."""
    bands: list[Band] = list(section(TITLE, grid))
    opening = plain(OPENING, grid.main, _OPENING)
    bands += hung("First of all", opening, grid)
    if edition.plan.cautions:
        own = bullets(edition.plan.cautions, grid.main, _TEXT)
        bands += spaced(hung("For this plan", own, grid, CAPS_LOUD), _SPACE)
    for each in cautions_of(edition):
        bands += spaced(hung(each.head, plain(each.text, grid.main, _TEXT), grid), _SPACE)
    return tuple(bands)
