"""Arrows that point out a direction or a spot."""

from __future__ import annotations

from math import cos, dist, radians, sin

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import circle

_HEAD = 2.6
_HALF = 0.9


def open_path(*points: Point) -> Contour:
    """Return a path of straight lines through the points."""
    return Contour(tuple((x, y, 0.0) for x, y in points), closed=False)


def double_arrow(middle: Point, length: float, angle: float, layer: str = "") -> tuple[Stroke, ...]:
    """Return a line with an open head at both ends, ``angle`` degrees, all sizes in mm."""
    ux, uy = cos(radians(angle)), sin(radians(angle))
    reach = length / 2
    tips = [(middle[0] + s * ux * reach, middle[1] + s * uy * reach, s) for s in (-1, 1)]
    heads = [
        open_path(_wing((x, y), (ux, uy), s, 1), (x, y), _wing((x, y), (ux, uy), s, -1))
        for x, y, s in tips
    ]
    shaft = open_path(tips[0][:2], tips[1][:2])
    return tuple(
        Stroke(contour=path, layer=layer, ink=Ink.SOFT, width=0.35) for path in (shaft, *heads)
    )


def _wing(tip: Point, along: Point, side: int, wing: int) -> Point:
    back, out = side * _HEAD, wing * _HALF
    return tip[0] - along[0] * back - along[1] * out, tip[1] - along[1] * back + along[0] * out


def grain_arrow(
    at: Point, grain: str, reader: Reader, layer: str = "", *, height: float = 3.0
) -> tuple[Item, ...]:
    """Return the grain's direction with its word, starting at the lower left corner ``at``.

    ``grain`` is ``along x`` or ``along y``; others give nothing. 22 mm long and about 4 mm wide.
    """
    upright = grain == "along y"
    if not upright and grain != "along x":
        return ()
    length, angle = 10.0, 90.0 if upright else 0.0
    x, y = at
    middle = (x + height / 3, y + length / 2) if upright else (x + length / 2, y + height / 3)
    words = (x + height * 0.66, y + length + 1.5) if upright else (x + length + 1.5, y)
    text = say(reader, "drawing-grain")
    word = Label(text=text, at=words, height=height, layer=layer, ink=Ink.SOFT, angle=angle)
    return (*double_arrow(middle, length, angle, layer), word)


def leader(spot: Point, text: Label) -> tuple[Item, ...]:
    """Return a label with a thin line from it to a dot on the spot it speaks of."""
    start = _beside(text, spot)
    dot = Stroke(contour=circle(spot, 0.9), layer=text.layer, width=None, fill=text.ink)
    line = Stroke(contour=open_path(start, spot), layer=text.layer, ink=text.ink, width=0.18)
    return (line, dot, text) if dist(start, spot) > 0 else (dot, text)


def _beside(text: Label, spot: Point) -> Point:
    middle = text.at[1] + text.height * 0.3
    if text.anchor is Anchor.START:
        return text.at[0] - 1.0, middle
    if text.anchor is Anchor.END:
        return text.at[0] + 1.0, middle
    below = spot[1] < text.at[1]
    return text.at[0], text.at[1] + (-0.8 if below else text.height * 0.66 + 0.8)
