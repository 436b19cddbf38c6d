"""What a cutter has to pass: the tightest inside curve, and the narrowest of what it clears.

No cutter follows a curve that is wider than twice its radius, nor enters what is narrower than it.
"""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.geometry.contour import Region
from kerfolio.geometry.relief import smallest_inside_arc, smallest_inside_radius
from kerfolio.settling.settled import Operation, SettledFeature, SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrow:
    """The narrowest of what is cleared in a sheet, mm: as wide as the sheet it ``takes``, or not.

    Where ``takes`` names a sheet, the width is that at the thickness settled.
    """

    takes: str
    width: float


def tightest_inside(settled: SettledPlan) -> float | None:
    """Return the least radius of an inside curve of outlines and openings, mm.

    0 where an inside corner is square; None where there is none at all. Holes are left out: small
    ones are drilled.
    """
    radii = [smallest_inside_radius(_without_holes(part, part.routed)) for part in settled.parts]
    return min((each for each in radii if each is not None), default=None)


def tightest_curve(settled: SettledPlan, sheet: str) -> float | None:
    """Return the least radius of an inside curve as drawn in a sheet, mm; None where there is none.

    Corners are left out, sharp or opened for a cutter: what opens them follows the cutter.
    """
    parts = [part for part in settled.parts if part.sheet == sheet]
    radii = [smallest_inside_arc(_without_holes(part, part.plain)) for part in parts]
    return min((each for each in radii if each is not None), default=None)


def narrow_places(settled: SettledPlan, sheet: str) -> tuple[Narrow, ...]:
    """Return the narrowest of what is cleared in a sheet, for each sheet that it takes and none."""
    least: dict[str, float] = {}
    for part in settled.parts:
        for feature in part.features if part.sheet == sheet else ():
            width = narrowest(feature)
            if width is not None:
                follows = feature.kind.fitted and width == feature.width.value
                takes = feature.takes if follows else ""
                least[takes] = min(width, least.get(takes, width))
    return tuple(Narrow(takes=takes, width=least[takes]) for takes in sorted(least))


def narrowest(feature: SettledFeature) -> float | None:
    """Return the least width that a cutter must pass, mm; None where there is none to pass."""
    if not feature.kind.cleared:
        return None
    if feature.kind.on_edge:  # its length lies open at the edge
        return feature.width.value
    return min(feature.width.value, feature.length.value)


def _without_holes(part: SettledPart, region: Region) -> Region:
    holes = {
        contour for cut in part.cuts if cut.operation is Operation.HOLE for contour in cut.contours
    }
    openings = tuple(each for each in region.openings if each not in holes)
    return Region(region.outer, openings)
