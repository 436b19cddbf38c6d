"""Checks of bolts: through the part under their head, two lapped parts, and into barrel nuts.

A bolt that draws a tabbed part on to a slotted one goes through the latter between its slots; its
nut lies behind the tabs. Washers are not counted.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from math import dist

from kerfolio.assembly.bores import Bore, bores_of, lapped, unfastened
from kerfolio.assembly.ends import End, end_of, pieces_of
from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import length
from kerfolio.basis.place import Place
from kerfolio.basis.said import phrase, said
from kerfolio.geometry.contour import Point
from kerfolio.model.feature_kind import SLOT
from kerfolio.model.joint_kind import TAB_JOINT
from kerfolio.proving.marks import about
from kerfolio.proving.rule import COMMON_PRACTICE, OWN_FIGURES, after
from kerfolio.settling.settled import SettledPlan

NUT_HEIGHT = 0.8
"""Of a hexagon nut in thread diameters (about that of ISO 4032; from memory)."""

SPARE = 15.0
"""A bolt may stand this far, mm, out of its nut (common practice, no single source)."""

BESIDE = 1.0
"""A bolt's middle may lie this far, mm, beside that of its nut: its hole has play."""

_AWAY = 60.0
"""A bolt within so many mm of a joint's slots, in their line, is taken to belong to it."""


@after(
    "bolt-too-short",
    reason="A bolt comes out of the part it holds.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def bolts_leave(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bolts that end inside the very part their head lies on."""
    for part in settled.parts:
        for bore in bores_of(settled, part):
            if not unfastened(settled, part, bore.feature):
                continue
            long = bore.item.length
            if bore.item.kind == "bolt" and long and long <= bore.grip:
                message = said("`{}` ends inside {}", bore.item.name, bore.called)
                through = length("through", bore.grip)
                advice = said("It goes through {} of wood: take a longer bolt.", through)
                what = about(settled, part, bore.feature)
                yield warning("bolt-too-short", message, bore.feature.place, advice, **what)


@after(
    "bolt-shorter-than-stack",
    reason="A bolt goes through all it holds, and its nut.",
    source="height of a hexagon nut about that of ISO 4032, from memory",
    severity=Severity.WARNING,
)
def bolts_span(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bolts through two parts too short to take a nut behind them."""
    for bore, stack, place in _bolted(settled):
        needed = stack + NUT_HEIGHT * (bore.item.thread or 0.0)
        if (bore.item.length or 0.0) < needed:
            message = phrase("minded-bolt-short", item=bore.item.name)
            wood, wanted = length("stack", stack), length("needed", needed)
            advice = said("{} of wood and a nut want {}.", wood, wanted)
            what = about(settled, bore.part, bore.feature)
            yield warning("bolt-shorter-than-stack", message, place, advice, **what)


@after(
    "bolt-longer-than-stack",
    reason="A bolt that stands out catches.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def bolts_end(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bolts that stand far out of the two parts they go through."""
    for bore, stack, place in _bolted(settled):
        most = stack + NUT_HEIGHT * (bore.item.thread or 0.0) + SPARE
        if (bore.item.length or 0.0) > most:
            out = length("out", (bore.item.length or 0.0) - stack)
            message = said("`{}` stands {} out of its two parts", bore.item.name, out)
            advice = "Take a shorter bolt, unless something else is held by it too."
            what = about(settled, bore.part, bore.feature)
            yield note("bolt-longer-than-stack", message, place, advice, **what)


def _bolted(settled: SettledPlan) -> Iterator[tuple[Bore, float, Place]]:
    """Yield bolts that pass clearance holes of both parts of a face joint, with the wood in mm."""
    for lap in lapped(settled):
        one, other = lap.one, lap.other
        alike = one and other and one.item == other.item and one.item.kind == "bolt"
        if one and other and alike and unfastened(settled, one.part, one.feature):
            yield one, one.grip + other.grip, lap.place


@dataclass(frozen=True, slots=True, kw_only=True)
class _Drawn:
    """A bolt that draws a tabbed part on to a slotted one by a barrel nut.

    ``aside`` is how far the nut's middle lies beside the bolt's line; ``deep`` how far behind the
    tabs' root.
    """

    bolt: Bore
    nut: Bore
    aside: float
    deep: float
    place: Place


@after(
    "bolt-beside-nut",
    reason="A bolt meets its nut only where both are in one line.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def nuts_in_line(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bolts that miss their barrel nut.

    The bolt's place between the slots is compared with the nut's between the tabs; a piece may
    lie either way round, so the distances count, not the side.
    """
    for each in _drawn(settled):
        if each.aside > BESIDE:
            aside = length("aside", each.aside)
            message = said("the bolt of {} misses its nut by {}", each.bolt.called, aside)
            advice = said("Bring {} into line with it, measured from the tabs.", each.nut.called)
            what = about(settled, each.nut.part, each.nut.feature)
            yield warning("bolt-beside-nut", message, each.place, advice, **what)


@after(
    "bolt-before-nut",
    reason="A bolt holds by the thread that is in its nut.",
    source=OWN_FIGURES,
    severity=Severity.WARNING,
)
def nuts_reached(settled: SettledPlan) -> Iterator[Finding]:
    """Look for bolts that end before the middle of their barrel nut."""
    for each in _drawn(settled):
        reach = (each.bolt.item.length or 0.0) - each.bolt.grip
        short = each.deep - reach
        if each.aside <= BESIDE and short > 0:
            name = each.bolt.item.name
            missing = length("short", short)
            message = said("`{}` ends {} before the middle of its nut", name, missing)
            fill = each.bolt.grip + each.deep + each.nut.feature.width.value / 2
            template = "{} would fill the nut of {}, besides a washer."
            advice = said(template, length("needed", fill), each.nut.called)
            what = about(settled, each.nut.part, each.nut.feature)
            yield warning("bolt-before-nut", message, each.place, advice, **what)


def _drawn(settled: SettledPlan) -> Iterator[_Drawn]:
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        a, b = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if joint.kind is not TAB_JOINT or not (a and b and a.features and b.features):
            continue
        nuts = [(each, *_behind(each, a)) for each in bores_of(settled, a.part) if _is_nut(each)]
        bolts = [
            (each, _along(each, b))
            for each in bores_of(settled, b.part)
            if unfastened(settled, b.part, each.feature)
        ]
        for bolt, along in bolts:
            if bolt.item.kind != "bolt" or along is None or not nuts:
                continue
            asides = [(abs(abs(offset) - abs(along)), deep, nut) for nut, offset, deep in nuts]
            aside, deep, nut = min(asides, key=lambda each: each[:2])
            if aside < _AWAY and deep < (bolt.item.length or 0.0) + _AWAY:
                yield _Drawn(bolt=bolt, nut=nut, aside=aside, deep=deep, place=joint.place)


def _is_nut(bore: Bore) -> bool:
    return bore.item.kind == "barrel-nut"


def _behind(nut: Bore, tabs: End) -> tuple[float, float]:
    """Return how far a nut lies along the edge from the tabs' middle, and how far behind it."""
    middle, outward = _middle(tabs), tabs.features[0].direction
    dx, dy = nut.feature.at[0] - middle[0], nut.feature.at[1] - middle[1]
    return dx * outward[1] - dy * outward[0], -(dx * outward[0] + dy * outward[1])


def _along(bolt: Bore, slots: End) -> float | None:
    """Return how far a bolt lies along the slots from their middle; None when beside their line."""
    first = slots.features[0]
    if first.kind is not SLOT:
        return None
    middle, along = _middle(slots), _line(slots)
    dx, dy = bolt.feature.at[0] - middle[0], bolt.feature.at[1] - middle[1]
    off = abs(dx * along[1] - dy * along[0])
    ends = max(dist(each.at, middle) + each.length.value / 2 for each in slots.features)
    offset = dx * along[0] + dy * along[1]
    return offset if off < first.width.value / 2 and abs(offset) < ends + _AWAY / 2 else None


def _line(slots: End) -> Point:
    """Return the way the row of slots runs: from its first to its last, else along the only one."""
    first, last = slots.features[0], slots.features[-1]
    size = dist(first.at, last.at)
    if size < 1.0:
        return first.direction
    return (last.at[0] - first.at[0]) / size, (last.at[1] - first.at[1]) / size


def _middle(end: End) -> Point:
    count = len(end.features)
    return (
        math.fsum(each.at[0] for each in end.features) / count,
        math.fsum(each.at[1] for each in end.features) / count,
    )
