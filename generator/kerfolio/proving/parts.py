"""Checks of whole parts: how they are held while they are cut, and how their grain runs."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, note, warning
from kerfolio.basis.measures import size
from kerfolio.basis.said import said
from kerfolio.proving.marks import about_spots
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.bridges import parts_to_hold
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.shop.cut_setting import REST

SMALL = 10_000.0
"""mm2, the size of a palm: a smaller part is thrown when it comes free (common practice)."""

LONG = 3.0
LONG_FROM = 200.0
"""A part this many times as long as wide, and this long in mm, counts as a strip."""


@after(
    "small-part-loose",
    reason="A small part that comes free is thrown by the cutter.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def small_parts_held(settled: SettledPlan) -> Iterator[Finding]:
    """Look for small parts whose sheet is cut through, and for which no bridges are asked."""
    loose = {cut.sheet.name: cut for cut in settled.plan.cuts if REST in cut.passes}
    asked = parts_to_hold(settled.plan)
    for part in settled.parts:
        cut = loose.get(part.sheet)
        if part.area < SMALL and cut is not None and part.name not in asked:
            sides, name = size(part.size), part.name
            message = said("part `{}` is small, {}, and nothing holds it", name, sides)
            advice = f"Write `bridges: 2` in `{cut.name}`, or hold it with tape or a vacuum."
            yield warning("small-part-loose", message, part.place, advice, subject=name)


@after(
    "no-bridge-place",
    reason="A bridge leaves a stump, which neither a curve nor a wall that mates can bear.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def bridges_placed(settled: SettledPlan) -> Iterator[Finding]:
    """Look for parts that are to have bridges, and on which none can stand."""
    asked = parts_to_hold(settled.plan)
    for part in settled.parts:
        if part.name in asked and not part.is_held:
            message = f"no bridge can stand on part `{part.name}`"
            advice = (
                "It is too small, or no straight edge is free: hold it with double-sided tape, or "
                "leave a thin skin and cut it free by hand."
            )
            yield note("no-bridge-place", message, part.place, advice, subject=part.name)


@after(
    "grain-across-length",
    reason="Wood bends and breaks across its grain first; so does plywood, less so.",
    source="Wood Handbook FPL-GTR-190, chapter 5, on strength along and across the grain; the "
    "ratio of 3 is common practice",
    severity=Severity.WARNING,
)
def grain_along(settled: SettledPlan) -> Iterator[Finding]:
    """Look for strips whose grain runs across their length.

    Only the drawn shape is known here, not what the part carries: a strip that bears nothing may
    have its grain as it looks best.
    """
    for part in settled.parts:
        width, height = part.size
        long, short = max(part.size), min(part.size)
        across = part.grain == ("along y" if width > height else "along x")
        strip = long >= LONG * short and long >= LONG_FROM
        if across and strip and settled.sheet(part.sheet).stock.grain:
            message = f"the grain of `{part.name}` runs across its length"
            along = "along x" if width > height else "along y"
            advice = f"Write `grain: {along}`: a strip bends and breaks across the grain."
            what = about_spots(settled, part, [_middle(part)], short / 2)
            yield warning("grain-across-length", message, part.place, advice, **what)


def _middle(part: SettledPart) -> tuple[float, float]:
    xs = [x for x, _, _ in part.routed.outer.vertices]
    ys = [y for _, y, _ in part.routed.outer.vertices]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
