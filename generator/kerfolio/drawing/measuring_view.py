"""The little picture that shows where to measure a sheet."""

from __future__ import annotations

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Label, Stroke
from kerfolio.geometry.contour import Contour

_WIDE, _HIGH, _IN = 36.0, 22.0, 4.0


def measuring_view(reader: Reader) -> Drawing:
    """Return a sheet with the eight points of EN 324-1: corners and middles of the sides."""
    spots = [
        (x, y)
        for y in (_IN, _HIGH / 2, _HIGH - _IN)
        for x in (_IN, _WIDE / 2, _WIDE - _IN)
        if (x, y) != (_WIDE / 2, _HIGH / 2)
    ]
    corners = ((0.0, 0.0, 0.0), (_WIDE, 0.0, 0.0), (_WIDE, _HIGH, 0.0), (0.0, _HIGH, 0.0))
    sheet = Stroke(contour=Contour(corners), width=0.25, fill=Ink.WOOD)
    points = tuple(Stroke(contour=_dot(x, y, 0.8), width=None, fill=Ink.ACCENT) for x, y in spots)
    text = Label(
        text="8 ×", at=(_WIDE / 2, _HIGH / 2 - 1.2), height=3.4, anchor=Anchor.MIDDLE, strong=True
    )
    return Drawing(
        box=(-0.2, -0.2, _WIDE + 0.2, _HIGH + 0.2),
        items=(sheet, *points, text),
        title=say(reader, "drawing-measuring"),
        description=say(reader, "drawing-measuring-shows"),
    )


def _dot(x: float, y: float, radius: float) -> Contour:
    return Contour(((x - radius, y, 1.0), (x + radius, y, 1.0)))
