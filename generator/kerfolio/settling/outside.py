"""What is said of a feature that lies outside its part: also where that makes no part at all."""

from __future__ import annotations

from kerfolio.basis.measures import point
from kerfolio.basis.said import Text, named, said
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledFeature

OUTSIDE = "feature-outside"
"""The rule that tells of it."""


def told_outside(
    part: str, feature: SettledFeature, where: str, contour: Contour
) -> tuple[Text, Text]:
    """Return what is wrong, and where the feature lies; ``where`` is outside or partly outside."""
    box = bounds(contour)
    name = named(f"{part}.{feature.name}")
    corners = point(box.x0, box.y0, "least-"), point(box.x1, box.y1, "most-")
    return (
        said("{} {} lies {} the part", feature.kind.name, name, where),
        said("It reaches from {} to {}.", *corners),
    )
