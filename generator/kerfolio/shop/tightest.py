"""The tightest inside curve of a plan, which no cutter follows that is wider than twice of it."""

from __future__ import annotations

from kerfolio.geometry.contour import Region
from kerfolio.geometry.relief import smallest_inside_radius
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan


def tightest_inside(settled: SettledPlan) -> float | None:
    """Return the least radius of an inside curve of outlines and openings, mm.

    0 where an inside corner is square; None where there is none at all. Holes are left out: small
    ones are drilled.
    """
    radii = [smallest_inside_radius(_without_holes(part)) for part in settled.parts]
    return min((each for each in radii if each is not None), default=None)


def _without_holes(part: SettledPart) -> Region:
    holes = {
        contour for cut in part.cuts if cut.operation is Operation.HOLE for contour in cut.contours
    }
    openings = tuple(each for each in part.routed.openings if each not in holes)
    return Region(part.routed.outer, openings)
