"""The layers of cut files: one for each operation and depth, and those that are not cut."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.basis.figured import Figure, figured
from kerfolio.basis.lengths import INCH
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.basis.style import Rule, Style
from kerfolio.drawing.vocabulary import Ink, Layer
from kerfolio.settling.settled import Cut, Operation, SettledBridge

SHEET_EDGE = Layer(name="sheet-edge")
PIECE_EDGE = Layer(name="piece-edge")
CHECK_SQUARE = Layer(name="check-square")
NOTE = Layer(name="note")
"""Layers that are not cut; ``uncut_layer`` says what each is for."""

INKS: dict[Operation, Ink] = {
    Operation.ENGRAVE: Ink.ENGRAVE,
    Operation.POCKET: Ink.POCKET,
    Operation.HOLE: Ink.HOLE,
    Operation.OPENING: Ink.OPENING,
    Operation.OUTLINE: Ink.OUTLINE,
}
"""The colour of every operation; their order is the order of cutting."""

DASHES: dict[Operation, tuple[float, ...]] = {
    Operation.ENGRAVE: (0.2, 0.9),
    Operation.POCKET: (1.8, 1.0),
    Operation.HOLE: (0.8, 0.9),
    Operation.OPENING: (2.6, 1.0, 0.2, 1.0),
    Operation.OUTLINE: (),
}
"""How its lines are broken where people look at them, mm, with room for their round ends: no one
needs to see the colours (WCAG 2.2, 1.4.1). Files for machines have whole lines."""

ON, _INSIDE, _OUTSIDE = "on", "inside", "outside"

SIDES: dict[Operation, str] = {
    Operation.ENGRAVE: ON,
    Operation.POCKET: _INSIDE,
    Operation.HOLE: _INSIDE,
    Operation.OPENING: _INSIDE,
    Operation.OUTLINE: _OUTSIDE,
}
"""Where the cutter runs to the drawn line."""


def uncut_layer(layer: Layer, reader: Reader) -> Layer:
    """Return a layer that is not cut with what it is for."""
    return replace(layer, purpose=say(reader, f"cutfile-layer-{layer.name}"))


def bridge_layer(bridge: SettledBridge, reader: Reader = METRIC) -> Layer:
    """Return the layer of a bridge: ``bridge_2.0mm``, by the height that is left standing.

    Its purpose tells the height in the reader's unit, too.
    """
    return Layer(
        name=figured("bridge_{}", _depth_name(bridge.height)),
        purpose=say(reader, "cutfile-layer-bridge", height=_deep(bridge.height, reader)),
    )


def layer_for(cut: Cut, reader: Reader = METRIC) -> Layer:
    """Return the layer of a cut: ``pocket_6.0mm``, ``hole_through``.

    Its purpose tells the depth in the reader's unit, and in mm, as its name does.
    """
    return Layer(
        name=figured("{}_{}", cut.operation.value, _depth_name(cut.depth)),
        purpose=say(
            reader, f"cutfile-layer-{cut.operation}", depth=_depth_words(cut.depth, reader)
        ),
        depth=cut.depth,
        cuts=True,
    )


def operation_called(operation: Operation, reader: Reader) -> str:
    """Return what is cut so: ``pockets``, ``outlines``."""
    return say(reader, f"drawing-operation-{operation}")


def in_cutting_order(layers: Iterable[Layer]) -> tuple[Layer, ...]:
    """Return each cut layer once: engraving first, outlines last, shallow before deep."""
    unique = {layer.name: layer for layer in layers}
    return tuple(sorted(unique.values(), key=_rank))


def _rank(layer: Layer) -> tuple[int, bool, float]:
    operation = Operation(layer.name.split("_")[0])
    return list(INKS).index(operation), layer.depth is None, layer.depth or 0.0


def _depth_name(depth: float | None) -> str:
    """Depths are told apart to 0.01 mm."""
    if depth is None:
        return "through"
    return figured("{}", Figure(depth, Style(rule=Rule.POINTED, decimals=2, after="mm")))


def _depth_words(depth: float | None, reader: Reader) -> str:
    if depth is None:
        return say(reader, "cutfile-through")
    return say(reader, "cutfile-deep", depth=_deep(depth, reader))


def _deep(depth: float, reader: Reader) -> str:
    """Return a depth as ``depth_text`` tells it in inches first, else in mm alone."""
    metric = Figure(depth, Style(decimals=2, after=" mm", mark=reader.mark))
    inch = Figure(depth / INCH, Style(decimals=3, after=" in", mark=reader.mark))
    return figured("{} ({})", inch, metric) if reader.unit == "in" else figured("{}", metric)
