"""Hardware at full size, from the side and from its head, to lay the bought piece on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from kerfolio.assembly.plates import bracket_plate
from kerfolio.basis.keeper import kept
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.hardware_solid import hardware_solid
from kerfolio.drawing.lettering import CAPITAL, Box, text_width
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.facing import Posed, PosedPlated, PosedTurned, solids_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.rigid import HERE, Rigid
from kerfolio.geometry.view import View
from kerfolio.model.stock import HardwareStock

ROOM = (126.0, 150.0)
_CHECK_ROOM = 8.0
CHECK = {"mm": (50.0, "50 mm"), "in": (50.8, "2 in")}
"""The length to measure beside it, mm, and in words, by the unit named first."""

_FRONT = View(0.0, 0.0)
_FACETS = 48
"""Facets of a turn at full size, where corners would show."""
_TEXT = 3.2
_GAP, _APART, _BELOW = 4.0, 9.0, 2.0
"""Between both views of a piece, between pieces, and over the words under it, mm."""

SIDE = Rigid(x=(0.0, 0.0, 1.0), y=(0.0, -1.0, 0.0), z=(1.0, 0.0, 0.0))
"""A piece on its side, its head at the left."""
_TURNED = Rigid(x=(0.0, -1.0, 0.0), y=(0.0, 0.0, -1.0), z=(1.0, 0.0, 0.0))
"""The same a quarter round its axis, so that a hole through it shows."""
_BEND = Rigid(x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0), z=(0.0, -1.0, 0.0))
"""A bracket as it is bent."""
_HEAD_ON = Rigid(x=(1.0, 0.0, 0.0), y=(0.0, 0.0, -1.0), z=(0.0, 1.0, 0.0))


@dataclass(frozen=True, slots=True)
class _View:
    """A view of a piece: how it stands before the eye, and the box round it then, mm."""

    posed: Posed
    box: Box

    @property
    def wide(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def high(self) -> float:
        return self.box[3] - self.box[1]

    def strokes(self, left: float, middle: float) -> tuple[Stroke, ...]:
        """Return it from there to the right, as high above that height as below."""
        return _strokes(self.posed, left - self.box[0], middle - (self.box[1] + self.box[3]) / 2)


@lru_cache(maxsize=256)  # chapters, page and papers show the same
def _strokes(posed: Posed, x: float, y: float) -> tuple[Stroke, ...]:
    return kept(_strokes_anew, posed, x, y)


def _strokes_anew(posed: Posed, x: float, y: float) -> tuple[Stroke, ...]:
    found = seen(solids_of([posed]), _FRONT, apart=APART)
    return solid_strokes(found, PaperSeat(_FRONT, 1.0, x, y), ())


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece with its words; ``wide`` is the room it takes, mm."""

    views: tuple[_View, _View]
    words: str

    @property
    def pictured(self) -> float:
        first, second = self.views
        return first.wide + _GAP + second.wide

    @property
    def wide(self) -> float:
        return max(self.pictured, text_width(self.words, _TEXT) + 1.0)

    @property
    def half(self) -> float:
        """Half of its height, mm."""
        return max(each.high for each in self.views) / 2

    def items(self, left: float, middle: float, base: float) -> Iterator[Item]:
        """Yield both views on an axis at that height, and the words on that line."""
        first, second = self.views
        yield from first.strokes(left, middle)
        yield from second.strokes(left + self.pictured - second.wide, middle)
        yield Label(text=self.words, at=(left, base), height=_TEXT)


def _views(item: HardwareStock) -> tuple[_View, _View] | None:
    """Return what is shown of a piece: its side and its head, or a bracket's bend and its leg."""
    solid = hardware_solid(item, _FACETS)
    if solid is not None:
        radius = solid.radius
        side = PosedTurned(solid, _TURNED if solid.across else SIDE)
        return (
            _View(side, (solid.low, -radius, solid.high, radius)),
            _View(PosedTurned(solid, _HEAD_ON), (-radius, -radius, radius, radius)),
        )
    plate = bracket_plate(item)
    if plate is None:
        return None
    plate = replace(plate, facets=_FACETS)
    (x0, x1), (y0, y1) = ((min(each), max(each)) for each in zip(*plate.profile, strict=True))
    half = plate.wide / 2
    return (
        _View(PosedPlated(plate, _BEND), (x0, y0, x1, y1)),
        _View(PosedPlated(plate, HERE), (x0, -half, x1, half)),
    )


def hardware_views(
    hardware: Sequence[tuple[HardwareStock, int]],
    reader: Reader = METRIC,
    room: tuple[float, float] = ROOM,
) -> tuple[Drawing, ...]:
    """Return pieces of hardware with their counts at full size, as far as they can be drawn.

    They stand in rows as wide as ``room`` (mm) lets them, as many in a drawing as it is high. Below
    is a length to measure, since a printer may shrink a page.
    """
    pieces = [
        _Piece(views, f"{count} × {item.title}")
        for item, count in hardware
        if (views := _views(item)) is not None
    ]
    drawings: list[Drawing] = []
    rows: list[list[_Piece]] = []
    used = _CHECK_ROOM
    for row in _rows(pieces, room[0]):
        high = _high(row)
        if rows and used + high > room[1]:
            drawings.append(_drawing(rows, reader))
            rows, used = [], _CHECK_ROOM
        rows.append(row)
        used += high
    return (*drawings, _drawing(rows, reader)) if rows else ()


def _drawing(rows: Sequence[Sequence[_Piece]], reader: Reader) -> Drawing:
    items: list[Item] = []
    top = 0.0
    for row in rows:
        left, middle = 0.0, top - _radius(row)
        base = middle - _radius(row) - _BELOW - _TEXT * CAPITAL
        for each in row:
            items += each.items(left, middle, base)
            left += each.wide + _APART
        top -= _high(row)
    items += _check(reader, top - 2.0)
    told = listed(reader, [each.words for row in rows for each in row])
    return Drawing(
        box=padded(extent(items), 0.6),
        items=tuple(items),
        title=say(reader, "drawing-hardware"),
        description=say(reader, "drawing-hardware-shows", pieces=told),
    )


def _high(row: Sequence[_Piece]) -> float:
    return 2 * _radius(row) + _BELOW + _TEXT * CAPITAL + _APART / 2


def _radius(row: Sequence[_Piece]) -> float:
    return max(each.half for each in row)


def _rows(pieces: Sequence[_Piece], wide: float) -> Iterator[list[_Piece]]:
    row: list[_Piece] = []
    used = 0.0
    for each in pieces:
        if row and used + _APART + each.wide > wide:
            yield row
            row, used = [], 0.0
        used += each.wide + (_APART if row else 0.0)
        row.append(each)
    if row:
        yield row


def _check(reader: Reader, y: float) -> Iterator[Item]:
    long, words = CHECK[reader.unit]
    for line in (((0.0, y), (long, y)), *(((x, y - 1.2), (x, y + 1.2)) for x in (0.0, long))):
        yield Stroke(contour=open_path(*line), ink=Ink.INK, width=0.25)
    yield Label(
        text=say(reader, "drawing-art-check", length=words),
        at=(0.0, y - 2.0 - _TEXT * CAPITAL),
        height=_TEXT,
        ink=Ink.SOFT,
    )
