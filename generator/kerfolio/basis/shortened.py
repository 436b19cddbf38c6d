"""A long list of findings made readable: of one kind the first few, and how many more there are."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.basis.budgets import SHOWN
from kerfolio.basis.finding import Finding, in_order
from kerfolio.basis.measures import number
from kerfolio.basis.said import said


def shortened(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings in order, at most ``SHOWN`` of a kind and one that counts the rest.

    Of one kind are those of one rule and weight in one part of a plan or, where they are about no
    part, in one file. The one that counts weighs what they weigh, so that errors stay errors, and
    stands where the first of the rest stood.
    """
    kinds: dict[tuple[str, ...], list[Finding]] = {}
    for finding in in_order(findings):
        kinds.setdefault(_kind(finding), []).append(finding)
    return in_order(each for kind in kinds.values() for each in _first(kind))


def _kind(finding: Finding) -> tuple[str, ...]:
    part = finding.subject.partition(".")[0]
    return (finding.rule, finding.severity, finding.silenced, finding.place.file, part)


def _first(kind: list[Finding]) -> list[Finding]:
    rest = kind[SHOWN:]
    if not rest:
        return kind
    count = sum(each.count for each in rest)
    more = replace(
        rest[0],
        words=said("and {} more of this kind", number("more", count)),
        counsel="",
        subject=rest[0].subject.partition(".")[0],
        more=(),
        mark=None,
        count=count,
    )
    return [*kind[:SHOWN], more]
