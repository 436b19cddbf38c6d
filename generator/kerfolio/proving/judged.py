"""What the log says of each cut setting of a plan, looked up once for all rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import partial

from kerfolio.model.outcome import Grade
from kerfolio.model.plan import CutSetting, Plan
from kerfolio.model.router import Router
from kerfolio.model.stock import CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.releasing.recut import cut_since
from kerfolio.shop.logged import MANY, Tried, comparable, verdict_on
from kerfolio.shop.outdated import Outdated, now_of, outdated_of
from kerfolio.shop.settings import Settings, settings_stated


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A cut setting with what the log says of it as it is, and what came out better."""

    cut: CutSetting
    cutter: CutterStock
    stated: Settings
    asis: Tried
    better: Tried | None

    @property
    def poor(self) -> bool:
        """Whether it wants a warning: what it cuts must be mended, or a better one is sure."""
        sure = self.better is not None and len(self.better.entries) >= MANY
        return self.asis.typical <= Grade.TO_MEND or (self.asis.typical <= Grade.TO_SAND and sure)


@dataclass(frozen=True, slots=True, kw_only=True)
class LogWords:
    """What the log says of a plan; ``outdated`` are entries that no longer match it, with why."""

    judged: tuple[Judged, ...] = ()
    outdated: tuple[tuple[Trial, Outdated], ...] = ()


def log_words(plan: Plan, stock: Stock, trials: Iterable[Trial]) -> LogWords:
    """Return what a log says of a plan; entries of another sheet are no word on its settings."""
    trials = tuple(trials)
    own = any(each.plan and each.plan.name == plan.name for each in trials)
    since = cut_since(plan.records) if own else ()
    outdated = outdated_of(trials, now_of(plan, stock, since))
    gone = {id(trial) for trial, why in outdated if why.of_another_sheet}
    left = tuple(each for each in trials if id(each) not in gone)
    return LogWords(judged=tuple(_judged(plan, stock, left)), outdated=outdated)


def _judged(plan: Plan, stock: Stock, trials: tuple[Trial, ...]) -> Iterator[Judged]:
    for cut in plan.cuts if trials else ():
        cutter = stock.cutter(cut.cutter.name)
        entries = comparable(cut, plan, trials, stock)
        if cutter is None or not entries:
            continue
        stated = settings_stated(cut, plan, stock)
        found = verdict_on(stated, entries, cutter, partial(_reached, plan.machine))
        if found.asis is not None:
            yield Judged(
                cut=cut, cutter=cutter, stated=stated, asis=found.asis, better=found.better
            )


def _reached(machine: Router, settings: Settings) -> bool:
    """Tell whether the workshop's machine can run so."""
    feeds = (settings.feed, settings.plunge)
    return (
        all(machine.feeds(each) for each in feeds if each is not None)
        and all(machine.reaches(each) for each in settings.passes)
        and (settings.speed is None or machine.turns(settings.speed))
    )
