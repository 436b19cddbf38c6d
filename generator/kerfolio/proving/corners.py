"""Checks of inside corners that a round cutter leaves round and a sheet must fill."""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import reading
from kerfolio.basis.said import named, said, stated_name
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import reversed_contour
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.relief import contour_corners
from kerfolio.proving.marks import spots_mark
from kerfolio.proving.rule import ROUND_CUTTER, after
from kerfolio.settling.settled import Operation, SettledFeature, SettledPart, SettledPlan

_LEFT = 2**0.5 - 1
"""Of the cutter's radius is left on the diagonal of a square inside corner (plane geometry)."""


@after(
    "corner-needs-relief",
    reason="A round cutter leaves inside corners round, and a sheet's corners are square.",
    source=ROUND_CUTTER,
    severity=Severity.WARNING,
)
def corners_relieved(settled: SettledPlan) -> Iterator[Finding]:
    """Look for square inside corners that take a square edge and have no relief.

    Corners count that belong to a feature which takes a sheet or is named in a joint.
    """
    joined = _joined(settled)
    for part in settled.parts:
        sharp = tuple(_sharp(part))
        for feature in part.features:
            if not feature.takes and (part.name, feature.name) not in joined:
                continue
            spots = [at for at in sharp if any(dist(at, own) < SAME for own in _own(feature))]
            if spots:
                yield _unrelieved(settled, part, feature, spots)


def _unrelieved(
    settled: SettledPlan, part: SettledPart, feature: SettledFeature, spots: list[Point]
) -> Finding:
    name = f"{part.name}.{feature.name}"
    message = said("{} {} has no relief in its corners", feature.kind.name, named(name))
    radius = settled.sheet(part.sheet).cutter.diameter / 2
    takes = "" if feature.takes else " and say which sheet it `takes`"
    advice = said(
        "The cutter leaves {} in each: write `relief: dog-bone`{}, or square them with a chisel.",
        reading("left", _LEFT * radius),
        takes,
    )
    mark, subject = spots_mark(settled, part, spots), stated_name(name)
    place = feature.place
    return warning("corner-needs-relief", message, place, advice, mark=mark, subject=subject)


def _joined(settled: SettledPlan) -> set[tuple[str, str]]:
    """Return (part, feature) of what interlocking joints name."""
    pieces = pieces_of(settled)
    ends = [
        end_of(named.name, pieces)
        for joint in settled.plan.joints
        if joint.kind.interlocks
        for named in (joint.a, joint.b)
    ]
    return {
        (end.part.name, each.name)
        for end in ends
        if end
        for each in end.features
        if each.kind.takes
    }


def _sharp(part: SettledPart) -> Iterator[Point]:
    """Yield the sharp inside corners that are left after relief, pockets' included."""
    for contour in contours_of(part.routed):
        yield from (corner.at for corner in contour_corners(contour))
    for cut in part.cuts:
        if cut.operation is Operation.POCKET:
            for contour in cut.contours:
                yield from (each.at for each in contour_corners(reversed_contour(contour)))


def _own(feature: SettledFeature) -> Iterator[Point]:
    return ((x, y) for contour in feature.shape for x, y, _ in contour.vertices)
