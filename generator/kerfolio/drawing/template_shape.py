"""What of a template is drawn true: the plain shape, its recesses, the centres to drill."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.face import FINE, OUTLINE
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Ink, Layer, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle
from kerfolio.model.feature_kind import BORE, HOLE
from kerfolio.settling.bored import bores_of_part
from kerfolio.settling.settled import Operation, SettledFeature, SettledPart

WASTE = Layer(name="waste")
SHAPE = Layer(name="shape")
DRILL = Layer(name="drill")
WORDS = Layer(name="words")

CROSS = 3.0
"""Half a centre cross, mm."""
DASH = (2.0, 1.2)
"""What lies inside the wood is drawn with dashes (ISO 128 series, memory), mm."""
BAND = 2.0
"""How wide the shade along an edge is, mm."""
BAR, BAR_LENGTH = 1.0, 40.0
"""How wide and how long the bars are that tell the two edges to measure from, mm."""


def template_shape(part: SettledPart, drill: float) -> tuple[Stroke, ...]:
    """Return all lines of a part's template; inside corners are opened by a drill, mm."""
    return (
        *_waste(part),
        *_shape(part),
        *(item for at in part.drill_centres for item in _drill(at, drill)),
        *(item for at in centres(part) for item in _cross(at, CROSS)),
        *(item for each in bores_of_part(part) for item in _bored(each)),
    )


def centres(part: SettledPart) -> tuple[Point, ...]:
    """Return the middles of its holes."""
    return tuple(dict.fromkeys(each.at for each in part.features if each.kind is HOLE))


def bored(part: SettledPart) -> Iterator[Box]:
    """Yield the boxes that bores into its edges take, with what of their axes is outside."""
    for each in part.features:
        if each.kind is BORE:
            box, (ux, uy) = bounds(each.shape[0]), each.direction
            out = (each.at[0] + CROSS * ux, each.at[1] + CROSS * uy)
            yield min(box.x0, out[0]), min(box.y0, out[1]), max(box.x1, out[0]), max(box.y1, out[1])


def around(at: Point) -> Box:
    """Return the box that a centre cross takes."""
    return at[0] - CROSS, at[1] - CROSS, at[0] + CROSS, at[1] + CROSS


def _waste(part: SettledPart) -> Iterator[Stroke]:
    """Yield a shade along every edge, bars beside 0,0, and the wood over them.

    What of them lies in the wood is hidden by it, so that nothing has to be cut off at an edge.
    """
    shape = part.plain
    yield Stroke(
        contour=shape.outer,
        holes=shape.openings,
        layer=WASTE.name,
        ink=Ink.FAINT,
        width=2 * BAND,
    )
    away = BAR / 2 - BAND
    for end in ((away, BAR_LENGTH), (BAR_LENGTH, away)):
        bar = open_path((away, away), end)
        yield Stroke(contour=bar, layer=WASTE.name, width=BAR)
    yield Stroke(
        contour=shape.outer, holes=shape.openings, layer=WASTE.name, width=None, fill=Ink.PAPER
    )


def _shape(part: SettledPart) -> Iterator[Stroke]:
    for cut in part.cuts:
        if cut.depth is None:
            continue
        fill = None if cut.operation is Operation.ENGRAVE else Ink.WOOD
        ink = Ink.SOFT if cut.operation is Operation.ENGRAVE else Ink.INK
        for contour in cut.square or cut.contours:
            yield Stroke(contour=contour, layer=SHAPE.name, ink=ink, width=FINE, fill=fill)
    for contour in (part.plain.outer, *part.plain.openings):
        yield Stroke(contour=contour, layer=SHAPE.name, width=OUTLINE)


def _bored(feature: SettledFeature) -> Iterator[Stroke]:
    """Yield the axis of a bore into an edge, from outside the part to its bottom, and its walls."""
    (x, y), (ux, uy) = feature.at, feature.direction
    half, deep = feature.width.value / 2, feature.length.value
    for aside, out in ((0.0, CROSS), (half, 0.0), (-half, 0.0)):
        sx, sy = x - aside * uy, y + aside * ux
        line = open_path((sx + out * ux, sy + out * uy), (sx - deep * ux, sy - deep * uy))
        yield Stroke(contour=line, layer=DRILL.name, width=FINE, dash=() if out else DASH)


def _drill(at: Point, diameter: float) -> tuple[Stroke, ...]:
    rim = Stroke(contour=circle(at, diameter), layer=DRILL.name, ink=Ink.ACCENT, width=FINE)
    return (rim, *_cross(at, min(CROSS, diameter / 4), Ink.ACCENT))


def _cross(at: Point, reach: float, ink: Ink = Ink.INK) -> tuple[Stroke, Stroke]:
    x, y = at
    level, upright = (
        open_path((x - reach, y), (x + reach, y)),
        open_path((x, y - reach), (x, y + reach)),
    )
    return (
        Stroke(contour=level, layer=DRILL.name, ink=ink, width=FINE),
        Stroke(contour=upright, layer=DRILL.name, ink=ink, width=FINE),
    )
