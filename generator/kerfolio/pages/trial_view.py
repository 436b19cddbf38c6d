"""Trials as pages show them: what is known of one, in the workshop's units."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from kerfolio.basis.reader import Reader
from kerfolio.chapters.trials import settings
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
    reader: Reader,
    show: ShowPhoto,
) -> tuple[TrialView, ...]:
    """Return the trials, newest first; without a stock, sheets and cutters keep their names.

    ``reader`` is whom it is for.
    """
    return tuple(
        TrialView(
            day=each.date,
            title=each.title,
            plan=each.plan.name if each.plan else "",
            outcome=each.outcome,
            settings=settings(each, stock or Stock(), reader),
            photo=show(each.photo),
            text=each.text,
            public=each.public,
        )
        for each in newest_first(trials)
    )
