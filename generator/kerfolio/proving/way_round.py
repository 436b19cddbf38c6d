"""A wrong way round under which all joints agree: known by what goes wrong elsewhere."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from kerfolio.assembly.building import Build, build_of
from kerfolio.assembly.hypotheses import Hypothesis
from kerfolio.assembly.links import links_of, root_of
from kerfolio.assembly.trying import Trial, standing_of, ways_tried
from kerfolio.basis.finding import Finding, Severity, error
from kerfolio.basis.measures import number
from kerfolio.basis.said import said
from kerfolio.proving.going_together import JOINT_FAULTS
from kerfolio.proving.rules import TOGETHER

_MOST = 6
"""So many other ways round are looked at in full."""

_SEVERAL = 2
"""So many errors at least, of different rules or subjects, tell of a cause that is shared."""

_Key = tuple[str, str]
"""The rule of a finding, and what it is about."""


def found_in(build: Build, told: Collection[str] = ()) -> tuple[Finding, ...]:
    """Return what is wrong with a plan put together, but for what is about subjects ``told`` of.

    Where another way round, under which the whole is more usual, mends several errors and leaves
    none, it is the cause: it is told in place of them. A single error rather has one of its own.
    """
    found = _found(build, told)
    errors = _errors(found)
    if (
        len(errors) < _SEVERAL
        or build.drawn.gaps
        or any(rule in JOINT_FAULTS for rule, _ in errors)
    ):
        return found
    cause = _cause(build, told)
    if cause is None:
        return found
    kept = [each for each in found if each.severity is not Severity.ERROR]
    return (_told(cause, len(found) - len(kept)), *kept)


def _cause(build: Build, told: Collection[str]) -> Hypothesis | None:
    """Return the slip without which all errors are gone; None of none."""
    settled = build.settled
    links = links_of(settled)[0]
    now = standing_of(settled, root_of(links), len(links), ())
    if now is None:
        return None
    better = [each for each in ways_tried(settled) if each.standing.unusual < now.unusual]
    better.sort(key=_price)
    for each in better[:_MOST]:
        made = _changed(build, each.hypothesis)
        if made is not None and not _errors(_found(made, told)):
            return each.hypothesis
    return None


def _price(trial: Trial) -> tuple[tuple[int, int], int]:
    return trial.standing.unusual, trial.hypothesis.slip


def _changed(build: Build, hypothesis: Hypothesis) -> Build | None:
    """Return a plan put together without a slip, wherever it was put together with it."""
    drawn = hypothesis.change(build.settled)
    others = (each.settled for each in build.fitted if each.settled is not build.settled)
    return build_of(drawn, [hypothesis.change(each) for each in others])


def _found(build: Build, told: Collection[str]) -> tuple[Finding, ...]:
    every = (found for rule in TOGETHER for found in rule.check(build))
    return tuple(each for each in every if each.subject not in told)


def _errors(found: Iterable[Finding]) -> frozenset[_Key]:
    return frozenset(_key(each) for each in found if each.severity is Severity.ERROR)


def _key(finding: Finding) -> _Key:
    return finding.rule, finding.subject


def _told(hypothesis: Hypothesis, mended: int) -> Finding:
    return error(
        "joint-off",
        hypothesis.words,
        hypothesis.place,
        said("{} {} more errors are gone then.", hypothesis.cure, number("errors", mended)),
        subject=hypothesis.subject,
    )
