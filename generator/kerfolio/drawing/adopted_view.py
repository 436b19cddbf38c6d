"""A piece of a drawing with what was recognised in it tinted, and questions numbered."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle
from kerfolio.geometry.transform import moved, scaled

ROOM = (116.0, 72.0)
"""The room of the widest and of the highest piece, mm: all are drawn to one scale."""

COLUMNS = 12
"""A picture is so many parts of the room wide as it needs, so that pieces stand side by side."""

_FEWEST = 3
_GAP = 3.0
_SMALLEST = 14.0
"""A piece is drawn larger than the others only where it were smaller than that, mm."""

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


def scale_of(size: Point, sizes: Sequence[Point]) -> float:
    """Return the scale at which a piece is drawn among others, all by width and height in mm."""
    wide, high = (max(each[axis] for each in sizes) for axis in (0, 1))
    shared = min((ROOM[0] - _GAP) / wide, ROOM[1] / high)
    own = min((ROOM[0] - _GAP) / size[0], ROOM[1] / size[1])
    return min(max(shared, _SMALLEST / max(size)), own)


def columns_of(width: float) -> int:
    """Return how many of the columns a picture takes that is so wide, mm."""
    return min(COLUMNS, max(_FEWEST, ceil((width + _GAP) * COLUMNS / ROOM[0])))


def adopted_view(
    region: Region,
    scale: float,
    tints: Sequence[Tinted],
    asked: Sequence[Numbered],
    title: str,
    words: str,
) -> Drawing:
    """Return a picture of a piece, in its own colours of wood; ``words`` describe it.

    It is as wide as its columns.
    """
    box = bounds(region)

    def put(contour: Contour) -> Contour:
        return scaled(moved(contour, -box.x0, -box.y0), scale)

    holes = tuple(put(each) for each in region.openings)
    outline = put(region.outer)
    items: list[Item] = [
        Stroke(contour=outline, holes=holes, fill=Ink.WOOD, width=_LINE),
        *(Stroke(contour=each, width=_LINE) for each in holes),
        *(Stroke(contour=put(t.contour), ink=t.ink, fill=t.ink, width=_LINE) for t in tints),
    ]
    for place, each in enumerate(asked):
        x = (each.at[0] - box.x0) * scale + place * 3 * _RING
        at = (x, (each.at[1] - box.y0) * scale)
        items.append(
            Stroke(contour=circle(at, 2 * _RING), ink=Ink.ACCENT, fill=Ink.PAPER, width=0.4)
        )
        low = (at[0], at[1] - _LETTER * 0.36)
        items.append(
            Label(text=str(each.number), at=low, height=_LETTER, anchor=Anchor.MIDDLE, strong=True)
        )
    left, bottom, _, top = padded(extent(items), 0.5)
    room = columns_of(box.width * scale) * ROOM[0] / COLUMNS
    box_round = (left, bottom, left + room, top)
    return Drawing(box=box_round, items=tuple(items), title=title, description=words)
