"""What the layers of the cut files mean."""

from __future__ import annotations

from kerfolio.drawing.layer import (
    CHECK_SQUARE,
    NOTE,
    SHEET_EDGE,
    bridge_layer,
    in_cutting_order,
    layer_for,
    uncut_layer,
)
from kerfolio.drawing.vocabulary import Layer
from kerfolio.edition.edition import Edition


def layers_explained(edition: Edition) -> tuple[Layer, ...]:
    """Return every layer of the plan's cut files: those that are cut, in order, then the others."""
    coupons = (part for each in edition.settled.coupons for part in (each.plate, each.tab))
    parts = (*(part for each in edition.variants for part in each.parts), *coupons)
    reader = edition.reader
    cut = in_cutting_order(layer_for(cut, reader) for part in parts for cut in part.cuts)
    held = {
        bridge.height: bridge_layer(bridge, reader) for part in parts for bridge in part.bridges
    }
    bridges = dict.fromkeys(held[height] for height in sorted(held))
    uncut = (uncut_layer(each, reader) for each in (SHEET_EDGE, CHECK_SQUARE, NOTE))
    return (*cut, *bridges, *uncut)
