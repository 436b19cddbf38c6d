"""A part as its own mirror image: what it would be, drawn from the other side."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.transform import mirrored_x
from kerfolio.settling.settled import Cut, SettledFeature, SettledPart


def mirrored(part: SettledPart) -> SettledPart:
    """Return a part with left and right exchanged about the middle of its width.

    Its shape, cuts and features are mirrored, not what is chosen for cutting alone (reliefs,
    bridges).
    """
    middle = part.size[0] / 2

    def flipped(contours: tuple[Contour, ...]) -> tuple[Contour, ...]:
        return tuple(mirrored_x(each, middle) for each in contours)

    def cut(each: Cut) -> Cut:
        return replace(each, contours=flipped(each.contours), square=flipped(each.square))

    def feature(each: SettledFeature) -> SettledFeature:
        (x, y), (dx, dy) = each.at, each.direction
        return replace(each, at=(2 * middle - x, y), direction=(-dx, dy), shape=flipped(each.shape))

    return replace(
        part,
        plain=mirrored_x(part.plain, middle),
        routed=mirrored_x(part.routed, middle),
        cuts=tuple(map(cut, part.cuts)),
        features=tuple(map(feature, part.features)),
    )
