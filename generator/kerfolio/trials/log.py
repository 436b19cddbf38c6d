"""The log's meaning: which trials belong where, and how they read."""

from __future__ import annotations

from collections.abc import Iterable

from kerfolio.basis.cutting_lengths import depths_in, feed_in, fit_in
from kerfolio.basis.figures import whole_figure
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.thickness import reading_in
from kerfolio.model.outcome import Grade
from kerfolio.model.trial import Trial

VERDICTS = tuple(each.word for each in reversed(Grade))
"""What a trial may come out as, the best first."""


def newest_first(trials: Iterable[Trial]) -> tuple[Trial, ...]:
    """Sort trials by date, newest first; of one day, what stands last in the log is the newest."""
    oldest_first = sorted(trials, key=lambda trial: trial.date)
    return tuple(oldest_first[::-1])


def public_for(trials: Iterable[Trial], plan: str) -> tuple[Trial, ...]:
    """Return the trials of a plan that the maker marked public, newest first."""
    return newest_first(
        trial for trial in trials if trial.public and trial.plan and trial.plan.name == plan
    )


def public(trials: Iterable[Trial]) -> tuple[Trial, ...]:
    """Return all trials that the maker marked public, newest first."""
    return newest_first(trial for trial in trials if trial.public)


def matching(
    trials: Iterable[Trial], *, stock: str = "", cutter: str = "", verdict: str = ""
) -> tuple[Trial, ...]:
    """Return the trials on a sheet material, with a cutter, of a verdict; newest first."""
    return newest_first(
        trial
        for trial in trials
        if (not stock or (trial.stock and trial.stock.name == stock))
        and (not cutter or (trial.cutter and trial.cutter.name == cutter))
        and (not verdict or (trial.grade and trial.grade.word == verdict))
    )


def settings_text(trial: Trial, reader: Reader = METRIC) -> str:
    """Return what is known of a trial's settings in one line, parts divided by a middle dot.

    Lengths are in ``unit``, ``mm`` or ``in``.
    """
    known = (
        trial.stock.name if trial.stock else "",
        reading_in(trial.thickness, reader) if trial.thickness is not None else "",
        trial.cutter.name if trial.cutter else "",
        f"{whole_figure(trial.speed_rpm)} rpm" if trial.speed_rpm is not None else "",
        f"feed {feed_in(trial.feed_mm_per_min, reader)}"
        if trial.feed_mm_per_min is not None
        else "",
        f"plunge {feed_in(trial.plunge_mm_per_min, reader)}"
        if trial.plunge_mm_per_min is not None
        else "",
        f"passes {depths_in(trial.passes, reader)}" if trial.passes else "",
        f"fit {fit_in(trial.fit, reader)} a side" if trial.fit is not None else "",
    )
    return " · ".join(text for text in known if text)
