"""Hatching: what is left over, and where something is held down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.shapes import rectangle

_APART = 2.2
_DENSE = 1.7
_WIDTH = 0.13


def hatched(
    box: Box,
    kept_clear: Sequence[Box] = (),
    *,
    apart: float = _APART,
    ink: Ink = Ink.FAINT,
    width: float = _WIDTH,
) -> Iterator[Stroke]:
    """Yield lines that rise to the right over a box, broken where boxes are kept clear.

    Lines of one picture lie on one grid, ``apart`` mm of x from each other.
    """
    x0, y0, x1, y1 = box
    first, last = int((x0 - y1) // apart) + 1, int((x1 - y0) // apart)
    for step in range(first, last + 1):
        shift = step * apart  # x - y along the line
        spans = [(max(x0, y0 + shift), min(x1, y1 + shift))]
        for left, bottom, right, top in kept_clear:
            gap = (max(left, bottom + shift), min(right, top + shift))
            spans = [part for span in spans for part in _without(span, gap)]
        for start, end in spans:
            if end - start > 0.2:
                line = open_path((start, start - shift), (end, end - shift))
                yield Stroke(contour=line, ink=ink, width=width)


def clamp_zone(box: Box) -> Iterator[Stroke]:
    """Yield a place where a sheet is held down."""
    yield Stroke(contour=rectangle(*box), ink=Ink.SOFT, width=0.25, fill=Ink.PAPER)
    yield from hatched(box, apart=_DENSE, ink=Ink.SOFT, width=0.18)


def _without(
    span: tuple[float, float], gap: tuple[float, float]
) -> tuple[tuple[float, float], ...]:
    if gap[1] <= gap[0]:
        return (span,)
    return (span[0], min(span[1], gap[0])), (max(span[0], gap[1]), span[1])
