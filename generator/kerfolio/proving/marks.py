"""Where on a part a finding is, as rings to draw round it."""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot

from kerfolio.basis.finding import Beside, Mark, Ring
from kerfolio.basis.said import stated_name
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.settling.variant_name import words_of

_AROUND = 3.0
"""Air between what is marked and its ring, mm."""


def spots_mark(
    settled: SettledPlan, part: SettledPart, spots: Iterable[Point], r: float = 0.0
) -> Mark:
    """Return a mark of rings about spots in the part's frame, ``r`` mm and some air round each."""
    return _mark(settled, part, (Ring(x, y, r + _AROUND) for x, y in spots))


def narrow_mark(settled: SettledPlan, part: SettledPart, spots: Iterable[Point], r: float) -> Mark:
    """Return a mark of rings of radius ``r`` mm, for places that lie close together."""
    return _mark(settled, part, (Ring(x, y, r) for x, y in spots))


def feature_mark(settled: SettledPlan, part: SettledPart, *features: SettledFeature) -> Mark:
    """Return a mark with a ring round each feature."""
    rings = []
    for feature in features:
        boxes = [bounds(contour) for contour in feature.shape]
        x0, y0 = min(box.x0 for box in boxes), min(box.y0 for box in boxes)
        x1, y1 = max(box.x1 for box in boxes), max(box.y1 for box in boxes)
        reach = hypot(x1 - x0, y1 - y0) / 2 + _AROUND
        rings.append(Ring((x0 + x1) / 2, (y0 + y1) / 2, reach))
    return _mark(settled, part, rings)


def _mark(settled: SettledPlan, part: SettledPart, rings: Iterable[Ring]) -> Mark:
    variant = settled.variant
    return Mark(part=part.name, rings=tuple(rings), variant=variant.label, at=words_of(variant))


def about(settled: SettledPlan, part: SettledPart, *features: SettledFeature) -> Beside:
    """Return what a finding on features has besides its words: the first as subject, rings."""
    subject = stated_name(f"{part.name}.{features[0].name}")
    return {"subject": subject, "mark": feature_mark(settled, part, *features)}


def about_spots(
    settled: SettledPlan, part: SettledPart, spots: Iterable[Point], r: float = 0.0
) -> Beside:
    """Return what a finding on a part has besides its words: the part as subject, rings."""
    return {"subject": part.name, "mark": spots_mark(settled, part, spots, r)}
