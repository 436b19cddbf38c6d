"""A size in a picture of solids: its extension lines run along a direction of the world."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.expand import NARROW
from kerfolio.drawing.lettering import LEGIBLE, text_width
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.vocabulary import Dimension, Ink, Item, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import Vector, added, scaled

_TEXT = 3.2
_LEAST_TEXT = LEGIBLE / 0.85
"""A picture of a whole is shown smaller than it is drawn, mm."""
_ARROWS = 2.4
_AWAY, _OVERRUN, _GAP = 7.0, 1.5, 0.8
"""On paper, mm: from the object to a dimension line, past it, and free beside the object."""


def space_dimension(
    a: Vector, b: Vector, out: Vector, texts: Sequence[str], seat: PaperSeat
) -> Iterator[Item]:
    """Yield a dimension whose extension lines run along ``out``, a direction of the world."""
    way = seat.way(out)
    size = (way[0] ** 2 + way[1] ** 2) ** 0.5

    def beyond(at: Vector, by: float) -> Point:
        return seat.spot(added(at, scaled(out, by / size)))

    for end in (a, b):
        line = open_path(beyond(end, _GAP), beyond(end, _AWAY + _OVERRUN))
        yield Stroke(contour=line, ink=Ink.SOFT, width=NARROW)
    ends = sorted((beyond(a, _AWAY), beyond(b, _AWAY)))
    room = dist(*ends) - 2 * _ARROWS
    fitting = ((each, room / text_width(each, 1.0)) for each in texts)
    text, most = next((each for each in fitting if each[1] >= _LEAST_TEXT), (texts[-1], 0.0))
    height = max(_LEAST_TEXT, min(_TEXT, most))
    yield Dimension(a=ends[0], b=ends[1], text=text, offset=0.0, height=height)
