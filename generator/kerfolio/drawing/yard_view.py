"""A sheet at the yard: its pieces, the straight cuts between them, the numbers of the blanks."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.face import Look, face_strokes
from kerfolio.drawing.lettering import CAPITAL
from kerfolio.drawing.sheet_picture import seat_of
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.panel_cuts import PanelCut, PanelCuts
from kerfolio.settling.settled import SettledPlan

ROOM = (102.0, 102.0)
"""mm: about a phone's, where the card is read."""
_LEFT, _ABOVE, _AIR = 6.0, 6.0, 0.6
"""Round the sheet, mm: numbers of cuts stand at its left and above it."""
_TEXT, _NUMBER = 3.4, 5.0
_LOOK = Look(outline=0.2, inside=0.1)


def yard_view(
    settled: SettledPlan,
    layout: SheetLayout,
    found: PanelCuts,
    reader: Reader,
    room: tuple[float, float] = ROOM,
) -> Drawing:
    """Return the picture in a room, mm: cuts are numbered in their order, blanks by themselves."""
    around = (_LEFT + _AIR, _ABOVE + _AIR)
    sides = zip(room, around, layout.size, strict=True)
    scale = min((most - taken) / side for most, taken, side in sides)
    width, height = (each * scale for each in layout.size)
    pieces = (
        stroke
        for each in layout.placements
        for stroke in face_strokes(settled.part(each.part), seat_of(each, scale), _LOOK)
    )
    sheet = Stroke(contour=rectangle(0, 0, width, height), ink=Ink.SOFT, fill=Ink.WASTE)
    items: tuple[Item, ...] = (sheet, *pieces, *_cuts(found, scale), *_blanks(found, scale))
    return Drawing(
        box=(-_LEFT, -_AIR, width + _AIR, height + _ABOVE),
        items=items,
        title=say(reader, "drawing-yard", plan=settled.plan.title, sheet=layout.number),
        description=say(reader, "drawing-yard-shows", cuts=len(found.cuts)),
    )


def _cuts(found: PanelCuts, scale: float) -> Iterator[Item]:
    for number, cut in enumerate(found.cuts, start=1):
        (ax, ay), (bx, by) = (tuple(x * scale for x in end) for end in _ends(cut))
        line = Contour(((ax, ay, 0.0), (bx, by, 0.0)), closed=False)
        yield Stroke(contour=line, ink=Ink.ACCENT, width=0.6, dash=(2.0, 1.0))
        at = (bx, by + 1.4) if cut.across else (ax - 1.4, ay - _TEXT / 3)
        anchor = Anchor.MIDDLE if cut.across else Anchor.END
        yield Label(
            text=str(number), at=at, height=_TEXT, ink=Ink.ACCENT, anchor=anchor, strong=True
        )


def _ends(cut: PanelCut) -> tuple[tuple[float, float], tuple[float, float]]:
    x0, y0, x1, y1 = cut.panel
    return ((cut.at, y0), (cut.at, y1)) if cut.across else ((x0, cut.at), (x1, cut.at))


def _blanks(found: PanelCuts, scale: float) -> Iterator[Item]:
    for number, blank in enumerate(found.laden, start=1):
        x, y = ((blank.box[low] + blank.box[low + 2]) / 2 * scale for low in (0, 1))
        yield Stroke(contour=circle((x, y), 1.3 * _NUMBER), width=0.25, fill=Ink.PAPER)
        at = (x, y - _NUMBER * CAPITAL / 2)
        yield Label(text=str(number), at=at, height=_NUMBER, anchor=Anchor.MIDDLE, strong=True)
