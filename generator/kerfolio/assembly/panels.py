"""Settled parts as solids."""

from __future__ import annotations

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.settling.settled import Operation, SettledPart

_LINES = 0.1
"""The same of engraved lines, which nothing is measured by."""
FLATNESS = 0.05
"""Chords of curves stray inward by at most this, mm: less than half of any usual fit."""


def panel_of(part: SettledPart) -> Panel:
    """Return a part as a solid: the shape of the drawing, without reliefs, engravings as lines.

    Reliefs only take material away beside what mates, so pieces that go together without them go
    together with them.
    """
    recesses = tuple(
        Recess(Flat(_ring(contour)), cut.depth)
        for cut in part.cuts
        if cut.depth is not None and cut.operation is not Operation.ENGRAVE
        for contour in cut.contours
    )
    engraved = tuple(
        (*_line(contour), *_line(contour)[:1]) if contour.closed else _line(contour)
        for cut in part.cuts
        if cut.operation is Operation.ENGRAVE
        for contour in cut.contours
    )
    openings = tuple(_ring(each) for each in part.plain.openings)
    return Panel(
        shape=Flat(_ring(part.plain.outer), openings),
        thickness=part.thickness,
        recesses=recesses,
        engraved=engraved,
    )


def _line(contour: Contour) -> tuple[Point, ...]:
    return tuple(points(contour, _LINES))


def _ring(contour: Contour) -> tuple[Point, ...]:
    return tuple(points(contour, FLATNESS))
