"""Checks of whole things for plans that say they are for children: edges, parts, tipping, finish.

Nothing here certifies anything: what is not told of is not thereby safe. All figures of standards
are from memory, to be looked up in them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from kerfolio.assembly.building import Build
from kerfolio.assembly.stability import Stability, tippings
from kerfolio.basis.finding import Finding, Meeting, Severity, note, warning
from kerfolio.basis.measures import angle, length, mass, size
from kerfolio.basis.said import said
from kerfolio.basis.words import listed
from kerfolio.model.edge_treatment import BAND, EASE, ROUND_OVER
from kerfolio.model.use import WALL, is_seat
from kerfolio.proving.readers import cautioned
from kerfolio.proving.rule import Stated, after, before, together
from kerfolio.settling.settled import SettledPart, SettledPlan

CYLINDER, DEPTH = 31.7, 57.1
"""Across and along, mm, of the cylinder that a small part fits into whole (16 CFR 1501.4 and EN
71-1, from memory). Its bottom slants from 25.4 mm; the deeper side is taken."""

SLOPE = 10.0
"""Degrees of the slope on which what bears a child must stand (EN 71-1, ASTM F963, from memory)."""

CHILD, ABOVE = 50.0, 150.0
"""The child on a seat, kg, and how high above it the middle of that mass lies, mm (EN 71-1, from
memory)."""

_SOFT = (EASE, ROUND_OVER, BAND)
_SHOWN = 3
_FIT_FINISH = ("en 71", "astm f963", "16 cfr 1303")


@after(
    "child-edges-sharp",
    reason="Edges as they are cut are sharp, and splinter.",
    source="from memory of EN 71-1 and 16 CFR 1500.49, on sharp edges; look them up. No conformity "
    "is claimed",
    severity=Severity.WARNING,
)
def edges_softened(settled: SettledPlan) -> Iterator[Finding]:
    """Look for parts none of whose edges is eased, rounded over, banded or sanded in a step."""
    if not settled.plan.for_children:
        return
    sanded = {
        name.partition(".")[0]
        for step in settled.plan.steps
        if step.sands
        for name in (each.name for each in step.sands.of)
    }
    sharp = [each.name for each in settled.parts if not _is_soft(each, sanded)]
    if sharp:
        names = [f"`{each}`" for each in sharp[:_SHOWN]]
        more = len(sharp) - len(names)
        which = listed([*names, f"{more} more"] if more else names)
        message = f"the edges of {which} stay as they are cut"
        advice = (
            "Write `edges: {all: {round-over: 3}}` into each part, or `ease`; what is in a joint "
            "stays square."
        )
        place = next(each for each in settled.parts if each.name == sharp[0]).place
        yield warning("child-edges-sharp", message, place, advice, subject=sharp[0])


def _is_soft(part: SettledPart, sanded: set[str]) -> bool:
    named = {part.name, *(each.label.partition(".")[0] for each in part.pieces)}
    return bool(named & sanded) or any(each.kind in _SOFT for each in part.edges)


@after(
    "child-small-part",
    reason="What goes whole into a small child's mouth can choke it.",
    source="from memory of 16 CFR 1501.4 and EN 71-1, a cylinder of 31.7 mm by 25.4 to 57.1 mm; "
    "look them up. No conformity is claimed",
    severity=Severity.WARNING,
)
def parts_too_large_to_swallow(settled: SettledPlan) -> Iterator[Finding]:
    """Look for parts that fit whole into the cylinder of small parts; hardware is not looked at."""
    for part in settled.parts if settled.plan.for_children else ():
        short, middle, long = sorted((*part.size, part.thickness))
        if long <= DEPTH and math.hypot(short, middle) <= CYLINDER:
            sides = size(part.size)
            message = said("part `{}`, {}, fits into the cylinder of small parts", part.name, sides)
            cylinder = length("across", CYLINDER), length("deep", DEPTH)
            template = (
                "It is {} wide and {} deep: make the part larger, or one with another. Under "
                "three years none such may come loose."
            )
            advice = said(template, *cylinder)
            yield warning("child-small-part", message, part.place, advice, subject=part.name)


@together(
    "child-tips",
    reason="Children climb, lean and rock: what tips early falls on them.",
    source="statics of a rigid body; from memory of EN 71-1 and ASTM F963: a slope of 10 degrees, "
    "a child of 50 kg with its middle 150 mm above the seat; look them up. No conformity is "
    "claimed",
    severity=Severity.WARNING,
)
def steady_under_children(build: Build) -> Iterator[Finding]:
    """Look for what tips on the slope that toys stand on, empty or, a seat, with a child on it."""
    plan, whole = build.settled.plan, build.stability
    if not plan.for_children or plan.placed == WALL or plan.is_set:
        return
    cases = [("empty", whole), *([("with a child on it", _sat_on(whole))] if is_seat(plan) else [])]
    for how, each in cases:
        least = min((tipping.angle for tipping in tippings(each)), default=SLOPE)
        if least < SLOPE:
            message = said("{} it tips when it leans by {}", how, angle("least", least))
            template = "Widen its feet or lower it until it stands a slope of {}{}, or fix it."
            child = said(" under {}", mass("child", CHILD)) if each is not whole else ""
            advice = said(template, angle("slope", SLOPE), child)
            pieces = tuple(each.label for each in build.drawn.assembled.pieces)
            meeting = Meeting(pieces=pieces, grounded=True, variant=build.settled.variant.label)
            yield warning("child-tips", message, plan.place, advice, meeting=meeting)
            return


def _sat_on(whole: Stability) -> Stability:
    """Return a thing with a child in the middle of its seat."""
    total = whole.mass + CHILD
    xs, ys = zip(*whole.crown, strict=True)
    child = (
        (min(xs) + max(xs)) / 2,
        (min(ys) + max(ys)) / 2,
        whole.crown_height + ABOVE,
    )
    x, y, z = (
        (whole.mass * own + CHILD * added) / total
        for own, added in zip(whole.centre, child, strict=True)
    )
    return replace(whole, mass=total, centre=(x, y, z))


@before(
    "child-finish",
    reason="Children suck and bite what they are given.",
    source="from memory of EN 71-3 on what a coat gives off and 16 CFR 1303 on lead in paint; look "
    "them up. No conformity is claimed",
    severity=Severity.NOTE,
)
def finish_fit(stated: Stated) -> Iterator[Finding]:
    """Look for plans that say nothing of a finish, or nothing of whether theirs suits children."""
    plan = stated.plan
    if plan.for_children and not cautioned(plan, _FIT_FINISH):
        named = plan.finish
        message = "made for children, and nothing is said of a finish"
        if named is not None:
            message = f"nothing says that `{named.of}` suits what children suck and bite"
        advice = (
            "Take one whose maker declares EN 71-3 or ASTM F963, and say so under `cautions`, such "
            "as `Finish with an oil declared to EN 71-3, and let it cure.`"
        )
        yield note("child-finish", message, named.place if named else plan.place, advice)
