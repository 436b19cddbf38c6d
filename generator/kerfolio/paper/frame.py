"""Four lines around a box."""

from __future__ import annotations

from kerfolio.drawing.vocabulary import Ink
from kerfolio.writing.page import Rule


def frame(
    corner: tuple[float, float], size: tuple[float, float], thickness: float, ink: Ink
) -> tuple[Rule, ...]:
    """Return the lines around a box from its lower left corner, all in mm."""
    (x, y), (wide, high) = corner, size
    corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
    return tuple(
        Rule(x=a[0], y=a[1], to_x=b[0], to_y=b[1], width=thickness, ink=ink)
        for a, b in zip(corners, (*corners[1:], corners[0]), strict=True)
    )
