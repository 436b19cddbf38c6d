"""Checks of screws through one part into another, where a face joint lays them on each other."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.bores import Screwed, bores_of, lapped, screwed, unfastened
from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length
from kerfolio.basis.said import named, phrase, said
from kerfolio.geometry.near import line_distance
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after
from kerfolio.settling.settled import SettledPlan

BEFORE_FACE = 1.0
"""A screw's point stays this far, mm, under the far face (common practice, no single source)."""

FROM_EDGE = 2.0
"""Screw diameters from a pilot hole's middle to an edge (common practice, no single source)."""


@after(
    "screw-pokes-through",
    reason="A screw's point stays in the wood.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def screws_stay_in(settled: SettledPlan) -> Iterator[Finding]:
    """Look for screws through two parts that come out, or all but, at the far face."""
    for screw in _loose(settled):
        left = screw.pilot.part.thickness - screw.bite
        if left < BEFORE_FACE:
            names = {"item": screw.pilot.item.name, "part": screw.pilot.part.name}
            message = phrase("minded-pokes-through", **names)
            stack = length("stack", screw.grip + screw.pilot.part.thickness)
            template = "Head to far face is {}: take a shorter screw, or sink it less."
            what = about(settled, screw.pilot.part, screw.pilot.feature)
            advice = said(template, stack)
            yield warning("screw-pokes-through", message, screw.place, advice, **what)


@after(
    "screw-too-short",
    reason="A screw holds by the thread that is in the second part.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def screws_bite(settled: SettledPlan) -> Iterator[Finding]:
    """Look for screws that reach less than half way into the part they hold."""
    for screw in _loose(settled):
        if screw.bite < screw.pilot.part.thickness / 2:
            pilot, bite = screw.pilot, length("bite", max(0.0, screw.bite))
            names = {"item": pilot.item.name, "part": pilot.part.name}
            message = phrase("minded-bites", bite=bite, **names)
            half = length("least", pilot.part.thickness / 2)
            template = "Take a longer screw or sink its head: half the sheet, {}, at least."
            what = about(settled, pilot.part, pilot.feature)
            advice = said(template, half)
            yield warning("screw-too-short", message, screw.place, advice, **what)


def _loose(settled: SettledPlan) -> Iterator[Screwed]:
    """Yield the screws of face joints that no fastening states."""
    for each in screwed(settled):
        if unfastened(settled, each.pilot.part, each.pilot.feature):
            yield each


@after(
    "pilot-missing",
    reason="A screw without a pilot hole splits plies and strips board.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def pilots_bored(settled: SettledPlan) -> Iterator[Finding]:
    """Look for screws through one part whose hole in the other is no pilot hole."""
    for lap in lapped(settled):
        for index, bore in enumerate((lap.one, lap.other)):
            facing = (lap.one, lap.other)[1 - index]
            screw = bore and bore.item.kind == "screw" and not bore.is_pilot
            placed = bore and not unfastened(settled, bore.part, bore.feature)
            if bore and screw and not placed and not (facing and facing.is_pilot):
                part, hole = lap.parts[1 - index], lap.features[1 - index]
                message = said("{} is no pilot hole", named(f"{part.name}.{hole.name}"))
                advice = f"Write `pilot: {bore.item.name}`, so that the screw does not split it."
                what = about(settled, part, hole)
                yield warning("pilot-missing", message, hole.place, advice, **what)


@after(
    "screw-near-edge",
    reason="A screw near an edge splits it.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def pilots_inside(settled: SettledPlan) -> Iterator[Finding]:
    """Look for pilot holes so close to an edge that the screw splits it."""
    for part in settled.parts:
        for bore in bores_of(settled, part):
            if not bore.is_pilot or not bore.item.thread:
                continue
            away = line_distance(bore.feature.at, part.plain.outer)
            least = FROM_EDGE * bore.item.thread
            if away < least:
                near = length("distance", away)
                message = said("screw {} is {} from the edge", bore.called, near)
                advice = said("Keep {}, two diameters of the screw.", length("least", least))
                what = about(settled, part, bore.feature)
                yield warning("screw-near-edge", message, bore.feature.place, advice, **what)
