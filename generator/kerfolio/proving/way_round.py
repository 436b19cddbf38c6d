"""What is wrong though all joints agree, a way round or a length: known by what it spoils."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from kerfolio.assembly.building import Build, build_of
from kerfolio.assembly.hypotheses import Hypothesis
from kerfolio.assembly.links import links_of, root_of
from kerfolio.assembly.misplaced import misplaced
from kerfolio.assembly.trying import Trial, standing_of, ways_tried
from kerfolio.basis.finding import Finding, Severity, error
from kerfolio.basis.measures import number
from kerfolio.basis.said import said, strung
from kerfolio.proving.going_together import CLASHING, JOINT_FAULTS
from kerfolio.proving.rules import TOGETHER

_MOST = 6
"""So many other ways round are looked at in full."""

_SEVERAL = 2
"""So many errors at least, of different rules or subjects, tell of a cause that is shared."""

_READINGS = 4
"""So many things that may be misplaced are told at most."""

_Key = tuple[str, str]
"""The rule of a finding, and what it is about."""


def found_in(build: Build, told: Collection[str] = ()) -> tuple[Finding, ...]:
    """Return what is wrong with a plan put together, but for what is about subjects ``told`` of.

    Where another way round, under which the whole is more usual, mends several errors and leaves
    none, it is the cause: it is told in place of them. A single error rather has one of its own.
    So it is told what is misplaced where all that is wrong are pieces that are in each other.
    """
    found = _found(build, told)
    errors = _errors(found)
    if not errors or build.drawn.gaps or any(rule in JOINT_FAULTS for rule, _ in errors):
        return found
    causes = tuple(_ways(build, told)) if len(errors) >= _SEVERAL else ()
    causes = causes or tuple(_misplaced(build, told, errors))
    if not causes:
        return found
    kept = [each for each in found if each.severity is not Severity.ERROR]
    return (_told(causes, len(found) - len(kept)), *kept)


def _misplaced(
    build: Build, told: Collection[str], errors: Collection[_Key]
) -> Iterator[Hypothesis]:
    """Yield what may be misplaced where pieces that share no joint are in each other."""
    drawn = next((each for each in build.fitted if each.settled is build.settled), None)
    if drawn is None or any(rule != CLASHING for rule, _ in errors):
        return
    if any(each.joint is None for each in drawn.clashes):
        for each in misplaced(build.settled, drawn.clashes)[:_READINGS]:
            if _mends(build, told, each):
                yield each


def _ways(build: Build, told: Collection[str]) -> Iterator[Hypothesis]:
    """Yield the first other way round under which all errors are gone, if there is one."""
    settled = build.settled
    links = links_of(settled)[0]
    now = standing_of(settled, root_of(links), len(links), ())
    if now is None:
        return
    better = [each for each in ways_tried(settled) if each.standing.unusual < now.unusual]
    better.sort(key=_price)
    for each in better[:_MOST]:
        if _mends(build, told, each.hypothesis):
            yield each.hypothesis
            return


def _mends(build: Build, told: Collection[str], hypothesis: Hypothesis) -> bool:
    made = _changed(build, hypothesis)
    return made is not None and not _errors(_found(made, told))


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


def _told(causes: Sequence[Hypothesis], mended: int) -> Finding:
    first, *rest = causes
    gone = "" if mended < _SEVERAL else said(" {} errors are gone then.", number("errors", mended))
    advice = said("{}{}", first.cure, gone)
    if rest:
        advice = said("{} Or else {}.", advice, strung([each.words for each in rest], ", or "))
    return error("joint-off", first.words, first.place, advice, subject=first.subject)
