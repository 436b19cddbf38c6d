"""Checks of tabs and arms: wide enough for their sheet, and not across its grain."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length, point
from kerfolio.basis.said import Text, named, said
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.contour import Point
from kerfolio.geometry.prongs import Prong, prongs
from kerfolio.model.feature_kind import NOTCH, TAB
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import WEDGE_JOINT
from kerfolio.proving.marks import about, about_spots
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.shop.short_grain import slender, splits_across

_ACROSS = 0.7
"""What runs this share or less along the grain (45 degrees and more from it) lies across it."""

_BESIDE = 5.0
"""An arm whose root lies no farther than this, mm, from where a notch ends stands beside it."""

_ARMS = (100.0, 75.0, 50.0, 30.0)
"""The widest roots looked for, mm, the next where a part is no wider than that itself: what hangs
on by more than the first does not break in short grain (common practice, no single source)."""


@after(
    "tab-narrow",
    reason="A tab narrower than its sheet is thick shears off, or breaks as it is driven in.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tabs_wide(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs narrower than their sheet is thick, one remark for each stated set."""
    for part in settled.parts:
        for tab in _sets(part):
            if tab.width.value < part.thickness - SAME:
                wide, thick = length("width", tab.width.value), length("least", part.thickness)
                message = said(
                    "tab {} is {} wide, narrower than its sheet",
                    named(f"{part.name}.{tab.name}"),
                    wide,
                )
                advice = said("Its sheet is {} thick: make it as wide, or more.", thick)
                yield warning("tab-narrow", message, tab.place, advice, **about(settled, part, tab))


@after(
    "short-grain",
    reason="Wood splits along its grain: what hangs on across it breaks off under little load.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def grain_runs_out(settled: SettledPlan) -> Iterator[Finding]:
    """Look for tabs, arms and feet across the grain.

    Of solid wood and thin plywood any, where plies run both ways those longer than wide, but not
    beside the notches of a halving: what goes into these holds them.
    """
    wedges = {each.a.name.partition(".")[0] for each in _wedged(settled)}
    for part in settled.parts:
        stock = settled.sheet(part.sheet).stock
        if not part.grained or not stock.grain or part.name in wedges:
            continue  # of a wedge's grain its own rule tells
        most, splits = slender(stock), splits_across(stock)
        for tab in _sets(part):
            if _crosses(tab.direction, part) and tab.length.value > most * tab.width.value:
                name = named(f"{part.name}.{tab.name}")
                message = said("the grain runs across tab {}", name)
                advice = _advice(part, splits, tab.width.value)
                what = about(settled, part, tab)
                yield warning("short-grain", message, tab.place, advice, **what)
        for arm in _arms(part):
            held = not splits and _beside_notch(arm, part)
            if _crosses(arm.way, part) and arm.reach > max(most, 1.0) * arm.width and not held:
                message = said(
                    "the grain runs across an arm of `{}` at {}, {} long and {} wide",
                    part.name,
                    point(*arm.root),
                    *(length("reach", arm.reach), length("width", arm.width)),
                )
                advice = _advice(part, splits, arm.width)
                what = about_spots(settled, part, [arm.root], arm.width / 2)
                yield warning("short-grain", message, part.place, advice, **what)


def _wedged(settled: SettledPlan) -> Iterator[Joint]:
    return (each for each in settled.plan.joints if each.kind is WEDGE_JOINT)


def _advice(part: SettledPart, splits: bool, width: float) -> Text:
    other = "y" if part.grain == "along x" else "x"
    if splits:
        return f"It splits off there: write `grain: along {other}`, or take a sheet of more plies."
    reach = length("most", width)
    return said(
        "Write `grain: along {}`, or let it reach no farther than it is wide, {}.", other, reach
    )


def _sets(part: SettledPart) -> Iterator[SettledFeature]:
    """Yield the first tab of each stated set."""
    told: set[str] = set()
    for feature in part.features:
        stem = feature.name.partition(".")[0]
        if feature.kind is TAB and stem not in told:
            told.add(stem)
            yield feature


def _arms(part: SettledPart) -> Iterator[Prong]:
    """Yield the arms of a part that are none of its tabs."""
    roots = [each.at for each in part.features if each.kind is TAB]
    for arm in prongs(part.plain, _ARMS):
        if all(_apart(arm.root, each) > arm.width for each in roots):
            yield arm


def _beside_notch(arm: Prong, part: SettledPart) -> bool:
    """Tell whether an arm stands beside a notch that takes a sheet, root beside bottom."""
    return any(
        abs(_apart(arm.root, each.at) - (arm.width + each.width.value) / 2) < _BESIDE
        for each in part.features
        if each.kind is NOTCH and each.takes
    )


def _apart(one: Point, other: Point) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def _crosses(way: Point, part: SettledPart) -> bool:
    along = way[0] if part.grain == "along x" else way[1]
    return abs(along) <= _ACROSS
