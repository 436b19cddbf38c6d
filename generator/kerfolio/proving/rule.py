"""What a rule is: one check with its id, its reason and its source."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Generic, TypeVar

from kerfolio.basis.finding import Finding, Severity
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.settling.settled import SettledPlan

COMMON_PRACTICE = "common practice, no single source"
OUR_FORM = "the form of a plan"

S = TypeVar("S")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """What rules before settling look at; ``trials`` are the workshop's log."""

    plan: Plan
    stock: Stock
    trials: tuple[Trial, ...] = ()


@dataclass(frozen=True, kw_only=True)  # no slots: a parametrised generic cannot have them
class Rule(Generic[S]):
    """A named check; ``check`` yields the findings, each carrying ``id`` as its rule.

    ``also`` are the ids of findings that the same look at the plan gives besides its own.
    ``severity`` is that of all of them: only a rule that is no error can be silenced.
    """

    id: str
    reason: str
    source: str
    check: Callable[[S], Iterator[Finding]]
    severity: Severity = Severity.ERROR
    also: tuple[str, ...] = ()

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of the findings it gives."""
        return (self.id, *self.also)


Before = Rule[Stated]
After = Rule[SettledPlan]
