"""All parts of a plan on one sheet, to go on with in a drawing program."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.names import set_name
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import moved
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan

_APART = 20.0
_WIDE = 2400.0
_HIGH = 12.0
NAMES = "names"
"""The layer that parts' names stand on, which are not cut."""


def drawn_out(settled: SettledPlan) -> Drawing:
    """Return every part once, at full size, as it is drawn for the sheet without fit or relief.

    A part's outline lies on a layer of its name, each feature that has a contour of its own on
    ``part.feature``.
    """
    items: list[Item] = []
    layers: dict[str, Layer] = {}
    x = y = row = 0.0
    for part in settled.parts:
        box = bounds(part.plain.outer)
        if x and x + box.width > _WIDE:
            x, y, row = 0.0, y + row + _APART, 0.0
        shift = (x - box.x0, y - box.y0)
        for name, contour, depth in _contours(part):
            layer = Layer(name=name, depth=depth, cuts=True)
            layers.setdefault(name, layer)
            ink = Ink.OUTLINE if name == part.name else Ink.OPENING if depth is None else Ink.POCKET
            items.append(Stroke(contour=moved(contour, *shift), layer=name, ink=ink))
        spot = (x, y - _HIGH)
        items.append(Label(text=part.name, at=spot, height=8.0, layer=NAMES, ink=Ink.ASIDE))
        x, row = x + box.width + _APART, max(row, box.height + _HIGH)
    layers[NAMES] = Layer(name=NAMES)
    return Drawing(
        box=padded(extent(items), 5.0),
        items=tuple(items),
        layers=tuple(layers.values()),
        title=settled.plan.title,
    )


def _contours(part: SettledPart) -> Iterator[tuple[str, Contour, float | None]]:
    """Yield the name, contour and depth of a part's outline and of each feature cut inside it."""
    yield part.name, part.plain.outer, None
    for feature in part.features:
        if feature.shape and not feature.kind.on_edge and feature.depth is None:
            for contour in feature.shape:
                yield f"{part.name}.{set_name(feature.name)}", contour, None
    for cut in part.cuts:
        if cut.depth is not None and cut.operation is not Operation.OUTLINE:
            for contour in cut.contours:
                yield f"{part.name}.{set_name(cut.feature)}", contour, cut.depth
