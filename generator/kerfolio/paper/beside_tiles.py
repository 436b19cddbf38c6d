"""What the pages of templates beside the tiles share: grid and type, feet, lengths to check."""

from __future__ import annotations

from kerfolio.basis.figured import widest
from kerfolio.basis.saying import say
from kerfolio.drawing.lettering import in_rows, rows_within
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, spaced
from kerfolio.paper.check_length import check_lengths
from kerfolio.paper.flow import flowed
from kerfolio.paper.grid import Grid
from kerfolio.paper.section import foot
from kerfolio.paper.template_title import Titled
from kerfolio.writing.page import Page, Passage, Run, Text
from kerfolio.writing.typeface import MM_PER_POINT, Face, Style, width_of

TEXT = Style(face=Face.SERIF, points=9.6)
_LINE = 14.2 * MM_PER_POINT


def template_grid(paper: PaperStock) -> Grid:
    """Return the grid of the pages beside the tiles."""
    return Grid(paper=paper, top=18.0, bottom=18.0)


def figured_lines(words: str, measure: float) -> Bands:
    """Return words with figures in them, broken alike whatever the figures are."""
    rows = rows_within(words, lambda line: width_of(widest(line), TEXT) <= measure)
    bands = []
    for index, line in enumerate(in_rows((words,), (rows,))):
        text = Text(x=0, y=-0.78 * _LINE, runs=(Run(line, TEXT),))
        bands.append(Band(height=_LINE, passages=(Passage(marks=(text,), continues=index > 0),)))
    return spaced(bands, 0.5)


def template_pages(
    bands: Bands, titled: Titled, what: str, grid: Grid, pages: int, *, before: int = 0
) -> tuple[Page, ...]:
    """Return bands as pages of a file of ``pages``, ``before`` of which stand in front of them.

    Their feet tell ``what`` they are of; lengths of known size stand at their edges.
    """
    reader = titled.reader
    rest = f"{titled.release} · {what} · {say(reader, 'tiles-print-at')}"
    told = foot(titled.title, rest, grid, reader)
    size = (grid.paper.width, grid.paper.height)
    lengths = Passage(marks=check_lengths(size, reader), once=True)
    return flowed(bands, grid, lambda page, _: (*told(page, pages), lengths), before=before)
