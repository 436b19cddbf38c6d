"""Checks that tabs end flush with the face they come out at, or as the plan says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import length
from kerfolio.basis.said import Measure, named, said
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature import PROUD, SHORT, Tabs
from kerfolio.model.feature_kind import NOTCH, SLOT
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.proving.marks import about
from kerfolio.proving.meeting import Met, meetings, pairs
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

UNEVEN = 0.5
"""Unevenness in mm that a maker calls a mistake (common practice, no single source)."""

_MEANT = 0.25
"""What stands out by more than this share of the sheet cannot be the play of a fixed depth."""

_HOLDS = 0.5
"""A tab that goes less far through, in thicknesses of the sheet, is told as one that barely holds.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class _End:
    """A tab that goes through, with how far it stands out, mm (less than nothing: how short)."""

    met: Met
    tab: SettledFeature
    proud: float
    through: float


@after(
    "tab-not-flush",
    reason="A tab of fixed depth is flush in one thickness of sheet only.",
    source=OWN_FIGURES,
    severity=Severity.NOTE,
)
def tabs_flush(settled: SettledPlan) -> Iterator[Finding]:
    """Look for through tabs that end a little proud, or short, and nothing says on purpose."""
    for each in _unsaid(settled):
        if UNEVEN < each.proud < _MEANT * each.through or each.proud < -UNEVEN:
            how, word = ("stands proud", PROUD) if each.proud > 0 else ("stays short", SHORT)
            message = said("{} {} by {}", named(each.met.a.name(0)), how, _off(each))
            yield note(
                "tab-not-flush",
                message,
                each.met.joint.place,
                _cure(each, word),
                **about(settled, each.met.a.part, each.tab),
            )


@after(
    "tab-proud",
    reason="What stands out of a face catches, and keeps everything off that face.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tabs_inside(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs that stand far out of what they go through, and nothing says on purpose."""
    for each in _unsaid(settled):
        if each.proud >= _MEANT * each.through:
            message = said("{} stands {} out of its slot", named(each.met.a.name(0)), _off(each))
            yield warning(
                "tab-proud",
                message,
                each.met.joint.place,
                _cure(each, PROUD),
                **about(settled, each.met.a.part, each.tab),
            )


def _off(each: _End) -> Measure:
    return length("off", abs(each.proud))


def _cure(each: _End, word: str) -> str:
    sheet = each.met.b.part.sheet
    flush = f"Write `takes: {sheet}` in place of its depth to end flush"
    return f"{flush}, or `end: {word}` if that is meant."


def _unsaid(settled: SettledPlan) -> Iterator[_End]:
    """Yield the tabs that go through, but those a plan says end otherwise, or pins behind."""
    for met in meetings(settled, TAB_JOINT):
        stated = {each.name: each.cutting for each in settled.plan.part(met.a.part.name).features}
        for tab, opening in pairs(met):
            cutting = stated.get(tab.name.partition(".")[0])
            meant = isinstance(cutting, Tabs) and cutting.end
            through = met.b.part.thickness
            if meant or opening.depth is not None or opening.kind not in (SLOT, NOTCH):
                continue
            if tab.length.value >= _HOLDS * through and not _pinned(tab, met.a.part):
                yield _End(met=met, tab=tab, proud=tab.length.value - through, through=through)


def _pinned(tab: SettledFeature, part: SettledPart) -> bool:
    """Tell whether a tab is opened for a wedge or a pin, which it must stand out for."""
    boxes = [bounds(each) for each in tab.shape]
    return any(
        box.x0 < feature.at[0] < box.x1 and box.y0 < feature.at[1] < box.y1
        for feature in part.features
        if feature.kind.opens
        for box in boxes
    )
