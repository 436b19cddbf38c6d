"""How far drawn items reach."""

from __future__ import annotations

from collections.abc import Iterable

from kerfolio.drawing.expand import expanded
from kerfolio.drawing.lettering import Box, label_box
from kerfolio.drawing.vocabulary import Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds


def extent(items: Iterable[Item]) -> Box:
    """Return the upright box (left, bottom, right, top) around all items, line widths left out.

    Raises ValueError when there is no item.
    """
    return union(box_of(each) for item in items for each in expanded(item))


def box_of(item: Stroke | Label) -> Box:
    """Return the upright box around one stroke or label."""
    if isinstance(item, Label):
        return label_box(item)
    box = bounds(item.contour)
    return box.x0, box.y0, box.x1, box.y1


def box_of_contours(contours: Iterable[Contour]) -> Box:
    """Return the upright box around contours; raises ValueError when there is none."""
    return union((box.x0, box.y0, box.x1, box.y1) for box in map(bounds, contours))


def box_of_spots(spots: Iterable[Point]) -> Box:
    """Return the upright box around spots; raises ValueError when there is none."""
    return union((x, y, x, y) for x, y in spots)


def middle_of(box: Box) -> Point:
    """Return the middle of a box."""
    return (box[0] + box[2]) / 2, (box[1] + box[3]) / 2


def scaled(box: Box, scale: float) -> Box:
    """Return a box of the sheet as it lies on paper."""
    return box[0] * scale, box[1] * scale, box[2] * scale, box[3] * scale


def union(boxes: Iterable[Box]) -> Box:
    """Return the box around boxes; raises ValueError when there is none."""
    lefts, bottoms, rights, tops = zip(*boxes, strict=True)
    return min(lefts), min(bottoms), max(rights), max(tops)


def padded(box: Box, by: float) -> Box:
    """Return the box grown by ``by`` mm on every side."""
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def apart(one: Box, other: Box) -> bool:
    """Tell whether two boxes do not overlap; touching counts as apart."""
    return one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def contains(room: Box, box: Box) -> bool:
    """Tell whether a box lies within a room."""
    return room[0] <= box[0] and room[1] <= box[1] and box[2] <= room[2] and box[3] <= room[3]
