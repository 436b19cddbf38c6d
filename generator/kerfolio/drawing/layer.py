"""The layers of cut files: one for each operation and depth, and those that are not cut."""

from __future__ import annotations

from collections.abc import Iterable

from kerfolio.basis.figured import Figure, figured
from kerfolio.basis.lengths import INCH
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.style import Rule, Style
from kerfolio.drawing.vocabulary import Ink, Layer
from kerfolio.settling.settled import Cut, Operation, SettledBridge

SHEET_EDGE = Layer(
    name="sheet-edge",
    purpose="The edge of the sheet, to place the file by. The note says where 0,0 is. Not cut.",
)
PIECE_EDGE = Layer(
    name="piece-edge",
    purpose="The piece as it is, to lay it by. The note says where 0,0 is. Not cut.",
)
CHECK_SQUARE = Layer(
    name="check-square",
    purpose="Squares of 100 mm and of 4 in. Measure them after opening the file. Not cut.",
)
NOTE = Layer(name="note", purpose="Words for people: plan, release, sheet, thickness. Not cut.")

INKS: dict[Operation, Ink] = {
    Operation.ENGRAVE: Ink.ENGRAVE,
    Operation.POCKET: Ink.POCKET,
    Operation.HOLE: Ink.HOLE,
    Operation.OPENING: Ink.OPENING,
    Operation.OUTLINE: Ink.OUTLINE,
}
"""The colour of every operation; their order is the order of cutting."""

ON, _INSIDE, _OUTSIDE = "on", "inside", "outside"

SIDES: dict[Operation, str] = {
    Operation.ENGRAVE: ON,
    Operation.POCKET: _INSIDE,
    Operation.HOLE: _INSIDE,
    Operation.OPENING: _INSIDE,
    Operation.OUTLINE: _OUTSIDE,
}
"""Where the cutter runs to the drawn line."""

_SENTENCES: dict[Operation, str] = {
    Operation.ENGRAVE: "Lines scratched {depth}: run the cutter {side} the line.",
    Operation.POCKET: "Clear the whole area {side} the line, {depth}.",
    Operation.HOLE: "Round holes, {depth}: cut {side} the line, or drill.",
    Operation.OPENING: "Openings and slots, {depth}: cut {side} the line.",
    Operation.OUTLINE: "The part’s own edge, {depth}: cut {side} the line, last of all.",
}


def bridge_layer(bridge: SettledBridge, reader: Reader = METRIC) -> Layer:
    """Return the layer of a bridge: ``bridge_2.0mm``, by the height that is left standing.

    Its purpose tells the height in the reader's unit, too.
    """
    return Layer(
        name=figured("bridge_{}", _depth_name(bridge.height)),
        purpose=figured(
            "Bridges: over these lines the cutter lifts to {} above the lower face. "
            "They lie on the finished edge. Not cut.",
            _deep(bridge.height, reader),
        ),
    )


def layer_for(cut: Cut, reader: Reader = METRIC) -> Layer:
    """Return the layer of a cut: ``pocket_6.0mm``, ``hole_through``.

    Its purpose tells the depth in the reader's unit, and in mm, as its name does.
    """
    return Layer(
        name=figured("{}_{}", cut.operation.value, _depth_name(cut.depth)),
        purpose=figured(
            _SENTENCES[cut.operation],
            depth=_depth_words(cut.depth, reader),
            side=SIDES[cut.operation],
        ),
        depth=cut.depth,
        cuts=True,
    )


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
        return "through the sheet"
    return figured("{} deep from the face that lies up", _deep(depth, reader))


def _deep(depth: float, reader: Reader) -> str:
    """Return a depth as ``depth_text`` tells it in inches first, else in mm alone."""
    metric = Figure(depth, Style(decimals=2, after=" mm", mark=reader.mark))
    inch = Figure(depth / INCH, Style(decimals=3, after=" in", mark=reader.mark))
    return figured("{} ({})", inch, metric) if reader.unit == "in" else figured("{}", metric)
