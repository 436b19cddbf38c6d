"""Check that screws which something hangs on bear the load that the plan states."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator

from kerfolio.assembly.building import Build, Fitted
from kerfolio.assembly.hanging import Hanging, hanging_pieces
from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import mass
from kerfolio.basis.said import said
from kerfolio.model.span import Span
from kerfolio.proving.in_place import over_range
from kerfolio.proving.rule import together
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.beam import G
from kerfolio.shop.pilots import pull_of


@together(
    "screws-overpulled",
    reason="A screw that something hangs on is drawn out of the wood.",
    source="NDS for wood screws, side grain: 2850 G2 D a unit of length; the load shared evenly",
    severity=Severity.WARNING,
)
def screws_bear(build: Build) -> Iterator[Finding]:
    """Look for pieces that hang on screws alone and are to carry more than these are allowed."""

    def look(fitted: Fitted, off: Collection[str]) -> Iterator[Finding]:
        for each in hanging_pieces(fitted.together.assembled, fitted.fastenings):
            span = _load_on(each.piece.part, fitted.settled)
            if span is not None and each.piece.label not in off:
                yield from _overpulled(each, span, fitted.settled)

    return over_range(build, look) if build.settled.plan.spans else iter(())


def _load_on(part: str, settled: SettledPlan) -> Span | None:
    """Return the span that states the greatest load on a part, kg in all."""
    stated = [
        each
        for each in settled.plan.spans
        if each.part is not None and each.part.name == part and not each.load.per_metre
    ]
    return max(stated, key=lambda each: each.load.kg, default=None)


def _overpulled(each: Hanging, span: Span, settled: SettledPlan) -> Iterator[Finding]:
    bears: list[float] = []
    for screw in each.screws:
        seat, thread = screw.settled.last, screw.settled.item.thread
        if seat.part is None or thread is None or not screw.entries:
            return
        bite = max(0.0, screw.tip - screw.entries[-1].along)
        stock = settled.sheet(seat.part.sheet).stock
        pull = pull_of(stock, thread, bite, edge=seat.into_edge)
        if pull.allowed is None:
            return  # that nobody knows it is told by itself
        bears.append(pull.allowed)
    allowed = len(bears) * min(bears) / G
    asked = span.load.kg + each.piece.mass
    if asked > allowed and not math.isclose(asked, allowed):
        figures = mass("asked", asked), mass("allowed", allowed)
        message = said(
            "`{}` hangs on " + str(len(bears)) + " screws with {}, which bear {}",
            *(each.piece.label, *figures),
        )
        advice = "Take more or longer screws, or let something stand under it or go through."
        subject = each.screws[0].settled.first.name
        yield warning("screws-overpulled", message, span.place, advice, subject=subject)
