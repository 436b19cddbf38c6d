"""Checks of compression cutters: their tip cuts upwards, and must not meet the face.

Above its tip such a cutter presses the fibres of the face down. Where nothing but the tip is in the
wood, as in a shallow first pass or a housing, it lifts them instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import precise
from kerfolio.basis.said import Text, Words, named, said
from kerfolio.basis.tolerance import SAME
from kerfolio.proving.cut_runs import Run, runs
from kerfolio.proving.marks import about
from kerfolio.proving.origin import is_library, named_with_file
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import Cut, Operation, SettledFeature, SettledPart, SettledPlan
from kerfolio.shop.cut_setting import Setting, in_choice, settings_of
from kerfolio.shop.tightest import narrowest

KIND = "compression"

TRADE_TIP = 0.31 / 0.25
"""Diameters of a first pass that is deep enough whatever the tip: 0.31 in with a quarter-inch
cutter in three-quarter-inch plywood (common practice, no single source)."""

ROOM = 1.0
"""mm between a cutter that enters an opening and its walls (common practice, no single source)."""

_MEASURE = "Measure the tip, from the end to where the edges turn, and write it into `stock/`"


@after(
    "first-pass-in-tip",
    reason="Within its tip a compression cutter only cuts upwards, and lifts the face.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def first_pass_below_tip(settled: SettledPlan) -> Iterator[Finding]:
    """Look for compression cutters whose first pass stays within the up-cutting tip.

    Only the tip then meets the upper veneer, and lifts it: the pass must be deeper than the tip.
    """
    for run in _compressing(settled):
        tip = run.cutter.up_cut_length
        if tip and run.depths[0] <= tip + SAME:
            first, name = precise("pass", run.depths[0]), run.cut.name
            message = said("`{}`: a first pass of {} lifts the face", name, first)
            advice: Text = "The sheet is thinner than the cutter's tip: use a down-cut cutter."
            if run.thickness > tip:
                advice = said(
                    "The up-cutting tip of {} is {}: go deeper at once, or use a down-cut cutter.",
                    named_with_file(run.cutter, "up_cut_length"),
                    precise("tip", tip),
                )
            yield warning("first-pass-in-tip", message, run.cut.place, advice, subject=name)


@after(
    "tip-unmeasured",
    reason="Tips differ from maker to maker; a first pass is right for the tip at hand alone.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def tips_measured(settled: SettledPlan) -> Iterator[Finding]:
    """Look for compression cutters whose tip nobody has measured, and that go in little deeper.

    A first pass as deep as the trade takes it with such a cutter is deep enough for its tip.
    """
    for run in _compressing(settled):
        tip, first = run.cutter.up_cut_length, run.depths[0]
        enough = TRADE_TIP * run.cutter.diameter
        if first >= enough - SAME or (tip and not is_library(run.cutter, "up_cut_length")):
            continue
        if tip and first <= tip + SAME:
            continue  # told as too shallow even for the tip of the library
        known = "its tip is the library's, not measured" if tip else "its tip is not known"
        name, into = run.cut.name, precise("pass", first)
        message = said("`{}` begins {} deep with `{}`: {}", name, into, run.cutter.name, known)
        advice = said(
            "{}, or begin {} deep, as the trade does with such a cutter.",
            said("{} as `up-cut-length` of `{}`", _MEASURE, run.cutter.name),
            precise("enough", enough),
        )
        yield note("tip-unmeasured", message, run.cut.place, advice, subject=name)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Cleared:
    """A feature of a part with the setting of a compression cutter that cuts it."""

    part: SettledPart
    feature: SettledFeature
    setting: Setting

    @property
    def called(self) -> Words:
        """The feature by its kind and name."""
        return said("{} {}", self.feature.kind.name, named(f"{self.part.name}.{self.feature.name}"))


@after(
    "recess-in-tip",
    reason="Within its tip a compression cutter only cuts upwards, and frays a recess all round.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def recesses_below_tip(settled: SettledPlan) -> Iterator[Finding]:
    """Look for recesses no deeper than the tip of the compression cutter that clears them."""
    for each in _cleared(settled):
        depth, tip = each.feature.depth, each.setting.cutter.up_cut_length
        if depth is not None and tip and depth.value <= tip + SAME:
            deep = precise("depth", depth.value)
            frays = said("`{}` frays its rim", each.setting.name)
            message = said("{} is {} deep, and {}", each.called, deep, frays)
            advice = said(
                "All of it lies within the up-cutting tip of {}, {}: add a setting with a down-cut "
                "cutter and `passes: [{}]`.",
                named_with_file(each.setting.cutter, "up_cut_length"),
                precise("tip", tip),
                deep,
            )
            what = about(settled, each.part, each.feature)
            yield warning("recess-in-tip", message, each.feature.place, advice, **what)


@after(
    "no-waste-to-enter",
    reason="A compression cutter lifts the face where it enters, until its tip is below it.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def waste_to_enter(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings in which a compression cutter finds no waste to enter by."""
    for each in _cleared(settled):
        width, diameter = narrowest(each.feature), each.setting.cutter.diameter
        if width is None or each.feature.depth is not None or each.feature.kind.on_edge:
            continue
        least = diameter + 2 * ROOM
        if diameter - SAME <= width < least - SAME:
            wide = precise("width", width)
            message = said(
                "{} is {} wide: `{}` enters at its walls", each.called, wide, each.setting.name
            )
            advice = said(
                "The tip lifts the face there until it is through: drill where it enters, ramp in "
                "along the middle, or make the opening {} wide.",
                precise("least", least),
            )
            what = about(settled, each.part, each.feature)
            yield note("no-waste-to-enter", message, each.feature.place, advice, **what)


def _compressing(settled: SettledPlan) -> Iterator[Run]:
    return (run for run in runs(settled) if run.cutter.kind == KIND and run.depths)


def _cleared(settled: SettledPlan) -> Iterator[_Cleared]:
    """Yield what a compression cutter clears, the first of each stated set."""
    settings = {each.name: settings_of(settled, each.name) for each in settled.sheets}
    for part in settled.parts:
        told: set[str] = set()
        for feature in part.features:
            stem = feature.name.partition(".")[0]
            if stem in told or not feature.kind.cleared:
                continue
            told.add(stem)
            operation = Operation.OPENING if feature.depth is None else Operation.POCKET
            deep = None if feature.depth is None else feature.depth.value
            cut = Cut(operation=operation, depth=deep, contours=())
            first = next(iter(in_choice(cut, settings[part.sheet])), None)
            if first is not None and first.cutter.kind == KIND:
                yield _Cleared(part=part, feature=feature, setting=first)
