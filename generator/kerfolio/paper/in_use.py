"""A thing in use: where it tips, slides and leans, and what it is for by estimate."""

from __future__ import annotations

from kerfolio.edition.edition import Edition
from kerfolio.edition.in_use import used_of
from kerfolio.paper.band import Band, Bands, indented, kept, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.grounds import grounds
from kerfolio.paper.loads import figures_table
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import BLOCK_SPACE, hung, section, warned
from kerfolio.paper.type import LEAD

IN_USE_TITLE = "In use"
_SPACE = 6.0


def in_use_section(edition: Edition, grid: Grid) -> Bands:
    """Return what it does in use, the plain sentence first; nothing where no uses are stated."""
    used = used_of(edition)
    if used is None:
        return ()
    bands: list[Band] = [*section(IN_USE_TITLE, grid, new_page=True)]
    caution = warned(" ".join(used.cautions), grid.main, used.heading)
    for number, each in enumerate(used.things):
        told = plain(each.sentence, grid.main, LEAD)
        if each.title:
            bands += spaced(kept(hung(each.title, told, grid), with_next=True), _SPACE)
        else:
            bands += indented(told, grid.main_x)
        if not number:
            bands += spaced(indented(caution, grid.main_x), BLOCK_SPACE)
        figures = figures_table(each.figures, grid.main, long=True)
        bands += spaced(hung("By estimate", figures, grid), _SPACE)
    rest = grounds(used.assumptions, grid.main)
    return (*bands, *spaced(hung("What this rests on", rest, grid), _SPACE))
