"""On which side of a drawn line the cutter runs, and how far off: one wording for all readers."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import tool_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.layer import SIDES, operation_called
from kerfolio.edition.edition import Edition
from kerfolio.model.stock import CutterStock
from kerfolio.settling.settled import Operation


def finished_edge(reader: Reader) -> str:
    """Return what every line of a cut file is, engravings aside."""
    return say(reader, "sidewords-finished")


def offset_text(diameter: float, reader: Reader) -> str:
    """Return how far off the line a cutter of a diameter (mm) runs: ``3 mm (0.118 in)``."""
    return tool_text(diameter / 2, reader)


def offset_words(edition: Edition) -> str:
    """Return what lines are, the side of every operation, the offsets of the plan's cutters."""
    sides: dict[str, list[str]] = {}
    reader = edition.reader
    for operation in Operation:
        sides.setdefault(SIDES[operation], []).append(operation_called(operation, reader))
    told = "; ".join(
        say(reader, f"sidewords-{side}", what=listed(reader, names))
        for side, names in sides.items()
    )
    cutters = {sheet.cutter.name: sheet.cutter for sheet in edition.settled.sheets}
    if not cutters:
        return say(reader, "sidewords-lines", sides=told)
    offsets = [_offset(each, reader, named=len(cutters) > 1) for each in cutters.values()]
    return say(reader, "sidewords-lines-off", sides=told, offsets=listed(reader, offsets))


def _offset(cutter: CutterStock, reader: Reader, *, named: bool) -> str:
    offset = offset_text(cutter.diameter, reader)
    return say(reader, "sidewords-for", offset=offset, cutter=cutter.title) if named else offset
