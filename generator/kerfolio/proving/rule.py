"""What a rule is: one check with its id, its reason and its source, declared beside its function.

A check is declared by the decorator of what it looks at: ``before`` settling at the model,
``after`` settling at each settled plan, ``together`` at each thing put together, ``as_set`` at all
that a set holds. It makes the function a rule, which ``proving/rules.py`` collects.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import Generic, Required, TypedDict, TypeVar, Unpack

from kerfolio.assembly.building import Build
from kerfolio.assembly.set_together import SetTogether
from kerfolio.basis.finding import Finding, Severity
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.proving.judged import LogWords
from kerfolio.settling.settled import SettledPlan

COMMON_PRACTICE = "common practice, no single source"
OUR_FORM = "the form of a plan"
OWN_FIGURES = "the plan's own figures"
ROUND_CUTTER = "geometry of a round cutter"

S = TypeVar("S")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """What rules before settling look at; ``trials`` are the workshop's log.

    ``log`` is what that says of the plan (``judged.log_words``).
    """

    plan: Plan
    stock: Stock
    trials: tuple[Trial, ...] = ()
    log: LogWords = field(default_factory=LogWords)


Check = Callable[[S], Iterator[Finding]]


@dataclass(frozen=True, kw_only=True)  # no slots: a parametrised generic cannot have them
class Rule(Generic[S]):
    """A named check; ``check`` yields the findings, each carrying ``id`` as its rule.

    ``also`` are the ids of findings that the same look at the plan gives besides its own.
    ``severity`` is that of all of them: only a rule that is no error can be silenced. ``unbuilt``
    says that its errors leave in doubt how the whole goes together, whatever part they are about;
    ``aside`` that they are about what no joint goes by, whatever part has the name.
    """

    id: str
    reason: str
    source: str
    check: Check[S]
    severity: Severity = Severity.ERROR
    also: tuple[str, ...] = ()
    unbuilt: bool = False
    aside: bool = False

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of the findings it gives."""
        return (self.id, *self.also)


class Before(Rule[Stated]):
    """A rule over what a plan states, before anything is worked out."""


class After(Rule[SettledPlan]):
    """A rule over a settled plan: shapes, cutters and sheets at one thickness."""


class Together(Rule[Build]):
    """A rule over a plan put together: joints that agree, pieces that fit, an order that works."""


class AsSet(Rule[SetTogether]):
    """A rule over a set put together: what lies on what."""


class About(TypedDict, total=False):
    """What is said of a rule besides its id (see ``Rule``)."""

    reason: Required[str]
    source: Required[str]
    severity: Severity
    also: tuple[str, ...]
    unbuilt: bool
    aside: bool


def before(id: str, **about: Unpack[About]) -> Callable[[Check[Stated]], Before]:
    """Declare a check of what a plan states."""
    return lambda check: Before(id=id, check=check, **about)


def after(id: str, **about: Unpack[About]) -> Callable[[Check[SettledPlan]], After]:
    """Declare a check of a settled plan."""
    return lambda check: After(id=id, check=check, **about)


def together(id: str, **about: Unpack[About]) -> Callable[[Check[Build]], Together]:
    """Declare a check of a plan put together."""
    return lambda check: Together(id=id, check=check, **about)


def as_set(id: str, **about: Unpack[About]) -> Callable[[Check[SetTogether]], AsSet]:
    """Declare a check of a set put together."""
    return lambda check: AsSet(id=id, check=check, **about)
