"""The largest scale at which what is drawn has room, its lettering keeping its size."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.drawing.extent import extent
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Item

_TRIES = 12
"""Shrinking may move lettering out of what is drawn, so the fit is looked for step by step."""

Made = Callable[[float], tuple[Item, ...]]
Over = Callable[[float, Box], float]


def shrunk(made: Made, over: Over) -> tuple[float, tuple[Item, ...]]:
    """Return the scale, 1 at most, and what ``made`` draws at it.

    ``over`` tells of a scale and the box of what is drawn by how much that must shrink.
    """
    scale = 1.0
    items = made(scale)
    for _ in range(_TRIES):
        much = over(scale, extent(items))
        if much <= 1.0:
            break
        scale /= much * 1.0005
        items = made(scale)
    return scale, items
