"""A page of its own: bands stacked from its top, in type as large as leaves room for a picture."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from kerfolio.basis.figured import together
from kerfolio.drawing.vocabulary import Anchor
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, marked, shifted
from kerfolio.paper.grid import Grid
from kerfolio.paper.setup_type import SCALES, TIME, TITLE, SetupType, leading
from kerfolio.paper.type import CAPS, FIRM, NOTE, caps
from kerfolio.writing.page import Mark, Page, Passage, Role, Rule, Run, Text
from kerfolio.writing.setting import on_one_line, shortened
from kerfolio.writing.typeface import width_of

_SHARES = ((1.0, 1.0), (0.92, 0.9), (0.8, 0.8), (0.65, 0.7))
"""How far a picture may fall short of its largest height, and how small the type may then be."""


def setup_grid(paper: PaperStock) -> Grid:
    """Return the grid of setup sheets: narrower margins than a booklet's, for a larger picture."""
    return Grid(paper=paper, side=17.0, top=14.5, bottom=24.0, label=24.0, gutter=4.0)


def heading(kicker: tuple[str, str], file: str, title: str, time: str, grid: Grid) -> Bands:
    """Return what opens the page: plan, what it is and its file, the title and the time, large."""
    room = grid.width - width_of(together("  ", file), NOTE)
    plan, what = (each.upper() for each in kicker)
    small: tuple[Mark, ...] = (
        Text(x=0, y=-2.6, runs=(caps(on_one_line(plan, what, CAPS, room)),)),
        Text(x=grid.width, y=-2.6, runs=(Run(file, NOTE),), anchor=Anchor.END),
        Rule(x=0, y=-4.6, to_x=grid.width, to_y=-4.6, width=FIRM),
    )
    y = -0.78 * leading(TITLE)
    beside = width_of(f"  {time}", TIME) if time else 0.0
    line = shortened(title, TITLE, grid.width - beside)
    large: list[Mark] = [Text(x=0, y=y, runs=(Run(line, TITLE),))]
    if time:
        large.append(Text(x=grid.width, y=y, runs=(Run(time, TIME),), anchor=Anchor.END))
    head = Passage(marks=tuple(large), role=Role.TITLE, bookmark=title)
    return (marked(6.0, small, Role.PARAGRAPH), Band(height=leading(TITLE), passages=(head,)))


def height_of(bands: Sequence[Band]) -> float:
    """Return the height of bands with every space above them, mm."""
    return math.fsum(band.height + band.space for band in bands)


def set_below(
    words: Callable[[SetupType], Bands | None], room: float, most: float
) -> tuple[SetupType, Bands, float]:
    """Return type and words below a picture, and the height left for it, at most ``most`` mm.

    ``words`` sets them in a type, or says None where a line is too long for it; ``room`` is for
    words and picture together. The largest type that leaves the picture its height is taken; where
    none does, both give way step by step.
    """
    made = [(scale, words(SetupType(scale))) for scale in SCALES]
    fitting = [(scale, bands, room - height_of(bands)) for scale, bands in made if bands]
    for share, least in _SHARES:
        for scale, bands, left in fitting:
            if scale >= least and left >= share * most:
                return SetupType(scale), bands, min(left, most)
    scale, bands, left = max(fitting, key=lambda each: each[2])
    return SetupType(scale), bands, min(left, most)


def one_page(
    bands: Sequence[Band], tail: Sequence[Band], grid: Grid, foot: tuple[Passage, ...]
) -> Page:
    """Return bands from the top of a page, a tail that ends at its lower margin, and its foot."""
    size = (grid.paper.width, grid.paper.height)
    low = grid.bottom + height_of(tail)
    passages = (*_stacked(bands, grid, grid.ceiling), *_stacked(tail, grid, low), *foot)
    return Page(width=size[0], height=size[1], passages=passages)


def _stacked(bands: Sequence[Band], grid: Grid, top: float) -> list[Passage]:
    passages: list[Passage] = []
    for band in bands:
        top -= band.space
        passages += [shifted(passage, grid.side, top) for passage in band.passages]
        top -= band.height
    return passages
