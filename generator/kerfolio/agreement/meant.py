"""What cut files must hold, from the settled plan, its layout and the datum alone.

Nothing of what draws the files is used to place it, so that a fault there is seen.
"""

from __future__ import annotations

import cmath
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import radians

from kerfolio.drawing.cut_note import CHECK_SQUARES
from kerfolio.drawing.cut_sheet import likeness
from kerfolio.drawing.layer import CHECK_SQUARE, SHEET_EDGE, bridge_layer, layer_for
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.built_in import built_in
from kerfolio.settling.settled import CENTRE, Coupon, Cut, Operation, SettledPart, SettledPlan
from kerfolio.shop.art import Art

_ABOVE = 10.0
"""How far the check squares stand above what is cut, and from one another, mm."""


@dataclass(frozen=True, slots=True)
class Meant:
    """A contour that a file must hold: on which layer, and of what it is."""

    layer: str
    contour: Contour
    of: str


def sheet_meant(settled: SettledPlan, layout: SheetLayout) -> tuple[Meant, ...]:
    """Return what a sheet's cut file must hold, its datum at 0,0."""
    cut = settled.sheet(layout.sheet).cut
    parts = {part.name: built_in(part, cut) for part in settled.parts}
    wide, high = layout.size
    x, y = (-wide / 2, -high / 2) if settled.sheet(layout.sheet).datum == CENTRE else (0.0, 0.0)
    edge = Meant(SHEET_EDGE.name, _box(x, y, x + wide, y + high), "the sheet's edge")
    pieces = (
        each
        for laid in layout.placements
        for each in _part(parts[laid.part], laid.piece, (laid.x + x, laid.y + y), laid.turn)
    )
    return _checked((edge, *pieces))


def part_meant(part: SettledPart) -> tuple[Meant, ...]:
    """Return what a part's cut file must hold, at the part's own 0,0."""
    return _checked(_part(part, part.name))


def art_meant(art: Art) -> tuple[Meant, ...]:
    """Return what an engraving's cut file must hold, its middle at 0,0."""
    boxes = [bounds(each) for each in art.lines]
    x = (min(each.x0 for each in boxes) + max(each.x1 for each in boxes)) / 2
    y = (min(each.y0 for each in boxes) + max(each.y1 for each in boxes)) / 2
    cut = Cut(operation=Operation.ENGRAVE, depth=art.depth, contours=art.lines)
    return _checked(_cuts((cut,), art.name, (-x, -y)))


def coupon_meant(coupon: Coupon) -> tuple[Meant, ...]:
    """Return what a fit coupon's cut file must hold: the plate at 0,0, the tab beside it."""
    plate, tab = bounds(coupon.plate.routed), bounds(coupon.tab.routed)
    x, y = coupon.beside
    return _checked(
        (
            *_cuts(coupon.plate.cuts, "the plate", (-plate.x0, -plate.y0)),
            *_cuts(coupon.tab.cuts, "the tab", (x - tab.x0, y - tab.y0)),
        )
    )


def _part(part: SettledPart, of: str, at: Point = (0.0, 0.0), turn: float = 0.0) -> Iterator[Meant]:
    """Yield a part's cuts, and the lines over which the cutter lifts."""
    yield from _cuts(part.cuts, of, at, turn)
    for bridge in part.bridges:
        (x, y), (dx, dy), half = bridge.at, bridge.direction, bridge.width / 2
        ends = ((x - half * dx, y - half * dy, 0.0), (x + half * dx, y + half * dy, 0.0))
        line = placed(Contour(ends, closed=False), at, turn)
        yield Meant(bridge_layer(bridge).name, line, of)


def _cuts(
    cuts: Iterable[Cut], of: str, at: Point = (0.0, 0.0), turn: float = 0.0
) -> Iterator[Meant]:
    for cut in cuts:
        layer = layer_for(cut).name
        for contour in cut.contours:
            yield Meant(layer, placed(contour, at, turn), of)


def placed(contour: Contour, at: Point, turn: float = 0.0) -> Contour:
    """Return a contour turned by degrees counter-clockwise about 0,0, then moved."""
    if not turn:
        x, y = at
        return Contour(tuple((u + x, v + y, b) for u, v, b in contour.vertices), contour.closed)
    way, to = cmath.rect(1.0, radians(turn)), complex(*at)
    spots = [(complex(u, v) * way + to, b) for u, v, b in contour.vertices]
    return Contour(tuple((z.real, z.imag, b) for z, b in spots), contour.closed)


def _checked(meant: Iterable[Meant]) -> tuple[Meant, ...]:
    """Return each contour once, and the check squares above all of them.

    A contour stated twice is one line of the file.
    """
    once: dict[tuple[object, ...], Meant] = {}
    for each in meant:
        once.setdefault((each.layer, *likeness(each.contour)), each)
    boxes = [bounds(each.contour) for each in once.values()]
    left, bottom = min(each.x0 for each in boxes), max(each.y1 for each in boxes) + _ABOVE
    squares = []
    for side, words in CHECK_SQUARES:
        square = _box(left, bottom, left + side, bottom + side)
        squares.append(Meant(CHECK_SQUARE.name, square, f"the square of {words}"))
        left += side + _ABOVE
    return (*once.values(), *squares)


def _box(x0: float, y0: float, x1: float, y1: float) -> Contour:
    return Contour(((x0, y0, 0.0), (x1, y0, 0.0), (x1, y1, 0.0), (x0, y1, 0.0)))
