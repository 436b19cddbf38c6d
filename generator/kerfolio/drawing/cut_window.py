"""A square window on a cut through pieces: what each fills, and what is measured there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import dist
from typing import Any

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.face import FINE, OUTLINE
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Dimension, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.panel_section import areas, line_within, rims
from kerfolio.geometry.shapes import circle, rectangle

ROOM: Box = (0.0, 0.0, 62.0, 58.0)
"""What the pieces are drawn in, mm of paper; the cut stands beside it, as high."""

RING = (0.7, 4.0)
"""How wide a ring is drawn, and its least radius, mm of paper."""

TEXT, PITCH = 3.8, 5.8
SWATCH = 3.0
_GAP, _SIDE = 9.0, 52.0
_FRAME: Box = (ROOM[2] + _GAP, ROOM[3] - _SIDE, ROOM[2] + _GAP + _SIDE, ROOM[3])
_SHOWN = 12.0
"""The window reaches so many times what is measured to each side, so that it can be seen."""
_LEAST_HALF = 12.0
_AXIS = (4.0, 1.0, 0.6, 1.0)
_PAST = 2.0
_SHORT = 1e-6


def half_window(size: float, most: float) -> float:
    """Return how far a window reaches to each side for something so long to be seen, mm."""
    return min(max(_SHOWN * size, _LEAST_HALF), max(most, _LEAST_HALF))


@dataclass(frozen=True, slots=True)
class CutWindow:
    """A window that reaches ``half`` mm to each side of the ``middle`` of a plane."""

    middle: Point
    half: float

    @property
    def seat(self) -> Seat:
        """Where the plane lies on paper."""
        scale = _SIDE / (2 * self.half)
        return Seat(
            scale=scale,
            x=(_FRAME[0] + _FRAME[2]) / 2 - self.middle[0] * scale,
            y=(_FRAME[1] + _FRAME[3]) / 2 - self.middle[1] * scale,
        )

    def ground(self) -> Stroke:
        """Return the paper that all of it lies on."""
        return Stroke(contour=rectangle(*_FRAME), width=None, fill=Ink.PAPER)

    def border(self) -> Stroke:
        """Return its frame, which is drawn over all that it cuts off."""
        return Stroke(contour=rectangle(*_FRAME), ink=Ink.SOFT, width=FINE)

    def filled(self, shapes: Iterable[Any], ink: Ink) -> Iterator[Stroke]:
        """Yield what all of some shapes fill."""
        for flat in areas(shapes, self.middle, self.half):
            outer, *holes = (
                self.seat.contour(Contour(tuple((x, y, 0.0) for x, y in ring)))
                for ring in (flat.outer, *flat.openings)
            )
            yield Stroke(contour=outer, holes=tuple(holes), width=None, fill=ink)

    def rim(self, shape: Any, ink: Ink) -> Iterator[Stroke]:
        """Yield the lines round a shape."""
        for run in rims(shape, self.middle, self.half):
            yield Stroke(contour=self.seat.contour(open_path(*run)), ink=ink, width=OUTLINE)

    def axis(self, a: Point, b: Point, ink: Ink) -> Iterator[Stroke]:
        """Yield a line of dashes and dots."""
        ends = line_within(a, b, self.middle, self.half)
        if ends:
            line = self.seat.contour(open_path(*ends))
            yield Stroke(contour=line, ink=ink, width=FINE, dash=_AXIS)

    def measured(self, a: Point, b: Point, text: str) -> Iterator[Item]:
        """Yield a ring round what is measured, and its dimension outside the window.

        Below it, or beside it at the right where what is measured is upright.
        """
        one, other = self.seat.point(a), self.seat.point(b)
        middle = ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
        radius = min(max(RING[1], dist(one, other) / 2 + _PAST), _SIDE / 2 - RING[0])
        upright = abs(other[1] - one[1]) > abs(other[0] - one[0])
        if upright:
            low, high = sorted((one, other), key=lambda each: each[1])
            away = low[0] - _FRAME[2] - PITCH
            yield Dimension(a=low, b=high, text=text, offset=away, height=TEXT, ink=Ink.INK)
        elif dist(one, other) > _SHORT:
            left, right = sorted((one, other))
            below = _FRAME[1] - PITCH - left[1]
            yield Dimension(a=left, b=right, text=text, offset=below, height=TEXT, ink=Ink.INK)
        yield self.ring(middle, radius)

    def ring(self, at: Point, radius: float = RING[1]) -> Stroke:
        """Return a ring round a place on paper."""
        return Stroke(contour=circle(at, 2 * radius), ink=Ink.ACCENT, width=RING[0])


def key(rows: Iterable[tuple[Ink, str]], box: Box) -> Iterator[Item]:
    """Yield what each colour stands for, a line each below a box."""
    y = box[1] - PITCH
    for ink, words in rows:
        square = rectangle(box[0], y, box[0] + SWATCH, y + SWATCH)
        yield Stroke(contour=square, ink=Ink.SOFT, width=FINE, fill=ink)
        yield Label(text=words, at=(box[0] + 2 * SWATCH, y + 0.3), height=TEXT)
        y -= PITCH
