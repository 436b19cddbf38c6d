"""Cut files of a sheet, a part or a fit coupon: on cut layers there is nothing but cuts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.figured import joined
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.cut_note import (
    CHECK_SQUARES,
    art_note,
    coupon_note,
    part_note,
    reopened_title,
    reopening_note,
    sheet_called,
    sheet_note,
)
from kerfolio.drawing.extent import extent, union
from kerfolio.drawing.layer import (
    CHECK_SQUARE,
    INKS,
    NOTE,
    PIECE_EDGE,
    SHEET_EDGE,
    bridge_layer,
    in_cutting_order,
    layer_for,
    uncut_layer,
)
from kerfolio.drawing.lettering import CAPITAL, Box
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.built_in import built_in
from kerfolio.settling.coupon import places_of
from kerfolio.settling.measured import sheets_measured
from kerfolio.settling.settled import (
    CENTRE,
    Coupon,
    Cut,
    Operation,
    SettledBridge,
    SettledPart,
    SettledPlan,
    SettledSheet,
)
from kerfolio.settling.titles import feature_title, part_title, sheet_title
from kerfolio.shop.art import Art
from kerfolio.shop.reopening import Reopening

_GAP = 10.0
_LINE = 0.25
_BRIDGE = 1.0


@dataclass(frozen=True, slots=True)
class _Seated:
    """A part's cuts and bridges, and where they go."""

    cuts: tuple[Cut, ...]
    seat: Seat
    bridges: tuple[SettledBridge, ...] = ()


def cut_sheet(
    settled: SettledPlan, layout: SheetLayout, reader: Reader = METRIC, what: str = ""
) -> Drawing:
    """Return one sheet with all its pieces' cuts, full size in mm, its datum at 0,0.

    ``reader`` is whom its words are for, ``what`` what it is called where it has no
    number.

    Note and check squares stand above the sheet's upper edge, so nothing of them is cut and the
    file's own lower left corner is the sheet's. Raises KeyError for a part the plan has not.
    """
    sheet, laid = settled.sheet(layout.sheet), {each.part for each in layout.placements}
    parts = {part.name: built_in(part, sheet.cut) for part in settled.parts if part.name in laid}
    x, y = datum_of(sheet, layout.size)
    seated = [
        _seated(parts[each.part], Seat(x=each.x - x, y=each.y - y, turn=each.turn))
        for each in layout.placements
    ]
    lines = sheet_note(settled, layout, reader, what)
    width, height = layout.size
    edge = _rectangle((-x, -y, width - x, height - y), SHEET_EDGE, Ink.ASIDE)
    made = _cut_file(
        (edge,),
        seated,
        lines,
        14.0,
        _title(settled, what or sheet_called(layout, reader), reader),
        reader,
    )
    return replace(made, thickness=sheet.thickness)


def _seated(part: SettledPart, seat: Seat) -> _Seated:
    return _Seated(part.cuts, seat, part.bridges)


def datum_of(sheet: SettledSheet, size: Point) -> Point:
    """Return where on a sheet of a size its cut files have 0,0, mm from its lower left corner."""
    return (size[0] / 2, size[1] / 2) if sheet.datum == CENTRE else (0.0, 0.0)


def cut_part(settled: SettledPlan, part: SettledPart, reader: Reader = METRIC) -> Drawing:
    """Return the cuts of one part at its own 0,0, full size in mm."""
    sheet, lines = settled.sheet(part.sheet), part_note(settled, part, reader)
    seated = [_seated(built_in(part, sheet.cut), Seat())]
    # A true cut that is built in moves nothing else: what reaches past the finished edge is a hair.
    finished = extent(_strokes([_seated(part, Seat())], reader)[0])
    title = _title(settled, part_title(settled.plan, part.name, reader), reader)
    made = _cut_file((), seated, lines, 8.0, title, reader, reach=finished)
    return replace(made, thickness=sheet.thickness)


def cut_reopening(settled: SettledPlan, reopening: Reopening, reader: Reader = METRIC) -> Drawing:
    """Return what opens a piece's openings wider, full size in mm.

    The corner of the edges that it is laid by is at 0,0, which is the file's own lower left corner:
    what runs out past an edge lies beyond that.
    """
    part, lying = reopening.part, reopening.lying
    seat = Seat(x=lying.x, y=lying.y, turn=lying.turn)
    edges = tuple(
        Stroke(contour=seat.contour(each), layer=PIECE_EDGE.name, ink=Ink.ASIDE, width=_LINE)
        for each in contours_of(part.routed)
    )
    lines = reopening_note(settled, reopening, reader)
    called = reopened_title(settled, reopening, reader)
    title = _title(settled, say(reader, "cutfile-wider-openings", part=called), reader)
    made = _cut_file(edges, [_Seated(reopening.cuts, seat)], lines, 8.0, title, reader, PIECE_EDGE)
    return replace(
        made, box=(0.0, 0.0, *made.box[2:]), thickness=settled.sheet(part.sheet).thickness
    )


def cut_art(settled: SettledPlan, art: Art, reader: Reader = METRIC) -> Drawing:
    """Return one engraving alone, full size in mm, its middle at 0,0."""
    lines = art_note(settled, art, reader)
    cut = Cut(operation=Operation.ENGRAVE, depth=art.depth, contours=art.centred)
    title = _title(settled, feature_title(art.name), reader)
    return _cut_file((), [_Seated((cut,), Seat())], lines, 8.0, title, reader)


def cut_coupon(settled: SettledPlan, coupon: Coupon, reader: Reader = METRIC) -> Drawing:
    """Return the cuts of a fit coupon, full size in mm: the plate, and the tab beside it."""
    both = zip((coupon.plate, coupon.tab), places_of(coupon), strict=True)
    seated = [_Seated(part.cuts, Seat(x=x, y=y)) for part, (x, y) in both]
    lines = coupon_note(settled, coupon, reader)
    called = say(reader, "cutfile-coupon-for", sheet=sheet_title(settled, coupon.sheet))
    title = _title(settled, called, reader)
    return _cut_file((), seated, lines, 8.0, title, reader)


def _title(settled: SettledPlan, what: str, reader: Reader) -> str:
    head, sheets = f"{settled.plan.title} {settled.plan.version}", sheets_measured(settled, reader)
    return say(reader, "cutfile-title", plan=head, what=what, sheets=sheets)


def _cut_file(
    edges: tuple[Stroke, ...],
    seated: Iterable[_Seated],
    lines: tuple[str, ...],
    height: float,
    title: str,
    reader: Reader,
    edge: Layer = SHEET_EDGE,
    reach: Box | None = None,
) -> Drawing:
    """Return a file of cuts with its margin above ``reach``, above all that is drawn if None."""
    placed = tuple(seated)
    strokes, layers = _strokes(placed, reader)
    bridges, heights = _bridges(placed, reader)
    inner = extent((*edges, *strokes)) if reach is None else reach
    margin = tuple(_margin(inner, lines, height, reader))
    outer = union((inner, extent(margin)))
    own = ((edge,) if edges else ()) + (NOTE, CHECK_SQUARE)
    uncut = tuple(uncut_layer(each, reader) for each in own)
    return Drawing(
        box=(min(0.0, outer[0]), min(0.0, outer[1]), outer[2] + _GAP, outer[3] + _GAP),
        items=(*edges, *strokes, *bridges, *margin),
        layers=(*layers, *heights, *uncut),
        title=title,
        description=joined(". ", lines),
    )


def _strokes(
    seated: Iterable[_Seated], reader: Reader
) -> tuple[tuple[Stroke, ...], tuple[Layer, ...]]:
    """Return every contour once, and the layers used, both in cutting order."""
    found: dict[tuple[object, ...], tuple[Layer, Stroke]] = {}
    for each in seated:
        for cut in each.cuts:
            layer = layer_for(cut, reader)
            for contour in cut.contours:
                placed = each.seat.contour(contour)
                stroke = Stroke(
                    contour=placed, layer=layer.name, ink=INKS[cut.operation], width=_LINE
                )
                found.setdefault((layer.name, *likeness(placed)), (layer, stroke))
    layers = in_cutting_order(layer for layer, _ in found.values())
    ranks = {layer.name: rank for rank, layer in enumerate(layers)}
    strokes = sorted((stroke for _, stroke in found.values()), key=lambda s: ranks[s.layer])
    return tuple(strokes), layers


def _bridges(
    seated: Iterable[_Seated], reader: Reader
) -> tuple[tuple[Stroke, ...], tuple[Layer, ...]]:
    """Return the lines over which the cutter lifts, and their layers, low before high."""
    held = [(bridge, each.seat) for each in seated for bridge in each.bridges]
    strokes = [
        Stroke(
            contour=seat.contour(bridge.line),
            layer=bridge_layer(bridge).name,
            ink=Ink.BRIDGE,
            width=_BRIDGE,
        )
        for bridge, seat in held
    ]
    heights = {bridge.height: bridge_layer(bridge, reader) for bridge, _ in held}
    layers = dict.fromkeys(heights[each] for each in sorted(heights))
    return tuple(strokes), tuple(layers)


def likeness(contour: Contour) -> tuple[object, ...]:
    """What two contours share when they are one line drawn twice, wherever they start."""
    spots = sorted((round(x, 4), round(y, 4)) for x, y, _ in contour.vertices)
    bends = sorted(round(abs(bulge), 4) for *_, bulge in contour.vertices)
    return (contour.closed, *spots, *bends)


def _margin(inner: Box, lines: tuple[str, ...], height: float, reader: Reader) -> Iterator[Item]:
    """Yield the check squares and the note, above everything that is cut."""
    left, bottom = inner[0], inner[3] + _GAP
    measure = say(reader, "cutfile-measure")
    for side, words in CHECK_SQUARES:
        box = (left, bottom, left + side, bottom + side)
        yield _rectangle(box, CHECK_SQUARE, Ink.ASIDE)
        yield _label(words, (left + side / 2, bottom + side / 2), 12.0, Anchor.MIDDLE)
        yield _label(measure, (left + side / 2, bottom + 36), 8.0, Anchor.MIDDLE)
        left += side + _GAP
    top = bottom + CHECK_SQUARES[0][0] - height * CAPITAL
    for row, line in enumerate(lines):
        alike = joined("", (line,))  # set as the lines that have figures, in any typeface
        yield _label(alike, (left, top - row * 1.5 * height), height, Anchor.START)


def _label(text: str, at: tuple[float, float], height: float, anchor: Anchor) -> Label:
    return Label(text=text, at=at, height=height, layer=NOTE.name, ink=Ink.ASIDE, anchor=anchor)


def _rectangle(box: Box, layer: Layer, ink: Ink) -> Stroke:
    return Stroke(contour=rectangle(*box), layer=layer.name, ink=ink, width=_LINE)
