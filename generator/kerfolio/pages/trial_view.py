"""Trials as pages show them: what is known of one, in the workshop's units."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from kerfolio.basis.cutting_lengths import depth_text
from kerfolio.basis.figures import whole_figure
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.thickness import thickness_text
from kerfolio.basis.words import listed
from kerfolio.model.prose import Prose
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.pages.photos import ShownPhoto, ShowPhoto
from kerfolio.trials.log import newest_first


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialView:
    """A trial, ready to set; ``settings`` is (what, value)."""

    day: date
    title: str
    plan: str
    outcome: str
    settings: tuple[tuple[str, str], ...]
    photo: ShownPhoto | None
    text: Prose
    public: bool


def trial_views(
    trials: Iterable[Trial],
    stock: Stock | None,
    first: str,
    show: ShowPhoto,
) -> tuple[TrialView, ...]:
    """Return the trials, newest first; without a stock, sheets and cutters keep their names.

    ``first`` is the unit shown first.
    """
    return tuple(
        TrialView(
            day=each.date,
            title=each.title,
            plan=each.plan.name if each.plan else "",
            outcome=each.outcome,
            settings=settings(each, stock or Stock(), first),
            photo=show(each.photo),
            text=each.text,
            public=each.public,
        )
        for each in newest_first(trials)
    )


def settings(trial: Trial, stock: Stock, first: str) -> tuple[tuple[str, str], ...]:
    """Return what is known of a trial's settings, each with its name."""
    sheet = stock.sheet(trial.stock.name) if trial.stock else None
    cutter = stock.cutter(trial.cutter.name) if trial.cutter else None
    found = (
        ("Sheet", sheet.title if sheet else str(trial.stock or "")),
        ("Measured", _thick(trial.thickness, first)),
        ("Cutter", cutter.title if cutter else str(trial.cutter or "")),
        ("Speed", "" if trial.speed_rpm is None else f"{whole_figure(trial.speed_rpm)} rpm"),
        ("Feed", _feed(trial.feed_mm_per_min, first)),
        ("Plunge", _feed(trial.plunge_mm_per_min, first)),
        ("Passes", _passes(trial.passes, first)),
        ("Fit a side", _thick(trial.fit, first)),
    )
    return tuple((name, value) for name, value in found if value)


def _thick(mm: float | None, first: str) -> str:
    return "" if mm is None else thickness_text(mm, first)


def _feed(mm_per_min: float | None, first: str) -> str:
    if mm_per_min is None:
        return ""
    metric = f"{whole_figure(mm_per_min)} mm/min"
    inch = f"{whole_figure(mm_per_min / float(MM_PER_UNIT['in']))} in/min"
    return f"{metric} ({inch})" if first == "mm" else f"{inch} ({metric})"


def _passes(depths: tuple[float, ...], first: str) -> str:
    return listed([depth_text(depth, first) for depth in depths])
