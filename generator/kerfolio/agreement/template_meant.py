"""What a template must show, from the settled part alone, by the pen that draws it."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.agreement.meant import Meant
from kerfolio.drawing.face import FINE, OUTLINE
from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.template_shape import WORDS
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import circle
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.bored import bores_of_part
from kerfolio.settling.settled import Operation, SettledFeature, SettledPart
from kerfolio.writing.read_pdf import Pen

EDGES, RECESSES, ENGRAVED, DRILL, CENTRES, SHADE, WOOD, BARS = (
    *("edges", "recesses", "engraved lines", "drill circles", "centres of holes"),
    *("the shade beside edges", "the wood", "bars to measure from"),
)
"""What the lines of a template are, as a file's layers are."""

_REACH = 3.0
"""Half of a cross, mm; that of a drill circle is no longer than half its radius."""

_SHADED, _FROM_EDGE, _BAR, _BAR_LENGTH = 4.0, 1.5, 1.0, 40.0
"""How wide the shade along edges is drawn, half of it hidden; where bars stand, how wide they are
and how long, mm."""

_PENS = {
    Pen(_SHADED, PALETTE[Ink.FAINT], ""): SHADE,
    Pen(0.0, "", "#ffffff"): WOOD,
    Pen(_BAR, PALETTE[Ink.INK], ""): BARS,
    Pen(OUTLINE, PALETTE[Ink.INK], ""): EDGES,
    Pen(FINE, PALETTE[Ink.INK], PALETTE[Ink.WOOD]): RECESSES,
    Pen(FINE, PALETTE[Ink.SOFT], ""): ENGRAVED,
    Pen(FINE, PALETTE[Ink.ACCENT], ""): DRILL,
    Pen(FINE, PALETTE[Ink.INK], ""): CENTRES,
}


def layer_of(pen: Pen) -> str:
    """Return what a pen draws on a template."""
    return _PENS.get(pen, "arrows")


def template_meant(part: SettledPart, drill: float, drawing: Drawing) -> tuple[Meant, ...]:
    """Return every contour of a part's template in the part's frame.

    ``drill`` is the diameter in mm that opens inside corners. Of ``drawing`` only the arrows are
    taken, which stand where words leave room.
    """
    edges = (part.plain.outer, *part.plain.openings)
    return (
        *(Meant(layer, each, part.name) for layer in (SHADE, WOOD) for each in edges),
        *(Meant(BARS, each, part.name) for each in _bars()),
        *_recesses(part),
        *(Meant(EDGES, each, part.name) for each in edges),
        *(each for at in part.drill_centres for each in _drilled(part.name, at, drill)),
        *(
            Meant(CENTRES, each, part.name)
            for at in dict.fromkeys(each.at for each in part.features if each.kind is HOLE)
            for each in _cross(at, _REACH)
        ),
        *(Meant(CENTRES, each, part.name) for bore in bores_of_part(part) for each in _bored(bore)),
        *_signs(drawing),
    )


def _bored(bore: SettledFeature) -> Iterator[Contour]:
    """Yield the axis of a bore, which begins outside the edge, and its two walls."""
    (x, y), (out_x, out_y) = bore.at, bore.direction
    deep = bore.depth.value if bore.depth else 0.0
    for aside, start in ((0.0, _REACH), (bore.width.value / 2, 0.0), (-bore.width.value / 2, 0.0)):
        at = (x - aside * out_y, y + aside * out_x)
        first = (at[0] + start * out_x, at[1] + start * out_y, 0.0)
        last = (at[0] - deep * out_x, at[1] - deep * out_y, 0.0)
        yield Contour((first, last), closed=False)


def _bars() -> Iterator[Contour]:
    """Yield the bars at the part's 0,0, from which is measured: upwards and to the right."""
    for x, y in ((-_FROM_EDGE, _BAR_LENGTH), (_BAR_LENGTH, -_FROM_EDGE)):
        yield Contour(((-_FROM_EDGE, -_FROM_EDGE, 0.0), (x, y, 0.0)), closed=False)


def _recesses(part: SettledPart) -> Iterator[Meant]:
    for cut in part.cuts:
        if cut.depth is not None:
            layer = ENGRAVED if cut.operation is Operation.ENGRAVE else RECESSES
            yield from (
                Meant(layer, each, cut.feature or part.name) for each in cut.square or cut.contours
            )


def _drilled(of: str, at: Point, drill: float) -> Iterator[Meant]:
    for each in (circle(at, drill), *_cross(at, min(_REACH, drill / 4))):
        yield Meant(DRILL, each, of)


def _cross(at: Point, reach: float) -> Iterator[Contour]:
    x, y = at
    yield Contour(((x - reach, y, 0.0), (x + reach, y, 0.0)), closed=False)
    yield Contour(((x, y - reach, 0.0), (x, y + reach, 0.0)), closed=False)


def _signs(drawing: Drawing) -> Iterator[Meant]:
    for item in drawing.items:
        if isinstance(item, Stroke) and item.layer == WORDS.name:
            yield Meant(layer_of(_pen(item)), item.contour, "the arrows")


def _pen(stroke: Stroke) -> Pen:
    fill = PALETTE[stroke.fill] if stroke.fill else ""
    return Pen(stroke.width or 0.0, PALETTE[stroke.ink] if stroke.width else "", fill)
