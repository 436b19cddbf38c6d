"""What the log says of a sheet and a cutter: the best settings, what failed near, what to try."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.model.router import Router
from kerfolio.model.stock import CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.alike import under_tip
from kerfolio.trials.chances import Tally, tally
from kerfolio.trials.cut import Cut, cut_of
from kerfolio.trials.next_trial import Bench, Next, depth_of, next_trial
from kerfolio.trials.ranking import Best, Failure, Ground
from kerfolio.trials.subject import Sorted, Subject, on_alike_sheets


@dataclass(frozen=True, slots=True, kw_only=True)
class TipRule:
    """How cuts came out whose first pass stayed within the up-cut part at the tip, or went on."""

    within: Tally
    deeper: Tally


@dataclass(frozen=True, slots=True, kw_only=True)
class Elsewhere:
    """What came out well on a sheet alike."""

    subject: Subject
    best: Best


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What the log says of a sheet and a cutter.

    ``cuts`` are all that can be compared, the newest first; ``left_out`` are trials that lack a
    verdict, a feed or a speed. ``best`` is None where there is nothing to compare.
    """

    subject: Subject
    cuts: tuple[Cut, ...]
    left_out: tuple[Trial, ...]
    best: Best | None
    failures: tuple[Failure, ...]
    tip: TipRule | None
    next: Next
    elsewhere: tuple[Elsewhere, ...]


def answer(subject: Subject, log: Sorted, stock: Stock, machine: Router, unit: str) -> Answer:
    """Return what the log says; feeds of the next trial come to even numbers in ``unit``."""
    trials = log.get(subject, ())
    made = [cut_of(each, subject.cutter) for each in trials]
    cuts = tuple(each for each in made if each is not None)
    pairs = zip(trials, made, strict=True)
    ground = Ground(cuts, subject.cutter)
    best = ground.best()
    elsewhere = tuple(_elsewhere(subject, log))
    bench = Bench(
        subject=subject, stock=stock, machine=machine, unit=unit, depth=depth_of(subject, best)
    )
    return Answer(
        subject=subject,
        cuts=cuts,
        left_out=tuple(trial for trial, cut in pairs if cut is None),
        best=best,
        failures=ground.failures(best) if best else (),
        tip=_tip_rule(cuts, subject.cutter),
        next=next_trial(bench, ground, best, elsewhere[0].best if elsewhere else None),
        elsewhere=elsewhere,
    )


def _elsewhere(subject: Subject, log: Sorted) -> list[Elsewhere]:
    found = []
    for each in on_alike_sheets(subject, log):
        cuts = [cut for trial in log[each] if (cut := cut_of(trial, each.cutter))]
        best = Ground(cuts, each.cutter).best()
        if best is not None and best.promising:
            found.append(Elsewhere(subject=each, best=best))
    return found


def _tip_rule(cuts: Sequence[Cut], cutter: CutterStock) -> TipRule | None:
    """Return both tallies; None where the cutter has no such tip or no first pass is logged."""
    sides = [(under_tip(each.settings.first, cutter), each.grade) for each in cuts]
    within = tally(grade for side, grade in sides if side is True)
    deeper = tally(grade for side, grade in sides if side is False)
    return TipRule(within=within, deeper=deeper) if within.total + deeper.total else None
