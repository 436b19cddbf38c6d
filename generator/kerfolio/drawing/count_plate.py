"""How often something is done, and in which turn, on plates that hide what is under them."""

from __future__ import annotations

from kerfolio.drawing.lettering import CAPITAL, text_width
from kerfolio.drawing.vocabulary import Anchor, Ink, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.shapes import circle, rectangle

_TEXT = 3.3
_AIR = 0.7
"""Round the text, mm."""


TURN_SIZE = 4.8
"""How wide the disc of a turn is, mm."""


def turn_plate(turn: int, middle: Point) -> tuple[Stroke, Label]:
    """Return the number of a move that comes after others, on a disc."""
    x, y = middle
    label = Label(
        text=str(turn),
        at=(x, y - _TEXT * CAPITAL / 2),
        height=_TEXT,
        ink=Ink.PAPER,
        anchor=Anchor.MIDDLE,
        strong=True,
    )
    disc = circle(middle, TURN_SIZE)
    return Stroke(contour=disc, ink=Ink.PAPER, width=0.4, fill=Ink.ACCENT), label


def plate_size(count: int) -> tuple[float, float]:
    """Return how wide and how high a plate is, mm."""
    return text_width(_told(count), _TEXT, strong=True) + 2 * _AIR, _TEXT * CAPITAL + 2 * _AIR


def count_plate(count: int, middle: Point, ink: Ink = Ink.ACCENT) -> tuple[Stroke, Label]:
    """Return a count on its plate."""
    (x, y), (wide, high) = middle, plate_size(count)
    plate = rectangle(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2, high / 2)
    label = Label(
        text=_told(count),
        at=(x, y - _TEXT * CAPITAL / 2),
        height=_TEXT,
        ink=ink,
        anchor=Anchor.MIDDLE,
        strong=True,
    )
    return Stroke(contour=plate, width=None, fill=Ink.PAPER), label


def _told(count: int) -> str:
    return f"{count} ×"
