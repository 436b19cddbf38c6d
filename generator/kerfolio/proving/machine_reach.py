"""Checks of cut settings against what the workshop's machine can do."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import feed, length, number
from kerfolio.basis.said import said
from kerfolio.basis.tolerance import SAME
from kerfolio.model.router import USUAL_SPEED
from kerfolio.proving.cut_runs import runs
from kerfolio.proving.rule import OWN_FIGURES, Stated, after, before
from kerfolio.settling.settled import SettledPlan


@before(
    "speed-out-of-reach",
    reason="A spindle turns no slower and no faster than it can.",
    source="the workshop's own figures; without them what routers turn at, common practice",
    severity=Severity.WARNING,
)
def spindle_turns(stated: Stated) -> Iterator[Finding]:
    """Look for speeds beyond the workshop's spindle, or any router's where none is stated."""
    own = stated.plan.machine.speed
    least, most = own or USUAL_SPEED
    for cut in stated.plan.cuts:
        speed = cut.speed_rpm
        if speed and not stated.plan.machine.turns(speed):
            message = said("`{}` turns at {} rpm", cut.name, number("speed", speed))
            ends = number("least", least), number("most", most)
            advice = said("The workshop’s spindle does {} to {} rpm: stay within them.", *ends)
            if own is None:
                advice = said(
                    "Routers do {} to {} rpm; if yours does this, write "
                    "`machine: {speed: 8000 to 24000 rpm}` with its own into `workshop.yaml`.",
                    *ends,
                )
            subject = cut.name
            yield warning("speed-out-of-reach", message, cut.place, advice, subject=subject)


@before(
    "feed-out-of-reach",
    reason="A machine that cannot follow feeds slower: the chip thins, rubs and burns.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def machine_follows(stated: Stated) -> Iterator[Finding]:
    """Look for feeds that the workshop's machine does not reach."""
    machine = stated.plan.machine
    for cut in stated.plan.cuts:
        if machine.feed and cut.feed_mm_per_min and not machine.feeds(cut.feed_mm_per_min):
            message = said("`{}` feeds {}", cut.name, feed("feed", cut.feed_mm_per_min))
            advice = said(
                "The workshop’s machine feeds {} at most. For the same chip feed that, with fewer "
                "flutes or a lower speed.",
                feed("most", machine.feed),
            )
            subject = cut.name
            yield warning("feed-out-of-reach", message, cut.place, advice, subject=subject)


@after(
    "pass-over-machine",
    reason="A pass deeper than a machine can hold deflects, chatters and loses steps.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def machine_holds(settled: SettledPlan) -> Iterator[Finding]:
    """Look for passes deeper than the workshop's machine cuts at once."""
    most = settled.plan.machine.deepest
    for run in runs(settled) if most else ():
        if most and run.deepest_pass > most + SAME:
            name, deep = run.cut.name, length("pass", run.deepest_pass)
            message = said("`{}` takes {} at once", name, deep)
            advice = said(
                "The workshop’s machine takes {} in a pass: put a pass between.",
                length("most", most),
            )
            yield warning("pass-over-machine", message, run.cut.place, advice, subject=name)
