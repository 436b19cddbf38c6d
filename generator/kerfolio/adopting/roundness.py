"""What is round: holes, and openings whose ends are half circles."""

from __future__ import annotations

from math import dist, pi

from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds

_ROUND = 0.985


def diameter_of(contour: Contour) -> float | None:
    """Return the diameter of a closed contour that is round, mm, else None."""
    box = bounds(contour)
    if abs(box.width - box.height) > 0.01 * box.width + 0.02:
        return None
    across = (box.width + box.height) / 2
    round_area = pi / 4 * across * across
    return (
        across if min(area(contour), round_area) > _ROUND * max(area(contour), round_area) else None
    )


def has_round_ends(contour: Contour, width: float) -> bool:
    """Tell whether an opening's ends are half circles as wide as it is: a hand hole's are."""
    arcs = [each for each in edges(contour) if each.bulge]
    return any(
        dist(each.start, each.end) > 0.8 * width
        or (each.arc is not None and abs(each.arc.radius - width / 2) < 0.05 * width)
        for each in arcs
    )
