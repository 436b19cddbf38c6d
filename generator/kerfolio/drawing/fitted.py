"""The scale at which an object and the lettering round it fill a room."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Item

_PAD = 0.6
_TRIES = 4
_SLACK = 0.3
_USUAL = (20.0, 31.0)
"""What lettering commonly takes beside an object, and above and below it, mm."""
_NEARLY = 1.02
"""A scale that could be larger by less than this is large enough."""

Draw = Callable[[float], tuple[Item, ...]]


def filling(
    draw: Draw, size: tuple[float, float], room: tuple[float, float]
) -> tuple[tuple[Item, ...], Box, float]:
    """Return what is drawn at the largest scale, at most 1, that fits the room, its box in mm, and
    the scale.

    ``size`` is the object's; lettering keeps its own size at every scale, so that what it takes
    is known only once it is set. It stays in the room unless it has none at all.
    """
    better = _scale(size, room, _USUAL)
    scale = better
    items: tuple[Item, ...] = ()
    box = (0.0, 0.0, 0.0, 0.0)
    for _ in range(_TRIES):
        scale = better
        items = draw(scale)
        box = padded(extent(items), _PAD)
        wide, high = box[2] - box[0], box[3] - box[1]
        around = (wide - size[0] * scale + _SLACK, high - size[1] * scale + _SLACK)
        better = _scale(size, room, around)
        if wide <= room[0] and high <= room[1] and better <= scale * _NEARLY:
            break
    return items, box, scale


def _scale(
    size: tuple[float, float], room: tuple[float, float], around: tuple[float, float]
) -> float:
    inner = [max(1.0, whole - rim) for whole, rim in zip(room, around, strict=True)]
    return min(inner[0] / size[0], inner[1] / size[1], 1.0)
