"""A hand: what marks a piece that somebody holds."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.contour import Contour, Point

HAND = "\N{RAISED HAND}"
"""The mark of a held piece; no text of a plan is a mark."""
RADIUS = 4.1
"""Of its circle, mm."""

_PALM = ((-1.45, -2.5), (1.05, -2.5), (1.5, -0.2), (-1.45, 0.2))
_FINGERS = (
    ((-1.12, 0.0), (-1.3, 1.7)),
    ((-0.36, 0.2), (-0.4, 2.5)),
    ((0.4, 0.2), (0.5, 2.2)),
    ((1.15, -0.2), (1.4, 1.4)),
)
_THUMB = ((-1.0, -1.5), (-2.55, 0.25))
_THICK, _THUMB_THICK = 0.62, 0.7


def hand_strokes(at: Point, ink: Ink = Ink.INK) -> Iterator[Stroke]:
    """Yield an open hand about a spot."""
    x, y = at
    palm = tuple((x + u, y + v, 0.0) for u, v in _PALM)
    yield Stroke(contour=Contour(palm), width=0.3, ink=ink, fill=ink)
    for a, b in _FINGERS:
        yield _finger(at, a, b, _THICK, ink)
    yield _finger(at, *_THUMB, _THUMB_THICK, ink)


def _finger(at: Point, a: Point, b: Point, thick: float, ink: Ink) -> Stroke:
    """Return a bar with round ends."""
    size = ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
    across = (-(b[1] - a[1]) / size * thick / 2, (b[0] - a[0]) / size * thick / 2)
    ends = [(at[0] + end[0], at[1] + end[1]) for end in (a, b)]
    left, right = (
        [(x + sign * across[0], y + sign * across[1]) for x, y in ends] for sign in (1.0, -1.0)
    )
    ring = ((*right[0], 0.0), (*right[1], 1.0), (*left[1], 0.0), (*left[0], 1.0))
    return Stroke(contour=Contour(ring), width=None, fill=ink)
