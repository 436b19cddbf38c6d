"""On which side of a drawn line the cutter runs, and how far off: one wording for all readers."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import tool_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.drawing.layer import SIDES
from kerfolio.drawing.setup_view import SETUP_NAMES
from kerfolio.edition.edition import Edition
from kerfolio.settling.settled import Operation

FINISHED = "the finished edge"
"""What every line of a cut file is, engravings aside."""


def offset_text(diameter: float, reader: Reader) -> str:
    """Return how far off the line a cutter of a diameter (mm) runs: ``3 mm (0.118 in)``."""
    return tool_text(diameter / 2, reader)


def offset_words(edition: Edition) -> str:
    """Return what lines are, the side of every operation, the offsets of the plan's cutters."""
    sides: dict[str, list[str]] = {}
    for operation in Operation:
        sides.setdefault(SIDES[operation], []).append(SETUP_NAMES[operation])
    told = "; ".join(f"{listed(names)} {side} them" for side, names in sides.items())
    cutters = {sheet.cutter.name: sheet.cutter for sheet in edition.settled.sheets}
    many = len(cutters) > 1
    found = [
        offset_text(each.diameter, edition.reader) + (f" for {each.title}" if many else "")
        for each in cutters.values()
    ]
    own = f", {listed(found)}" if found else ""
    return f"Lines are {FINISHED}: {told}, by half the cutter’s width{own}."
