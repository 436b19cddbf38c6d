"""Whether the words of a drawing stand clear of each other and of its lines."""

from __future__ import annotations

from itertools import combinations

from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import apart
from kerfolio.drawing.lettering import corners, label_box
from kerfolio.drawing.vocabulary import Drawing, Item, Label, Stroke
from kerfolio.geometry.boolean import intersects
from kerfolio.geometry.contour import Contour


def labels_of(drawing: Drawing) -> list[Label]:
    """Return all lettering, that of dimensions included."""
    return [each for each in parts_of(drawing.items) if isinstance(each, Label)]


def parts_of(items: tuple[Item, ...]) -> list[Stroke | Label]:
    return [each for item in items for each in expanded(item)]


def overlapping(drawing: Drawing) -> list[tuple[str, str]]:
    """Return the pairs of labels that run into each other."""
    pairs = combinations(labels_of(drawing), 2)
    return [(a.text, b.text) for a, b in pairs if not apart(label_box(a), label_box(b))]


def crossed(drawing: Drawing) -> list[str]:
    """Return the labels that a line runs through; a tinted area is no line."""
    lines = [
        Contour((*contour.vertices, contour.vertices[0]), closed=False)
        if contour.closed
        else contour
        for each in parts_of(drawing.items)
        if isinstance(each, Stroke) and each.width is not None
        for contour in (each.contour, *each.holes)
    ]
    return [
        label.text
        for label in labels_of(drawing)
        for line in lines
        if intersects(line, Contour(tuple((x, y, 0.0) for x, y in corners(label))))
    ]


def outside(drawing: Drawing) -> list[str]:
    """Return the labels that reach out of the drawing's box."""
    left, bottom, right, top = drawing.box
    boxes = {label.text: label_box(label) for label in labels_of(drawing)}
    return [
        text
        for text, box in boxes.items()
        if box[0] < left or box[1] < bottom or box[2] > right or box[3] > top
    ]
