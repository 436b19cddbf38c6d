"""Rules about what the plan's spans carry."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.span import span_findings


def spans_lie(settled: SettledPlan) -> Iterator[Finding]:
    """Yield an error for every span that lies on no part or board of the plan."""
    return _of(settled, Severity.ERROR)


def spans_bear(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a warning for every span that is asked to carry more than it is reckoned for."""
    return _of(settled, Severity.WARNING)


def spans_reckoned(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a note for every span without figures."""
    return _of(settled, Severity.NOTE)


def _of(settled: SettledPlan, severity: Severity) -> Iterator[Finding]:
    return (each for each in span_findings(settled) if each.severity is severity)
