"""Checks of where the features of a settled part lie."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.finding import Finding, Severity, error, warning
from kerfolio.basis.said import named, said
from kerfolio.geometry.boolean import contains, distance, intersects
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.near import meeting as near
from kerfolio.model.feature_kind import ENGRAVING, GROOVE
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.outside import OUTSIDE, told_outside
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_SLACK = 0.01


@after(
    OUTSIDE,
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
    message, advice = told_outside(part.name, feature, where, contour)
    what = about(settled, part, feature)
    return error(OUTSIDE, message, feature.place, advice, **what)


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
        openings = [each for each in part.features if _goes_through(each)]
        engravings = [each for each in part.features if each.kind is ENGRAVING]
        for first, second in (*_meeting(openings), *_meeting(openings, engravings)):
            names = named(f"{part.name}.{first.name}"), named(second.name)
            advice = "Move them apart, or make one feature of the two."
            message = said("{} and {} run into each other", *names)
            what = about(settled, part, first, second)
            yield warning("features-overlap", message, second.place, advice, **what)


def run_together(part: SettledPart) -> frozenset[str]:
    """Return the names of a part's openings that run into others."""
    pairs = _meeting([each for each in part.features if _goes_through(each)])
    return frozenset(each.name for pair in pairs for each in pair)


def _goes_through(feature: SettledFeature) -> bool:
    return feature.kind.opens and feature.depth is None


def _meeting(
    ones: Sequence[SettledFeature], others: Sequence[SettledFeature] | None = None
) -> list[tuple[SettledFeature, SettledFeature]]:
    """Return the pairs of features that run into each other, or into ``others``, in order."""
    among = others is None
    others = ones if others is None else others
    mine = [(index, contour) for index, each in enumerate(ones) for contour in each.shape]
    theirs = [(index, contour) for index, each in enumerate(others) for contour in each.shape]
    found = set()
    for a, b in near([contour for _, contour in mine], [contour for _, contour in theirs]):
        (one, contour), (other, another) = mine[a], theirs[b]
        if among and one >= other:
            continue
        if (one, other) not in found and intersects(contour, another):
            found.add((one, other))
    return [(ones[one], others[other]) for one, other in sorted(found)]
