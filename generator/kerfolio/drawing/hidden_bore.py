"""Bores as they lie hidden in the wood, in broken lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.rigid import Vector

_DASH = (1.0, 0.7)

Bore = tuple[Vector, Vector, float]
"""A bore from its mouth to its end, and its radius, mm."""


def bore_strokes(bores: Sequence[Bore], seat: PaperSeat) -> Iterator[Stroke]:
    """Yield the outline of each bore; none of one that is looked along."""
    for mouth, end, radius in bores:
        (ax, ay), (bx, by) = seat.spot(mouth), seat.spot(end)
        long = hypot(bx - ax, by - ay)
        if long < radius * seat.scale:
            continue
        x, y = -(by - ay) / long * radius * seat.scale, (bx - ax) / long * radius * seat.scale
        outline = open_path((ax + x, ay + y), (bx + x, by + y), (bx - x, by - y), (ax - x, ay - y))
        yield Stroke(contour=outline, ink=Ink.NEW_LINE, width=0.2, dash=_DASH)
