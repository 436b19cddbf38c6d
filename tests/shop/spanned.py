"""A plan with one span, settled and reckoned."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.span import SagResult, SpanResult, span_results
from tests.plans import proved


@dataclass(frozen=True)
class Spanned:
    """A plan's text without spans; each method takes the one span to reckon, as it is written."""

    plan: str

    def settled(self, span: str) -> SettledPlan:
        """Return the plan settled at the thickness it is drawn for."""
        found = proved(f"{self.plan}spans:\n  s: {{{span}}}\n").drawn
        assert found is not None
        return found

    def result(self, span: str) -> SpanResult:
        """Return what the span comes to."""
        (found,) = span_results(self.settled(span))
        return found

    def bent(self, span: str) -> SagResult:
        """Return how a span that is bent sags."""
        found = self.result(span)
        assert isinstance(found, SagResult)
        return found
