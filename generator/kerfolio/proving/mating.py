"""Checks of joints in numbers: what meets must be alike in length, width and depth."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.ends import End, end_of, pieces_of
from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.lengths import mm_text
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature_kind import POCKET, SLOT
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import FINGER_JOINT, NOTCH_JOINT, TAB_JOINT, JointKind
from kerfolio.proving.marks import feature_mark
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_SAME = 0.01
LOOSE_ALONG = 2.0
LOOSE_ACROSS = 1.0
FLUSH = 0.5
"""Play and unevenness in mm, beyond the fit, that a maker calls a mistake (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Met:
    """A joint with both its ends in numbers."""

    joint: Joint
    a: End
    b: End


def _met(settled: SettledPlan, *kinds: JointKind) -> Iterator[_Met]:
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        a, b = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if joint.kind in kinds and a and b and a.features and b.features:
            yield _Met(joint=joint, a=a, b=b)


def _pairs(met: _Met) -> Iterator[tuple[SettledFeature, SettledFeature]]:
    return zip(met.a.features, met.b.features, strict=False)


@after(
    "tab-wider-than-slot",
    reason="A tab goes into an opening at least as long.",
    source=OWN_FIGURES,
)
def tabs_enter(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs wider than the opening they go into is long."""
    for met in _met(settled, TAB_JOINT):
        for tab, opening in _pairs(met):
            over = tab.width.value - opening.length.value
            if _has_length(opening) and over > _SAME:
                message = f"`{met.b.name(0)}` is {mm_text(over, 2)} too short for its tab"
                advice = f"The tab is {mm_text(tab.width.value, 2)} wide: {_follow(opening)}."
                mark = feature_mark(settled, met.b.part, opening)
                yield error("tab-wider-than-slot", message, met.joint.place, advice, mark)


@after(
    "tab-loose-in-slot",
    reason="A tab that slides about places nothing.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tabs_snug(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs that slide about along the opening they go into."""
    for met in _met(settled, TAB_JOINT):
        for tab, opening in _pairs(met):
            play = opening.length.value - tab.width.value
            if _has_length(opening) and play > LOOSE_ALONG + 2 * _fit(settled, met.b.part):
                message = f"the tab has {mm_text(play)} of play in `{met.b.name(0)}`"
                advice = f"The tab is {mm_text(tab.width.value, 2)} wide: {_follow(opening)}."
                mark = feature_mark(settled, met.b.part, opening)
                yield warning("tab-loose-in-slot", message, met.joint.place, advice, mark)


def _has_length(opening: SettledFeature) -> bool:
    return opening.kind is SLOT or (opening.kind is POCKET and bool(opening.takes))


def _follow(opening: SettledFeature) -> str:
    return "give both the same size by name" if opening.takes else "make the opening match"


def _fit(settled: SettledPlan, part: SettledPart) -> float:
    return settled.sheet(part.sheet).fit


@after(
    "sheet-thicker-than-slot",
    reason="A sheet goes into an opening at least as wide.",
    source=OWN_FIGURES,
)
def sheets_enter(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings narrower than the sheet that goes into them, at every thickness."""
    for met in _met(settled, TAB_JOINT, NOTCH_JOINT):
        for opening, part, other in _openings(met):
            over = other.thickness - opening.width.value
            if over > _SAME:
                name = f"{opening.kind} `{part.name}.{opening.name}`"
                message = f"{name} is {mm_text(over, 2)} too narrow for its sheet"
                advice = f"Write `takes: {other.sheet}` in place of its width."
                mark = feature_mark(settled, part, opening)
                yield error("sheet-thicker-than-slot", message, opening.place, advice, mark)


@after(
    "sheet-loose-in-slot",
    reason="A sheet that rattles holds nothing square.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def sheets_snug(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings so wide that the sheet rattles; notches may cross at a slant."""
    for met in _met(settled, TAB_JOINT):
        for opening, part, other in _openings(met):
            play = opening.width.value - other.thickness
            if play > LOOSE_ACROSS + 2 * _fit(settled, other):
                name = f"{opening.kind} `{part.name}.{opening.name}`"
                message = f"{name} leaves {mm_text(play)} of play"
                advice = f"Write `takes: {other.sheet}` in place of its width."
                mark = feature_mark(settled, part, opening)
                yield warning("sheet-loose-in-slot", message, opening.place, advice, mark)


def _openings(met: _Met) -> Iterator[tuple[SettledFeature, SettledPart, SettledPart]]:
    """Yield each opening once with its part and the part that goes into it."""
    for mine, other in ((met.a, met.b), (met.b, met.a)):
        for feature in mine.features:
            loose = feature.kind is POCKET and not feature.takes
            if feature.kind.fitted and not loose:
                yield feature, mine.part, other.part


@after(
    "tab-deeper-than-recess",
    reason="A tab that meets the floor keeps its shoulders off the face.",
    source=OWN_FIGURES,
)
def tabs_bottom(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs longer than the recess they go into is deep: the shoulders never meet."""
    for met in _met(settled, TAB_JOINT):
        for tab, opening in _pairs(met):
            if opening.depth is None or not opening.kind.recessed:
                continue
            over = tab.length.value - opening.depth.value
            if over > _SAME:
                message = f"`{met.a.name(0)}` stands {mm_text(over, 2)} above its recess"
                deep = mm_text(opening.depth.value, 2)
                advice = f"`{met.b.name(0)}` is {deep} deep: shorten the tab, a little to spare."
                mark = feature_mark(settled, met.a.part, tab)
                yield error("tab-deeper-than-recess", message, met.joint.place, advice, mark)


@after(
    "tab-barely-enters",
    reason="A tab holds by the wood it goes through.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tabs_hold(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs that reach less than half way through the sheet they go into."""
    for met in _met(settled, TAB_JOINT):
        for tab, opening in _pairs(met):
            reach, through = tab.length.value, met.b.part.thickness
            if opening.depth is None and opening.kind is SLOT and reach < through / 2:
                message = f"`{met.a.name(0)}` reaches {mm_text(reach)} into its slot"
                sheet = met.b.part.sheet
                advice = f"The sheet is {mm_text(through)} thick: write `takes: {sheet}`."
                mark = feature_mark(settled, met.a.part, tab)
                yield warning("tab-barely-enters", message, met.joint.place, advice, mark)


@after(
    "tab-not-flush",
    reason="A tab of fixed depth is flush in one thickness of sheet only.",
    source=OWN_FIGURES,
    severity=Severity.NOTE,
)
def tabs_flush(settled: SettledPlan) -> Iterator[Finding]:
    """Look for through tabs that end neither flush nor, it seems, on purpose elsewhere."""
    for met in _met(settled, TAB_JOINT):
        for tab, opening in _pairs(met):
            proud = tab.length.value - met.b.part.thickness
            through = opening.depth is None and opening.kind is SLOT
            if through and FLUSH < abs(proud) < met.b.part.thickness / 4:
                how = "stands proud" if proud > 0 else "stays short"
                message = f"`{met.a.name(0)}` {how} by {mm_text(abs(proud))}"
                advice = f"Write `takes: {met.b.part.sheet}` in place of its depth to end flush."
                mark = feature_mark(settled, met.a.part, tab)
                yield note("tab-not-flush", message, met.joint.place, advice, mark)


@after(
    "fingers-unequal",
    reason="A finger meets a gap.",
    source=OWN_FIGURES,
)
def fingers_mesh(settled: SettledPlan) -> Iterator[Finding]:
    """Look for rows of fingers that cannot go into each other."""
    for met in _met(settled, FINGER_JOINT):
        one, other = met.a.features[0], met.b.features[0]
        difference = abs(one.width.value - other.width.value)
        ours, theirs = _steps(one), _steps(other)
        gaps = len(one.shape) + len(other.shape)
        if difference > FLUSH:
            message = f"the two edges differ by {mm_text(difference)}"
            advice = "Fingers run along the whole edge: make both edges as long."
        elif ours != theirs:
            message = f"{ours} fingers and gaps meet {theirs}"
            advice = "Give both rows the same `count`."
        elif gaps != ours:
            message = "both rows begin with the same"
            advice = "Write `first: gap` in one of the two."
        else:
            continue
        mark = feature_mark(settled, met.a.part, one)
        yield error("fingers-unequal", message, met.joint.place, advice, mark)


def _steps(row: SettledFeature) -> int:
    """Return how many fingers and gaps a row has: its length over the narrowest gap, rounded.

    Gaps are a pitch and the fit wide; half a pitch is more than any fit.
    """
    sides = [bounds(gap) for gap in row.shape]
    along = 0 if abs(row.direction[1]) > abs(row.direction[0]) else 1
    widths = [(box.width, box.height)[along] for box in sides]
    return round(row.width.value / max(widths)) if widths else 0
