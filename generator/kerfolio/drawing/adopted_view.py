"""A piece of a drawing with what was recognised in it tinted, and questions numbered."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle
from kerfolio.geometry.transform import moved, scaled

ROOM = (110.0, 80.0)
"""A piece's room, width and height in mm."""

_LINE = 0.25
_RING = 2.6
_LETTER = 3.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Tinted:
    """A shape of a piece in the tint of what it is."""

    contour: Contour
    ink: Ink


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbered:
    """A place of a piece that a question is about."""

    number: int
    at: Point


def adopted_view(
    region: Region, tints: Sequence[Tinted], asked: Sequence[Numbered], title: str, words: str
) -> Drawing:
    """Return a picture of a piece, in its own colours of wood; ``words`` describe it."""
    box = bounds(region)
    scale = min(ROOM[0] / box.width, ROOM[1] / box.height)

    def put(contour: Contour) -> Contour:
        return scaled(moved(contour, -box.x0, -box.y0), scale)

    holes = tuple(put(each) for each in region.openings)
    outline = put(region.outer)
    items: list[Item] = [
        Stroke(contour=outline, holes=holes, fill=Ink.WOOD, width=_LINE),
        *(Stroke(contour=each, width=_LINE) for each in holes),
        *(Stroke(contour=put(t.contour), ink=t.ink, fill=t.ink, width=_LINE) for t in tints),
    ]
    for each in asked:
        at = ((each.at[0] - box.x0) * scale, (each.at[1] - box.y0) * scale)
        items.append(
            Stroke(contour=circle(at, 2 * _RING), ink=Ink.ACCENT, fill=Ink.PAPER, width=0.4)
        )
        low = (at[0], at[1] - _LETTER * 0.36)
        items.append(
            Label(text=str(each.number), at=low, height=_LETTER, anchor=Anchor.MIDDLE, strong=True)
        )
    left, bottom, right, top = padded(extent(items), 1.5)
    box_round = (left, bottom, max(right, left + ROOM[0] + 3.0), top)
    return Drawing(box=box_round, items=tuple(items), title=title, description=words)
