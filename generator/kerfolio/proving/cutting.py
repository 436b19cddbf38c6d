"""Checks of the cut settings against the cutter and the sheet."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import feed, length, number, precise
from kerfolio.basis.said import ByUnit, said
from kerfolio.basis.tolerance import SAME
from kerfolio.proving.cut_runs import runs
from kerfolio.proving.origin import named_with_file
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Stated, after, before
from kerfolio.settling.settled import SettledPlan

MOST_DIAMETERS = 3.0
"""Where the published corrections of chip load for depth end (common practice)."""

DEEP_SKIM = 1.0
"""mm into the spoilboard; a few tenths clear the lower veneer (common practice)."""


@after(
    "pass-too-deep",
    reason="A slot deeper than three diameters packs its chips and bends the cutter.",
    source="corrections of chip load for depth, published to three diameters; common practice",
    severity=Severity.WARNING,
)
def pass_depths(settled: SettledPlan) -> Iterator[Finding]:
    """Look for single passes deeper than three diameters of the cutter."""
    for run in runs(settled):
        step = run.deepest_pass
        most = MOST_DIAMETERS * run.cutter.diameter
        if step > most + SAME:
            name, deep = run.cut.name, length("pass", step)
            message = said("`{}` takes {} in one pass", name, deep)
            times, limit = number("diameters", MOST_DIAMETERS), length("most", most)
            template = "Stay within {} diameters of `{}`, {}: put a pass between."
            advice = said(template, times, run.cutter.name, limit)
            yield warning("pass-too-deep", message, run.cut.place, advice, subject=name)


@after(
    "passes-not-deeper",
    reason="Passes count from the face down.",
    source=OUR_FORM,
    severity=Severity.WARNING,
)
def passes_deepen(settled: SettledPlan) -> Iterator[Finding]:
    """Look for passes that are no deeper than the one before: they count from the face."""
    for run in runs(settled):
        if any(b <= a + SAME for a, b in pairwise(run.depths)):
            message = f"`{run.cut.name}`: a pass is no deeper than the one before"
            two = ByUnit("4 mm are `passes: [4, 8]`", "1/8 in are `passes: [1/8 in, 1/4 in]`")
            advice = said("Passes are depths from the face down: two of {}.", two)
            name = run.cut.name
            yield warning("passes-not-deeper", message, run.cut.place, advice, subject=name)


@after(
    "cutter-too-short",
    reason="Above its edges a cutter rubs and burns.",
    source="the stock's own cutting length",
    severity=Severity.WARNING,
)
def cutter_reaches(settled: SettledPlan) -> Iterator[Finding]:
    """Look for cuts deeper than the cutter's edges are long: its shank would rub."""
    for run in runs(settled):
        deepest = max(run.depths, default=0.0)
        if deepest > run.cutter.cutting_length + SAME:
            name = run.cut.name
            message = said("`{}` goes {} deep", name, precise("depth", deepest))
            edges = precise("edges", run.cutter.cutting_length)
            cutter = named_with_file(run.cutter, "cutting_length")
            advice = said("The edges of {} are {} long: use a longer cutter.", cutter, edges)
            yield warning("cutter-too-short", message, run.cut.place, advice, subject=name)


@after(
    "stops-short",
    reason="A part that hangs on a veneer tears when it is broken out.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def goes_through(settled: SettledPlan) -> Iterator[Finding]:
    """Look for last passes that end just short of the sheet's lower face."""
    for run in runs(settled):
        if run.through and run.depths[-1] < run.thickness - SAME:
            name, left = run.cut.name, precise("left", run.thickness - run.depths[-1])
            message = said("`{}` leaves {} uncut", name, left)
            advice = "Write `rest` as the last pass: it goes through whatever the sheet measures."
            yield warning("stops-short", message, run.cut.place, advice, subject=name)


@after(
    "no-skim",
    reason="A sheet is nowhere quite flat on its spoilboard.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def skims(settled: SettledPlan) -> Iterator[Finding]:
    """Look for through cuts that end on the sheet's lower face and no deeper."""
    for run in runs(settled):
        if run.through and abs(run.depths[-1] - run.thickness) <= SAME:
            message = f"`{run.cut.name}` ends on the lower face"
            little = ByUnit("`skim: 0.3`: a few tenths", "`skim: 0.01`: a hundredth of an inch")
            advice = said("Write {} into the spoilboard cut the last fibres.", little)
            yield note("no-skim", message, run.cut.place, advice, subject=run.cut.name)


@after(
    "deep-skim",
    reason="Deep cuts ruin the spoilboard and let the next sheet sag.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def skims_lightly(settled: SettledPlan) -> Iterator[Finding]:
    """Look for through cuts that go deep into the spoilboard."""
    for run in runs(settled):
        into = run.depths[-1] - run.thickness if run.through else 0.0
        if into > DEEP_SKIM + SAME:
            name, deep = run.cut.name, length("skim", into)
            message = said("`{}` goes {} into the spoilboard", name, deep)
            enough = ByUnit(
                "A few tenths of a millimetre are enough: `skim: 0.3`.",
                "A hundredth of an inch is enough: `skim: 0.01`.",
            )
            yield warning("deep-skim", message, run.cut.place, said("{}", enough), subject=name)


@before(
    "plunge-over-feed",
    reason="A cutter cuts badly with its end: it plunges slower than it feeds.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def plunges_slower(stated: Stated) -> Iterator[Finding]:
    """Look for plunges faster than the feed."""
    for cut in stated.plan.cuts:
        across, down = cut.feed_mm_per_min, cut.plunge_mm_per_min
        if across and down and down > across:
            message = f"`{cut.name}` plunges faster than it feeds"
            advice = "A quarter to a half of the feed is usual: a cutter cuts badly with its end."
            more = (*feed("plunge", down).facts, *feed("feed", across).facts)
            yield warning(
                "plunge-over-feed", message, cut.place, advice, subject=cut.name, more=more
            )
