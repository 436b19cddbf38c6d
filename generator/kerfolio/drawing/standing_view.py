"""A finding on how things lie or stand: from the side they do it on, with the floor drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.extent import box_of, corners
from kerfolio.basis.finding import Measured
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.cut_window import PITCH, RING, TEXT, key
from kerfolio.drawing.extent import extent
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.meeting_view import box_around, names_of
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Item, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import PosedPanel, extent_of, solids_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.shapes import circle
from kerfolio.geometry.view import View

_ROOM: Box = (0.0, 0.0, 118.0, 52.0)
_FRONT, _RIGHT, _SLANTED = View(0.0, 0.0), View(90.0, 0.0), View(-32.0, 28.0)
_FLOOR = 0.5
_HATCH, _PITCH, _PAST = 2.2, 3.0, 6.0
"""How long hatches under the floor are, how far apart, and how far that goes past what stands."""
_LEAST_RING = 0.6


def standing_view(
    moving: Sequence[PosedPiece],
    others: Sequence[PosedPiece],
    measured: Measured | None,
    title: str,
    unit: str,
) -> Drawing:
    """Return the picture of what stands and lies; what lies is tinted, ``unit`` the plan's.

    Where something is measured it is seen square from the front or the right, as that shows it.
    """
    reader, pieces = Reader(unit=unit), (*moving, *others)
    view = _view_of(measured)
    solids = solids_of([PosedPanel(each.panel, each.pose) for each in pieces])
    box = extent_of(solids, view)
    seat = fitted(view, box, _ROOM)
    tinted = range(len(moving) if others else 0)
    found = seen(solids, view, apart=APART / seat.scale, first=tuple(tinted))
    items: list[Item] = [*solid_strokes(found, seat, tinted)]
    if view is not _SLANTED:
        floor = seat.spot((0.0, 0.0, _lowest(pieces)))[1]
        items += _ground(extent(items), floor)
    told = ""
    if measured:
        told = f"{length_in(dist(measured.a, measured.b), reader)} {measured.word}"
        items += _measured(measured, seat, told, extent(items))
    rows = [(Ink.NEW_LIGHT, names_of(moving)), (Ink.FACE_MID, names_of(others))]
    items += key(rows if others else [(Ink.FACE_MID, names_of(moving))], extent(items))
    words = f"{names_of(moving)} on {names_of(others)}" if others else names_of(moving)
    return Drawing(
        box=box_around(items),
        items=tuple(items),
        title=title,
        description=f"{words}: {told}." if told else f"{words}.",
    )


def _view_of(measured: Measured | None) -> View:
    """Return the view that shows what is measured at its full length."""
    if measured is None:
        return _SLANTED
    x, y = (abs(measured.b[i] - measured.a[i]) for i in range(2))
    return _RIGHT if y > x else _FRONT


def _lowest(pieces: Sequence[PosedPiece]) -> float:
    return min(low[2] for low, _ in (box_of(corners(each)) for each in pieces))


def _ground(box: Box, floor: float) -> Iterator[Item]:
    """Yield the floor as a line with hatches below it."""
    left, right = box[0] - _PAST, box[2] + _PAST
    yield Stroke(contour=open_path((left, floor), (right, floor)), ink=Ink.INK, width=_FLOOR)
    for step in range(int((right - left) / _PITCH)):
        x = left + _HATCH + step * _PITCH
        line = open_path((x, floor), (x - _HATCH, floor - _HATCH))
        yield Stroke(contour=line, ink=Ink.SOFT, width=0.18)


def _measured(measured: Measured, seat: PaperSeat, told: str, box: Box) -> Iterator[Item]:
    a, b = (seat.spot((each[0], each[1], each[2])) for each in (measured.a, measured.b))
    reach = max(RING[1], dist(a, b) / 2 + _LEAST_RING)
    middle: Point = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    if abs(b[1] - a[1]) > abs(b[0] - a[0]):
        low, high = sorted((a, b), key=lambda each: each[1])
        away = low[0] - box[2] - PITCH / 2
        yield Dimension(a=low, b=high, text=told, offset=away, height=TEXT, ink=Ink.INK)
    else:
        left, right = sorted((a, b))
        above = box[3] + PITCH - left[1]
        yield Dimension(a=left, b=right, text=told, offset=above, height=TEXT, ink=Ink.INK)
    yield Stroke(contour=circle(middle, 2 * reach), ink=Ink.ACCENT, width=RING[0])
