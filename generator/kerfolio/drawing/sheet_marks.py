"""Marks of pieces on the picture of a sheet: in the piece, beside it, or on a leader."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import leader
from kerfolio.drawing.extent import apart
from kerfolio.drawing.lettering import CAPITAL, LEGIBLE, Box, label_box, text_width, wrapped
from kerfolio.drawing.placing import first_free
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.boolean import intersects
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import rectangle

MARK = 4.6
"""Font size of a mark in its piece, mm, where there is room."""
_LEAST_MARK = LEGIBLE
_NEAR = LEGIBLE
_FAR = 3.0
_COUNT = 2.8
_LONGEST_SLANT = 8.0
"""A leader that leaned further than this, mm, would tell nobody which piece it means."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece as it lies in the picture: its mark, where, and how high the mark may be.

    ``called`` is its part's mark and title. ``shapes`` are its outlines in the picture at every end
    of a range, as it is drawn first.
    """

    mark: str
    called: str
    shapes: tuple[Contour, ...]
    spot: Point
    height: float


def sheet_marks(laid: list[Laid], size: tuple[float, float], reader: Reader) -> tuple[Item, ...]:
    """Return every piece's mark: in it, else in the waste beside it, else outside the sheet."""
    shapes = [shape for each in laid for shape in each.shapes]
    placed = [_mark(each) for each in laid if each.height >= _LEAST_MARK]
    far: list[Laid] = []
    for each in laid:
        if each.height >= _LEAST_MARK:
            continue
        taken = [label_box(label) for label in placed]
        near = first_free(_beside(each), _Waste(size, shapes, taken).has)
        if near:
            placed.append(near)
        else:
            far.append(each)
    return (*placed, *_leaders(far, size, [label_box(label) for label in placed], reader))


@dataclass(frozen=True, slots=True)
class _Waste:
    """What of a sheet is free: inside its edge, off the pieces and off other lettering."""

    size: tuple[float, float]
    shapes: list[Contour]
    taken: list[Box]

    def has(self, box: Box) -> bool:
        if box[0] < 0.4 or box[1] < 0.4 or box[2] > self.size[0] - 0.4:
            return False
        if box[3] > self.size[1] - 0.4 or not all(apart(box, other) for other in self.taken):
            return False
        return not any(intersects(shape, rectangle(*box)) for shape in self.shapes)


def _beside(piece: Laid) -> Iterator[Label]:
    """Yield labels to the right, to the left, above and below a piece."""
    box, low = bounds(piece.shapes[0]), _NEAR * CAPITAL / 2
    x, y = box.centre
    for anchor, at in (
        (Anchor.START, (box.x1 + 0.7, y - low)),
        (Anchor.END, (box.x0 - 0.7, y - low)),
        (Anchor.MIDDLE, (x, box.y1 + 0.9)),
        (Anchor.MIDDLE, (x, box.y0 - 0.7 - 2 * low)),
    ):
        yield Label(text=piece.mark, at=at, height=_NEAR, anchor=anchor, strong=True)


def _mark(piece: Laid) -> Label:
    at = (piece.spot[0], piece.spot[1] - piece.height * CAPITAL / 2)
    return Label(text=piece.mark, at=at, height=piece.height, anchor=Anchor.MIDDLE, strong=True)


def _leaders(
    pieces: list[Laid], size: tuple[float, float], taken: list[Box], reader: Reader
) -> tuple[Item, ...]:
    """Return marks in a row above and one below the sheet, without overlap, and what is left."""
    items: list[Item] = []
    unmarked: list[Laid] = []
    for above in (True, False):
        row = [each for each in pieces if (each.spot[1] > size[1] / 2) == above]
        free = 24.0 if above else 1.0  # clear of the grain's arrow and of the extension lines
        for each in sorted(row, key=lambda piece: (piece.spot[0], piece.mark)):
            half = text_width(each.mark, _FAR, strong=True) / 2
            x = max(free + half, each.spot[0])
            at = (x, size[1] + 2.5 if above else -4.5)
            label = Label(text=each.mark, at=at, height=_FAR, anchor=Anchor.MIDDLE, strong=True)
            line, own = leader(each.spot, label), label_box(label)
            slant = x - each.spot[0]
            if x + half > size[0] - 1 or slant > _LONGEST_SLANT or _crosses(line, (*taken, own)):
                unmarked.append(each)
                continue
            free = x + half + 1.2
            taken.append(own)
            items.extend(line)
    high = any(isinstance(each, Label) and each.at[1] > size[1] for each in items)
    return (*items, *_count(unmarked, size, 7.0 if high else 2.2, reader))


def _crosses(line: tuple[Item, ...], taken: tuple[Box, ...]) -> bool:
    strokes = [each.contour for each in line if isinstance(each, Stroke)]
    return any(intersects(each, rectangle(*box)) for each in strokes for box in taken)


def _count(
    pieces: list[Laid], size: tuple[float, float], above: float, reader: Reader
) -> Iterator[Label]:
    """Yield a line that counts the pieces without a mark."""
    if not pieces:
        return
    counted = Counter(each.called for each in pieces)
    words = ", ".join(f"{count} × {called}" for called, count in counted.items())
    rows = wrapped(say(reader, "drawing-too-small", pieces=words), _COUNT, size[0] - 26.0)
    for number, row in enumerate(reversed(rows)):
        at = (size[0], size[1] + above + number * 1.3 * _COUNT)
        yield Label(text=row, at=at, height=_COUNT, ink=Ink.SOFT, anchor=Anchor.END)
