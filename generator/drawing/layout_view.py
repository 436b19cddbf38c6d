"""A sheet with its pieces as readers see it: which piece lies where."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.basis.lengths import both_text
from generator.drawing.arrow import grain_arrow, leader
from generator.drawing.extent import apart, extent, padded
from generator.drawing.face import Look, face_strokes, obstacles
from generator.drawing.lettering import CAPITAL, Box, label_box, text_width
from generator.drawing.placing import first_free
from generator.drawing.seat import Seat
from generator.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Item, Label, Stroke
from generator.geometry.boolean import intersects
from generator.geometry.contour import Contour, Point
from generator.geometry.label_spot import label_spot
from generator.geometry.measure import bounds
from generator.geometry.shapes import rectangle
from generator.layouts.layout import SheetLayout
from generator.settling.settled import SettledPart, SettledPlan

ROOM = (170.0, 105.0)
_AWAY = 6.5
_TEXT = 3.2
_MARK = 4.6
_LEAST_MARK = 2.4
_AROUND = (14.0, 21.0)
"""Room for lettering beside and above or below the sheet, mm."""


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece as it lies in the picture: its mark, where, and how high the mark may be."""

    mark: str
    part: SettledPart
    seat: Seat
    spot: Point
    height: float


def layout_view(
    settled: SettledPlan,
    layout: SheetLayout,
    room: tuple[float, float] = ROOM,
    first: str = "mm",
) -> Drawing:
    """Return a picture of the sheet to be shown at paper size, within ``room`` (mm).

    Every piece carries its mark, inside it where it fits, else on a leader above or below the
    sheet. Raises KeyError for a part or piece that the plan has not.
    """
    width, height = layout.size
    scale = min((room[0] - _AROUND[0]) / width, (room[1] - _AROUND[1]) / height, 1.0)
    size = (width * scale, height * scale)
    laid = _laid(settled, layout, scale)
    ground = Stroke(contour=rectangle(0, 0, *size), ink=Ink.SOFT, fill=Ink.WASTE)
    faces = (stroke for each in laid for stroke in face_strokes(each.part, each.seat, _LOOK))
    marks = _marks(laid, size)
    dropped = any(label_box(each)[1] < 0 for each in marks if isinstance(each, Label))
    items = (
        ground,
        *faces,
        *marks,
        *_sizes(layout, size, first, _AWAY + 4 if dropped else _AWAY),
        *grain_arrow((0.0, size[1] + 2.2), _grain(settled, layout)),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=f"{settled.plan.title}: sheet {layout.number}",
        description=_sentence(laid, layout, first),
    )


_LOOK = Look(outline=0.25, inside=0.13)


def _grain(settled: SettledPlan, layout: SheetLayout) -> str:
    return "along x" if settled.sheet(layout.sheet).stock.grain else "any"


def _laid(settled: SettledPlan, layout: SheetLayout, scale: float) -> list[_Laid]:
    parts = {part.name: part for part in settled.parts}
    marks = {piece.label: piece.mark for part in settled.parts for piece in part.pieces}
    laid = []
    for each in layout.placements:
        part, mark = parts[each.part], marks[each.piece]
        seat = Seat(x=each.x * scale, y=each.y * scale, turn=each.turn, scale=scale)
        aspect = text_width(mark, 1.0, strong=True) / CAPITAL
        spot, room = label_spot(seat.region(part.routed), aspect, obstacles(part, seat))
        laid.append(_Laid(mark, part, seat, spot, min(_MARK, room / CAPITAL)))
    return laid


def _marks(laid: list[_Laid], size: tuple[float, float]) -> tuple[Item, ...]:
    """Return every piece's mark: in it, else in the waste beside it, else outside the sheet."""
    shapes = [each.seat.region(each.part.routed).outer for each in laid]
    placed = [_mark(each) for each in laid if each.height >= _LEAST_MARK]
    far: list[_Laid] = []
    for each, shape in zip(laid, shapes, strict=True):
        if each.height >= _LEAST_MARK:
            continue
        taken = [label_box(label) for label in placed]
        near = first_free(_beside(each, shape), _Waste(size, shapes, taken).has)
        if near:
            placed.append(near)
        else:
            far.append(each)
    return (*placed, *_leaders(far, size))


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


def _beside(piece: _Laid, shape: Contour) -> Iterator[Label]:
    """Yield labels to the right, to the left, above and below a piece."""
    box, low = bounds(shape), 2.6 * CAPITAL / 2
    x, y = box.centre
    for anchor, at in (
        (Anchor.START, (box.x1 + 0.7, y - low)),
        (Anchor.END, (box.x0 - 0.7, y - low)),
        (Anchor.MIDDLE, (x, box.y1 + 0.9)),
        (Anchor.MIDDLE, (x, box.y0 - 0.7 - 2 * low)),
    ):
        yield Label(text=piece.mark, at=at, height=2.6, anchor=anchor, strong=True)


def _mark(piece: _Laid) -> Label:
    at = (piece.spot[0], piece.spot[1] - piece.height * CAPITAL / 2)
    return Label(text=piece.mark, at=at, height=piece.height, anchor=Anchor.MIDDLE, strong=True)


def _leaders(pieces: list[_Laid], size: tuple[float, float]) -> list[Item]:
    """Return marks in a row above and one below the sheet, without overlap."""
    items: list[Item] = []
    for above in (True, False):
        row = [each for each in pieces if (each.spot[1] > size[1] / 2) == above]
        free = 0.0 if not above else 24.0  # the grain's arrow stands above, to the left
        for each in sorted(row, key=lambda piece: (piece.spot[0], piece.mark)):
            half = text_width(each.mark, 3.0, strong=True) / 2
            x = max(free + half, each.spot[0])
            free = x + half + 1.2
            y = size[1] + 2.5 if above else -4.5
            label = Label(text=each.mark, at=(x, y), height=3.0, anchor=Anchor.MIDDLE, strong=True)
            items.extend(leader(each.spot, label))
    return items


def _sizes(
    layout: SheetLayout, size: tuple[float, float], first: str, below: float
) -> tuple[Item, ...]:
    width, height = layout.size
    across = Dimension(
        a=(0, 0), b=(size[0], 0), text=both_text(width, first), offset=-below, height=_TEXT
    )
    up = Dimension(
        a=(0, 0), b=(0, size[1]), text=both_text(height, first), offset=_AWAY, height=_TEXT
    )
    return across, up


def _sentence(laid: list[_Laid], layout: SheetLayout, first: str) -> str:
    marks = ", ".join(each.mark for each in laid)
    wide, high = both_text(layout.size[0], first), both_text(layout.size[1], first)
    return f"A sheet of {wide} by {high} with the pieces {marks}."
