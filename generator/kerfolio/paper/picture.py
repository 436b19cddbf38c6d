"""Pictures and drawings as bands, with their captions."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.drawing.vocabulary import Drawing
from kerfolio.paper.band import Band, Bands, marked, total
from kerfolio.paper.grid import Grid
from kerfolio.writing.page import Mark, Replay, Role

_STEP = 4.0
"""By how much a picture gives way at a time, mm."""


def giving_way(made: Callable[[float], Bands], most: float, least: float, grid: Grid) -> Bands:
    """Return bands whose picture is lower than ``most`` mm where that keeps them on one page.

    ``made`` sets them with a picture of a height; where even ``least`` does not do, it is ``most``.
    """
    bands = usual = made(most)
    high = most
    while total(bands) > grid.height and high - _STEP >= least:
        high -= _STEP
        bands = made(high)
    return bands if total(bands) <= grid.height else usual


def drawing_scale(drawing: Drawing, width: float, most: float) -> float:
    """Return the scale at which a drawing fills the column, never above full size."""
    return min(width / drawing.width, most / drawing.height, 1.0)


def drawing_band(drawing: Drawing, width: float, most: float, *, x: float = 0.0) -> Band:
    """Return a drawing at the scale that fits, centred in the column."""
    scale = drawing_scale(drawing, width, most)
    height = drawing.height * scale
    left = x + (width - drawing.width * scale) / 2
    mark: Mark = Replay(x=left, y=-height, drawing=drawing, scale=scale)
    return marked(height, (mark,), Role.FIGURE, drawing.description or drawing.title)
