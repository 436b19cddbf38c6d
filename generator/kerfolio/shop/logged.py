"""What entries of the log say of a cut setting: which were cut like it, and how they came out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from kerfolio.model.outcome import Grade
from kerfolio.model.plan import CutSetting, Plan
from kerfolio.model.stock import CutterStock, Stock
from kerfolio.model.trial import Trial
from kerfolio.shop.alike import told_in, unlike
from kerfolio.shop.operation import operation_logged, operation_stated
from kerfolio.shop.settings import Settings, settings_logged, settings_stated

MANY = 2
"""Entries that agree, from which on a better setting is more than a stroke of luck."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """Entries that were cut alike and have a verdict, the newest first."""

    settings: Settings
    entries: tuple[Trial, ...]

    @property
    def grades(self) -> tuple[Grade, ...]:
        """Their verdicts, the worst first."""
        return tuple(sorted(each.grade for each in self.entries if each.grade))

    @property
    def typical(self) -> Grade:
        """The verdict in the middle; of two the worse, since grades have no mean."""
        return self.grades[(len(self.grades) - 1) // 2]

    @property
    def agrees(self) -> bool:
        """Whether the verdicts lie within one step of each other."""
        return self.grades[-1] - self.grades[0] <= 1


def same_pair(trials: Iterable[Trial], sheet: str, cutter: str) -> tuple[Trial, ...]:
    """Return the entries on a sheet material with a cutter, both by their names in the stock."""
    return tuple(
        each
        for each in trials
        if (each.stock and each.stock.name == sheet and each.cutter and each.cutter.name == cutter)
    )


def comparable(
    cut: CutSetting, plan: Plan, trials: Iterable[Trial], stock: Stock
) -> tuple[Trial, ...]:
    """Return the entries with a verdict that a cut setting of a plan may be compared with.

    They are of the same sheet material and cutter and, where both tell it, operation; they say the
    feed.
    """
    use = next((each for each in plan.sheets if each.name == cut.sheet.name), None)
    material = stock.sheet(use.stock.name) if use else None
    cutter = stock.cutter(cut.cutter.name)
    if material is None or cutter is None:
        return ()
    passes = settings_stated(cut, plan, stock).passes
    wanted = operation_stated(cut, passes, material, cutter)

    def of_it(trial: Trial) -> bool:
        cut_then = operation_logged(trial, stock)
        return wanted is None or cut_then is None or cut_then is wanted

    return tuple(
        each
        for each in same_pair(trials, material.name, cutter.name)
        if each.grade is not None and each.feed_mm_per_min is not None and of_it(each)
    )


def cut_alike(entries: Iterable[Trial], cutter: CutterStock) -> tuple[Tried, ...]:
    """Return entries of a cutter with a verdict in groups that were cut with the same settings.

    Those of a group tell the same and differ in nothing of it; ``settings`` are the newest's.
    """
    groups: list[list[Trial]] = []
    for each in _newest_first(each for each in entries if each.grade):
        settings = settings_logged(each, cutter)
        for group in groups:
            first = settings_logged(group[0], cutter)
            if told_in(first) == told_in(settings) and not unlike(first, settings, cutter):
                group.append(each)
                break
        else:
            groups.append([each])
    return tuple(
        Tried(settings=settings_logged(each[0], cutter), entries=tuple(each)) for each in groups
    )


def _newest_first(entries: Iterable[Trial]) -> list[Trial]:
    return sorted(entries, key=lambda each: each.date, reverse=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What the log says of a cut setting: how it came out as it is, and what came out better.

    ``asis`` is None where nothing was cut like it.
    """

    asis: Tried | None = None
    better: Tried | None = None


def verdict_on(
    stated: Settings,
    entries: Iterable[Trial],
    cutter: CutterStock,
    possible: Callable[[Settings], bool] = lambda _: True,
) -> Verdict:
    """Compare what is stated with entries that are ``comparable``.

    What is better agrees with itself, is ``possible``, and is the best; of two alike that which
    more stand behind. Nothing is better than what was never cut as it is.
    """
    entries = tuple(entries)
    like = [each for each in entries if not unlike(settings_logged(each, cutter), stated, cutter)]
    if stated.feed is None or not like:
        return Verdict()
    asis = Tried(settings=stated, entries=tuple(_newest_first(like)))
    others = (e for e in cut_alike(entries, cutter) if unlike(e.settings, stated, cutter))
    better = (e for e in others if e.agrees and e.typical > asis.typical and possible(e.settings))
    best = max(
        better,
        key=lambda each: (each.typical, len(each.entries), each.entries[0].date),
        default=None,
    )
    return Verdict(asis=asis, better=best)
