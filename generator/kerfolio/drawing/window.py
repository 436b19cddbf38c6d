"""Whether anything of a drawing shows in a window."""

from __future__ import annotations

from itertools import pairwise

from kerfolio.drawing.expand import expanded
from kerfolio.drawing.lettering import Box, label_box
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points

_CHORD = 0.1  # mm; finer than any pencil line


def shows(drawing: Drawing, window: Box) -> bool:
    """Tell whether a line or a label lies in the window (left, bottom, right, top in mm).

    A filled area without an edge in the window does not count: there is nothing to cut or to read.
    """
    return any(_shown(each, window) for item in drawing.items for each in expanded(item))


def _shown(item: Stroke | Label, window: Box) -> bool:
    if isinstance(item, Label):
        return meets(label_box(item), window)
    return any(passes(contour, window) for contour in (item.contour, *item.holes))


def meets(one: Box, other: Box) -> bool:
    """Tell whether two boxes share a point."""
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]


def passes(contour: Contour, window: Box) -> bool:
    """Tell whether a contour's line lies in the window, in part at least."""
    chain = points(contour, _CHORD)
    if contour.closed and chain:
        chain.append(chain[0])
    return any(_enters(a, b, window) for a, b in pairwise(chain))


def _enters(start: Point, end: Point, window: Box) -> bool:
    """Tell whether a segment meets a box (Liang and Barsky's line clipping, 1984)."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    low, high = 0.0, 1.0
    for way, room in (
        *((-dx, start[0] - window[0]), (dx, window[2] - start[0])),
        *((-dy, start[1] - window[1]), (dy, window[3] - start[1])),
    ):
        if way == 0:
            if room < 0:
                return False
        elif way < 0:
            low = max(low, room / way)
        else:
            high = min(high, room / way)
    return low <= high
