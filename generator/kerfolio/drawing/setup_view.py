"""A sheet as it lies on the machine: pieces, cuts by operation, the datum, where to clamp."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from math import pi, tan

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.basis.sheet_size import sheet_sides
from kerfolio.drawing.arrow import grain_arrow, open_path
from kerfolio.drawing.cut_sheet import datum_of
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import apart, scaled
from kerfolio.drawing.face import Look, face_strokes, stroke_width
from kerfolio.drawing.fitted import filling
from kerfolio.drawing.hatch import clamp_zone
from kerfolio.drawing.layer import DASHES, INKS, operation_called
from kerfolio.drawing.lettering import CAPITAL, Box, label_box, text_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.sheet_marks import sheet_marks
from kerfolio.drawing.sheet_picture import SheetPicture, laid_pieces
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.boolean import intersects
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.layouts.clamp_spots import ClampSpot
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.settled import CENTRE, Operation, SettledPart, SettledPlan
from kerfolio.shop.engraving import stroke_widths

_TEXT = 3.6
_AWAY = 11.0
_LOOK = Look(outline=0.2, inside=0.13)
_LINE = 0.35
_BRIDGE = 1.0
_BADGE, _NUMBER = 4.8, 3.6
_SIGN = 4.6
_ARROW = 16.0
_KEY, _STEP = 8.0, 7.0


def setup_view(
    settled: SettledPlan,
    layout: SheetLayout,
    spots: Sequence[ClampSpot],
    room: tuple[float, float],
    reader: Reader = METRIC,
    zero: Point | None = None,
) -> Drawing:
    """Return a sheet's picture for the machine at paper size, within ``room`` (mm).

    Every cut has the colour its operation has in the cut files, and dashes of its own. Clamp spots
    are hatched and numbered from 1; no number lies on a piece. ``zero`` is where 0,0 is, mm from
    the sheet's lower left corner, None where the sheet's datum is. Raises KeyError for a part the
    plan has not.
    """
    return setup_picture((settled,), layout, spots, room, reader, zero).whole(settled)


def setup_picture(
    ends: Sequence[SettledPlan],
    layout: SheetLayout,
    spots: Sequence[ClampSpot],
    room: tuple[float, float],
    reader: Reader,
    zero: Point | None = None,
) -> SheetPicture:
    """Return what is chosen once for that picture; ``ends`` as in ``laid_pieces``."""
    sheet = ends[0].sheet(layout.sheet)
    at = zero or datum_of(sheet, layout.size)
    engraved = {each.name: stroke_widths(ends[0], each) for each in ends[0].parts}
    drawn: dict[float, tuple[tuple[Item, ...], tuple[Item, ...]]] = {}

    def draw(scale: float) -> tuple[Item, ...]:
        drawn[scale] = _around(ends, layout, spots, scale, at, reader)
        return (*drawn[scale][0], *drawn[scale][1])

    plan, told = ends[0].plan.title, _sentence(layout, spots, sheet.datum, reader)
    title = say(reader, "drawing-machine-sheet", plan=plan, sheet=layout.number)
    if zero:
        title, told = say(reader, "drawing-machine-coupon", plan=plan), _scrap(layout, reader)
    _, box, scale = filling(draw, layout.size, room)
    under, over = drawn[scale]
    return SheetPicture(
        layout=layout,
        scale=scale,
        box=box,
        under=under,
        over=over,
        shown=lambda part, seat: _piece(part, seat, engraved[part.name]),
        title=title,
        description=told,
    )


def _around(
    ends: Sequence[SettledPlan],
    layout: SheetLayout,
    spots: Sequence[ClampSpot],
    scale: float,
    zero: Point,
    reader: Reader,
) -> tuple[tuple[Item, ...], tuple[Item, ...]]:
    """Return what lies below the pieces and what above them."""
    size = (layout.size[0] * scale, layout.size[1] * scale)
    laid, sheet = laid_pieces(ends, layout, scale), ends[0].sheet(layout.sheet)
    grain = grain_arrow((0.0, size[1] + 2.2), "along x" if sheet.stock.grain else "any", reader)
    held = [scaled(each.box, scale) for each in spots]
    x, y = zero
    sizes = (part for each in _sizes(layout, size, reader) for part in expanded(each))
    signs = (*_datum((x * scale, y * scale)), *sheet_marks(laid, size, reader), *grain, *sizes)
    ground = Stroke(contour=rectangle(0, 0, *size), ink=Ink.SOFT, width=_LINE, fill=Ink.WASTE)
    under = (ground, *(stroke for box in held for stroke in clamp_zone(box)))
    return under, (*signs, *_badges(spots, held, signs), *_order(ends[0], layout, size, reader))


def _piece(part: SettledPart, seat: Seat, engraved: Mapping[str, float]) -> Iterator[Stroke]:
    """Yield a piece's face, its cuts in the colours of their operations, then its bridges."""
    yield from face_strokes(part, seat, _LOOK)
    for cut in part.cuts:
        width = stroke_width(engraved, cut.feature, seat.scale, _LINE)
        for contour in cut.contours:
            yield Stroke(
                contour=seat.contour(contour),
                ink=INKS[cut.operation],
                width=width,
                dash=DASHES[cut.operation] if width == _LINE else (),  # a wide one is a band
            )
    for bridge in part.bridges:
        yield Stroke(contour=seat.contour(bridge.line), ink=Ink.BRIDGE, width=_BRIDGE)


def _datum(at: Point) -> Iterator[Item]:
    """Yield the sign of the datum, a target with two dark quarters, and the axes from it."""
    x, y = at
    for dx, dy, name in ((1, 0, "x"), (0, 1, "y")):
        tip = (x + dx * _ARROW, y + dy * _ARROW)
        yield Stroke(contour=open_path(at, tip), ink=Ink.ACCENT, width=0.6)
        back = (tip[0] - 2.6 * dx, tip[1] - 2.6 * dy)
        wings = ((back[0] - dy, back[1] - dx), tip, (back[0] + dy, back[1] + dx))
        head = Contour(tuple((u, v, 0.0) for u, v in wings))
        yield Stroke(contour=head, width=None, fill=Ink.ACCENT)
        beside = (tip[0] - 0.9 - 2.2 * dy, tip[1] - 1.2 - 2.8 * dx)
        yield Label(text=name, at=beside, height=_TEXT, ink=Ink.ACCENT, strong=True)
    radius = _SIGN / 2
    yield Stroke(contour=circle(at, _SIGN), ink=Ink.ACCENT, width=0.35, fill=Ink.PAPER)
    for sign in (1, -1):
        quarter = ((x, y, 0.0), (x + sign * radius, y, _QUARTER), (x, y + sign * radius, 0.0))
        yield Stroke(contour=Contour(quarter), width=None, fill=Ink.ACCENT)
    corner = (x - radius - 0.4, y - radius - _TEXT * CAPITAL - 0.2)
    yield Label(text="0,0", at=corner, height=_TEXT, ink=Ink.ACCENT, anchor=Anchor.END, strong=True)


_QUARTER = tan(pi / 8)
"""The bulge of a quarter turn."""


def _badges(
    spots: Sequence[ClampSpot], boxes: Sequence[Box], taken: Sequence[Item]
) -> Iterator[Item]:
    """Yield the numbers of the spots: on the spot where it is wide enough, else off the sheet."""
    lines = [each.contour for each in taken if isinstance(each, Stroke)]
    filled = [label_box(each) for each in taken if isinstance(each, Label)]
    for number, (spot, box) in enumerate(zip(spots, boxes, strict=True), 1):
        places = list(_places(spot.edge, box))
        free = (at for at in places if _is_free(_disc(at), lines, filled))
        at = next(free, places[-1])
        filled.append(_disc(at))
        rim = circle(at, _BADGE)
        yield Stroke(contour=rim, ink=Ink.INK, width=0.25, fill=Ink.INK)
        yield Label(
            text=str(number),
            at=(at[0], at[1] - _NUMBER * CAPITAL / 2),
            height=_NUMBER,
            ink=Ink.PAPER,
            anchor=Anchor.MIDDLE,
            strong=True,
        )


def _disc(at: Point) -> Box:
    half = _BADGE / 2 + 0.3
    return at[0] - half, at[1] - half, at[0] + half, at[1] + half


def _places(edge: str, box: Box) -> Iterator[Point]:
    x0, y0, x1, y1 = box
    upright = edge in ("left", "right")
    low, high = (y0, y1) if upright else (x0, x1)
    deep = x1 - x0 if upright else y1 - y0
    middle = (x0 + x1) / 2 if upright else (y0 + y1) / 2
    # A third row stands beyond the size below; what is beside an upright one is in its way.
    ends = {"bottom": (y0, -1), "top": (y1, 1), "left": (x0, -1), "right": (x1, 1)}
    rim, way = ends[edge]
    off = _BADGE / 2 + 0.9
    across = [middle] if deep >= _BADGE * 0.8 else []
    beside = (rim + way * (off + step * (_BADGE + 0.6)) for step in range(2 if upright else 3))
    for level in (*across, *beside):
        for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8):
            along = low + share * (high - low)
            yield (level, along) if upright else (along, level)


def _is_free(box: Box, lines: Sequence[Contour], filled: Sequence[Box]) -> bool:
    frame = rectangle(*box)
    return all(apart(box, other) for other in filled) and not any(
        intersects(each, frame) for each in lines
    )


def _sizes(layout: SheetLayout, size: tuple[float, float], reader: Reader) -> Iterator[Dimension]:
    width, height = sheet_sides(layout.size, reader)
    yield Dimension(a=(0, 0), b=(size[0], 0), text=width, offset=-_AWAY, height=_TEXT)
    yield Dimension(a=(0, 0), b=(0, size[1]), text=height, offset=_AWAY, height=_TEXT)


def _order(
    settled: SettledPlan, layout: SheetLayout, size: tuple[float, float], reader: Reader
) -> Iterator[Item]:
    """Yield the operations in cutting order, each with a line of its colour, below the sheet.

    Bridges, over which the outlines' cutter lifts, stand last.
    """
    parts = {part.name: part for part in settled.parts}
    used = {cut.operation for each in layout.placements for cut in parts[each.part].cuts}
    names = [
        (operation_called(each, reader), INKS[each], DASHES[each])
        for each in Operation
        if each in used
    ]
    if any(parts[each.part].bridges for each in layout.placements):
        names.append((say(reader, "drawing-bridges"), Ink.BRIDGE, ()))
    widths = [_KEY + text_width(name, _TEXT) for name, *_ in names]
    x = (size[0] - math.fsum(widths) - _STEP * (len(names) - 1)) / 2
    y = -_AWAY - 8.0
    for index, ((name, ink, dash), wide) in enumerate(zip(names, widths, strict=True)):
        line = open_path((x, y + _TEXT * 0.3), (x + _KEY - 1.6, y + _TEXT * 0.3))
        yield Stroke(contour=line, ink=ink, width=0.7, dash=dash)
        yield Label(text=name, at=(x + _KEY, y), height=_TEXT)
        if index < len(names) - 1 and names[index + 1][1] is not Ink.BRIDGE:
            arrow = (x + wide + _STEP / 2, y)
            yield Label(text="→", at=arrow, height=_TEXT, ink=Ink.SOFT, anchor=Anchor.MIDDLE)
        x += wide + _STEP


def _sentence(layout: SheetLayout, spots: Sequence[ClampSpot], datum: str, reader: Reader) -> str:
    wide, high = sheet_sides(layout.size, reader)
    zero = say(reader, "drawing-zero-middle" if datum == CENTRE else "drawing-zero-corner")
    clamps = say(reader, "drawing-clamps", spots=len(spots))
    return say(reader, "drawing-machine-shows", wide=wide, high=high, zero=zero, clamps=clamps)


def _scrap(layout: SheetLayout, reader: Reader) -> str:
    wide, high = sheet_sides(layout.size, reader)
    return say(reader, "drawing-scrap-shows", wide=wide, high=high)
