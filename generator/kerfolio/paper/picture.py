"""Pictures and drawings as bands, with their captions."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.drawing.vocabulary import Drawing
from kerfolio.model.plan import Photo
from kerfolio.paper.band import Band, Bands, kept, marked, paragraph, spaced, total
from kerfolio.paper.grid import Grid
from kerfolio.paper.type import NOTE, NOTE_LEADING
from kerfolio.writing.page import Image, Mark, Replay, Role, Run
from kerfolio.writing.pdf import picture_size

_STEP = 4.0
"""By how much a picture gives way at a time, mm."""


def photo_band(content: bytes, photo: Photo, width: float, most: float) -> Band:
    """Return a picture as wide as the column, or as high as ``most`` mm allows."""
    wide, high = picture_size(content)
    scale = min(width / wide, most / high)
    height = high * scale
    image = Image(x=0, y=-height, width=wide * scale, height=height, content=content)
    return marked(height, (image,), Role.FIGURE, photo.alt)


def captioned(figure: Band, text: str, width: float) -> Bands:
    """Return a figure kept together with the words under it."""
    if not text:
        return (figure,)
    caption = paragraph((Run(text, NOTE),), width, NOTE_LEADING, role=Role.CAPTION)
    return kept((figure, *spaced(caption, 1.6)))


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


def photo_caption(photo: Photo) -> str:
    """Return the words under a picture: what it shows and, if no photograph, how it was made."""
    text = photo.alt.rstrip(".")
    return f"{text}. Shown as a {photo.made}, not a photograph." if photo.made else f"{text}."


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
