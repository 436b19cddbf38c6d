"""What meets in a joint: both ends in numbers, and the openings that a sheet goes into."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.ends import End, end_of, pieces_of
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.measure import point_in
from kerfolio.model.feature_kind import GROOVE, POCKET, SLOT
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import TAB_JOINT, WEDGE_JOINT, JointKind
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_PAST = 1.0
"""So far past a groove's end, mm, there is wood where it is stopped."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """A joint with both its ends in numbers."""

    joint: Joint
    a: End
    b: End


def meetings(settled: SettledPlan, *kinds: JointKind) -> Iterator[Met]:
    """Yield every joint of some kinds between features."""
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        a, b = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if joint.kind in kinds and a and b and a.features and b.features:
            yield Met(joint=joint, a=a, b=b)


def pairs(met: Met) -> Iterator[tuple[SettledFeature, SettledFeature]]:
    """Return the features that meet, one of each end."""
    return zip(met.a.features, met.b.features, strict=False)


def too_short(settled: SettledPlan) -> frozenset[tuple[str, str]]:
    """Return the part and name of each opening that is shorter than its tab is wide.

    That is an error of its own, so that nothing else need be said of how small it is.
    """
    return frozenset(
        (met.b.part.name, into.name)
        for met in meetings(settled, TAB_JOINT)
        for tab, into in pairs(met)
        if has_length(into) and tab.width.value - into.length.value > SAME
    )


def has_length(opening: SettledFeature) -> bool:
    """Tell whether an opening is as long as a tab, and not as a groove is or a notch."""
    return opening.kind is SLOT or (opening.kind is POCKET and bool(opening.takes))


def is_stopped(opening: SettledFeature, part: SettledPart) -> bool:
    """Tell whether a groove ends within its part on both sides, so that nothing reaches past it."""
    if opening.kind is not GROOVE:
        return False
    (x, y), (dx, dy) = opening.at, opening.direction
    past = opening.length.value / 2 + _PAST
    ends = ((x + way * past * dx, y + way * past * dy) for way in (-1, 1))
    return all(point_in(part.plain.outer, each) for each in ends)


def wedged(
    settled: SettledPlan,
) -> Iterator[tuple[SettledFeature, SettledPart, SettledPart]]:
    """Yield the slot of each wedge with its part and the wedge."""
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        a, b = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if joint.kind is WEDGE_JOINT and a and b and b.features and b.features[0].kind.fitted:
            yield b.features[0], b.part, a.part


def openings(met: Met) -> Iterator[tuple[SettledFeature, SettledPart, SettledPart]]:
    """Yield each opening once with its part and the part that goes into it."""
    for mine, other in ((met.a, met.b), (met.b, met.a)):
        for feature in mine.features:
            loose = feature.kind is POCKET and not feature.takes
            if feature.kind.fitted and not loose:
                yield feature, mine.part, other.part
