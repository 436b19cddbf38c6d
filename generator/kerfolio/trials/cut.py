"""Cuts of the log: graded trials among settings."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.outcome import Grade
from kerfolio.model.stock import CutterStock
from kerfolio.model.trial import Trial
from kerfolio.shop.settings import Settings, settings_logged


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A graded trial with its settings, of which the chip load is known."""

    trial: Trial
    grade: Grade
    settings: Settings


def cut_of(trial: Trial, cutter: CutterStock) -> Cut | None:
    """Return a trial among settings; None where its grade, feed or speed is not known."""
    if trial.grade is None or not trial.feed_mm_per_min or not trial.speed_rpm:
        return None
    return Cut(trial=trial, grade=trial.grade, settings=settings_logged(trial, cutter))
