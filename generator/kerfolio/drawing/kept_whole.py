"""What of a drawing should stay whole where paper is cut: details, words, tabs and notches."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import box_of
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.template_shape import WASTE
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.arc import edges

_CUT = 12
"""As many other lines what is cut counts for: a hole, a slot, a window."""
_SHORT = 50.0
"""An edge of an outline that is shorter, mm, belongs to a tab, a notch or a corner."""


def kept_whole(drawing: Drawing) -> Iterator[Box]:
    """Yield the boxes that no seam should cross: lines, words, and an outline's short edges."""
    for item in drawing.items:
        if item.layer == WASTE.name:  # it lies along other lines
            continue
        for each in expanded(item):
            yield from _CUT * [box_of(each)] if _is_cut(each) else [box_of(each)]
            yield from _details(each)


def _is_cut(item: Stroke | Label) -> bool:
    return isinstance(item, Stroke) and item.contour.closed and item.ink is Ink.INK


def _details(item: Stroke | Label) -> Iterator[Box]:
    if isinstance(item, Label) or len(item.contour.vertices) < 3:
        return
    for edge in edges(item.contour):
        (x0, x1), (y0, y1) = (sorted(ends) for ends in zip(edge.start, edge.end, strict=True))
        if max(x1 - x0, y1 - y0) < _SHORT:
            yield x0, y0, x1, y1
