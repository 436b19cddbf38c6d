"""Trials as pages show them: what is known of one, in the workshop's units."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from kerfolio.basis.reader import Reader
from kerfolio.chapters.trials import settings, title_of
from kerfolio.model.prose import Prose
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.pages.photos import ShownPhoto, ShowPhoto
from kerfolio.trials.outcome_told import outcome_told


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialView:
    """A trial, ready to set; ``id`` is its address on the page, ``settings`` is (what, value).

    Only the maker sees the rest: what of it the site never shows, why its plan has gone past it,
    and whether it is ``shown`` on the site.
    """

    id: str
    day: date
    title: str
    plan: str
    outcome: str
    clean: bool
    settings: tuple[tuple[str, str], ...]
    photo: ShownPhoto | None
    text: Prose
    private: tuple[tuple[str, str], ...] = ()
    outdated: str = ""
    shown: bool = False


def trial_views(
    found: Sequence[Trial],
    stock: Stock | None,
    reader: Reader,
    show: ShowPhoto,
) -> tuple[TrialView, ...]:
    """Return the trials in the order given; without a stock, sheets and cutters keep their names.

    ``reader`` is whom it is for.
    """
    return tuple(
        TrialView(
            id=each.id,
            day=each.date,
            title=title_of(each, stock or Stock(), reader),
            plan=each.plan.name if each.plan else "",
            outcome=outcome_told(each.outcome, reader),
            clean=each.outcome.clean,
            settings=settings(each, stock or Stock(), reader),
            photo=show(each.photo),
            text=each.text,
        )
        for each in found
    )
