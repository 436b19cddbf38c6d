"""Rules about what the plan's spans carry."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity
from kerfolio.proving.rule import OWN_FIGURES, after
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.span import span_findings


@after(
    "span-outside",
    reason="A span lies on a part, with wood all the way from support to support.",
    source=OWN_FIGURES,
    also=("unknown-part", "unknown-board"),
    aside=True,
)
def spans_lie(settled: SettledPlan) -> Iterator[Finding]:
    """Yield an error for every span that lies on no part or board of the plan."""
    return (each for each in span_findings(settled) if each.severity is Severity.ERROR)


@after(
    "span-overloaded",
    reason="What is asked must sag less than the limit, and stay below the strength.",
    source="Wood Handbook FPL-GTR-190, equation 9-2 and Table 9-1; Euler's formula for legs",
    severity=Severity.WARNING,
)
def spans_bear(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a warning for every span that is asked to carry more than it is reckoned for."""
    return _of(settled, "span-overloaded")


@after(
    "span-lifts",
    reason="A slab that only lies on its supports lifts off the far one.",
    source="statics: the moments of load and own weight about the support",
    severity=Severity.WARNING,
)
def spans_stay(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a warning for every lying slab whose far end the load would lift."""
    return _of(settled, "span-lifts")


@after(
    "span-unreckoned",
    reason="Without a stiffness no sag can be told.",
    source="the stock's own figures",
    severity=Severity.NOTE,
)
def spans_reckoned(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a note for every span without figures."""
    return _of(settled, "span-unreckoned")


def _of(settled: SettledPlan, rule: str) -> Iterator[Finding]:
    return (each for each in span_findings(settled) if each.rule == rule)
