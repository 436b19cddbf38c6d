"""Settled parts as solids."""

from __future__ import annotations

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points, traced
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.settling.settled import Operation, SettledPart

_AS_WIDE = 0.02
"""A part counts as wide as it is high where the two differ by no more than this share."""
_ARROW, _WING = 0.25, 0.25
"""An arrow's length in shares of the part's, and that of its heads in shares of half of that."""
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
        tuple(traced(contour, _LINES))
        for cut in part.cuts
        if cut.operation is Operation.ENGRAVE
        for contour in cut.contours
    )
    openings = tuple(_ring(each) for each in part.plain.openings)
    return Panel(
        shape=Flat(_ring(part.plain.outer), openings),
        thickness=part.thickness,
        recesses=recesses,
        engraved=(*engraved, *_grain(part)),
    )


def _grain(part: SettledPart) -> tuple[tuple[Point, ...], ...]:
    """Return a double arrow along the grain, on a part that would go in turned a quarter, too.

    Nothing else tells how it lies. It stands where it touches nothing, and is as on its drawing.
    """
    wide, high = part.size
    if not part.grained or abs(wide - high) > _AS_WIDE * max(wide, high):
        return ()
    cuts = tuple(each for cut in part.cuts if cut.depth is not None for each in cut.contours)
    (x, y), room = label_spot(part.plain, 1.0, cuts, enough=_ARROW * wide)
    half = min(room, _ARROW * wide) / 2
    wing = half * _WING
    upright = part.grain == "along y"
    runs = (
        ((-half, 0.0), (half, 0.0)),
        ((half - wing, wing / 2), (half, 0.0), (half - wing, -wing / 2)),
        ((wing - half, wing / 2), (-half, 0.0), (wing - half, -wing / 2)),
    )
    return tuple(
        tuple((x - v, y + u) if upright else (x + u, y + v) for u, v in run) for run in runs
    )


def _ring(contour: Contour) -> tuple[Point, ...]:
    return tuple(points(contour, FLATNESS))
