"""What somebody asks the log for, its words checked against what is known."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Protocol

from kerfolio.basis.names import did_you_mean
from kerfolio.model.outcome import Grade, Operation
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.model.workshop import Workshop
from kerfolio.shop.operation import operation_counted
from kerfolio.trials.log import newest_first

VERDICTS = tuple(each.word for each in reversed(Grade))
"""What a trial may come out as, the best first."""

OPERATIONS = tuple(each.value for each in Operation)
"""What a trial may have cut."""


class _Called(Protocol):
    @property
    def name(self) -> str: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Filters of the log; what is empty or None filters nothing."""

    sheet: str = ""
    cutter: str = ""
    operation: str = ""
    plan: str = ""
    verdict: str = ""
    since: date | None = None


def unknown_in(asked: Asked, workshop: Workshop) -> Iterator[str]:
    """Yield a sentence for each word that means nothing here, with the nearest that does."""
    stock, trials = workshop.stock, workshop.trials
    known: tuple[tuple[str, str, Iterable[str]], ...] = (
        ("sheet", asked.sheet, {*_names(stock.sheets), *_logged(trials, "stock")}),
        ("cutter", asked.cutter, {*_names(stock.cutters), *_logged(trials, "cutter")}),
        ("operation", asked.operation, OPERATIONS),
        ("plan", asked.plan, {*_names(workshop.plans), *_logged(trials, "plan")}),
        ("verdict", asked.verdict, VERDICTS),
    )
    for kind, word, names in known:
        if word and word not in names:
            yield f"No {kind} is called `{word}`. {did_you_mean(word, names)}"


def answering(trials: Iterable[Trial], asked: Asked, stock: Stock) -> tuple[Trial, ...]:
    """Return the trials that answer to all filters, newest first; ``stock`` tells what they cut."""
    return newest_first(each for each in trials if _answers(each, asked, stock))


def _answers(trial: Trial, asked: Asked, stock: Stock) -> bool:
    return (
        (not asked.sheet or (trial.stock is not None and trial.stock.name == asked.sheet))
        and (not asked.cutter or (trial.cutter is not None and trial.cutter.name == asked.cutter))
        and (not asked.operation or operation_counted(trial, stock).value == asked.operation)
        and (not asked.plan or (trial.plan is not None and trial.plan.name == asked.plan))
        and (not asked.verdict or (trial.grade is not None and trial.grade.word == asked.verdict))
        and (asked.since is None or trial.date >= asked.since)
    )


def _names(items: Iterable[_Called]) -> Iterator[str]:
    return (each.name for each in items)


def _logged(trials: Iterable[Trial], what: str) -> Iterator[str]:
    found = (getattr(each, what) for each in trials)
    return (each.name for each in found if each is not None)
