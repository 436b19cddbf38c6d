"""Checks of where the features of a settled part lie."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.measures import point
from kerfolio.basis.said import named, said
from kerfolio.geometry.boolean import contains, distance, intersects
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.measure import Box, bounds
from kerfolio.model.feature_kind import ENGRAVING, GROOVE
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_SLACK = 0.01
Placed = tuple[SettledFeature, tuple[tuple[Contour, Box], ...]]


@after(
    "feature-outside",
    reason="What is cut into a part lies in it.",
    source=COMMON_PRACTICE,
)
def features_inside(settled: SettledPlan) -> Iterator[Finding]:
    """Look for features that reach out of their part; grooves and edge features may."""
    for part in settled.parts:
        whole = Region(part.plain.outer)
        for feature in part.features:
            if feature.kind is GROOVE:
                if not intersects(whole, feature.shape[0]):
                    yield _outside(settled, part, feature, "outside", feature.shape[0])
            elif not feature.kind.on_edge:
                yield from _reaches_out(settled, part, feature, whole)


def _reaches_out(
    settled: SettledPlan, part: SettledPart, feature: SettledFeature, whole: Region
) -> Iterator[Finding]:
    for contour in feature.shape:
        if not contains(whole, contour, _SLACK):
            partly = any(_touches(whole, each) for each in feature.shape)
            where = "partly outside" if partly else "outside"
            yield _outside(settled, part, feature, where, contour)
            return


def _outside(
    settled: SettledPlan, part: SettledPart, feature: SettledFeature, where: str, contour: Contour
) -> Finding:
    box = bounds(contour)
    name = named(f"{part.name}.{feature.name}")
    message = said("{} {} lies {} the part", feature.kind.name, name, where)
    corners = point(box.x0, box.y0, "least-"), point(box.x1, box.y1, "most-")
    advice = said("It reaches from {} to {}.", *corners)
    what = about(settled, part, feature)
    return error("feature-outside", message, feature.place, advice, **what)


def _touches(whole: Region, contour: Contour) -> bool:
    """Tell whether a feature reaches into its part, which it may have been cut away from."""
    return intersects(whole, contour) or distance(whole, contour) < _SLACK


@after(
    "features-overlap",
    reason="Openings that meet weaken a part.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def overlapping_features(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings that run into each other, and engravings that run into openings."""
    for part in settled.parts:
        placed = [_placed(each) for each in part.features]
        openings = [each for each in placed if _goes_through(each[0])]
        engravings = [each for each in placed if each[0].kind is ENGRAVING]
        pairs = [*combinations(openings, 2), *((a, b) for a in openings for b in engravings)]
        for one, other in pairs:
            if _meet(one[1], other[1]):
                names = named(f"{part.name}.{one[0].name}"), named(other[0].name)
                advice = "Move them apart, or make one feature of the two."
                message = said("{} and {} run into each other", *names)
                what = about(settled, part, one[0], other[0])
                yield warning("features-overlap", message, other[0].place, advice, **what)


def _placed(feature: SettledFeature) -> Placed:
    return feature, tuple((contour, bounds(contour)) for contour in feature.shape)


def _goes_through(feature: SettledFeature) -> bool:
    return feature.kind.opens and feature.depth is None


def _meet(ones: Sequence[tuple[Contour, Box]], others: Sequence[tuple[Contour, Box]]) -> bool:
    return any(
        _boxes_meet(a, b) and intersects(one, other) for one, a in ones for other, b in others
    )


def _boxes_meet(a: Box, b: Box) -> bool:
    return a.x0 <= b.x1 and b.x0 <= a.x1 and a.y0 <= b.y1 and b.y0 <= a.y1
