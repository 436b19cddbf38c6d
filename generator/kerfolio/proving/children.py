"""Checks of openings that fingers and heads go into, for plans that say they are for children.

Nothing here certifies anything: standards look at much that no flat plan knows.
"""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length
from kerfolio.basis.said import named, said
from kerfolio.model.feature import Hole
from kerfolio.proving.marks import about
from kerfolio.proving.rule import after
from kerfolio.settling.settled import SettledPart, SettledPlan

TRAPS = (5.0, 12.0)
"""Widths in mm that hold a finger.

DIN EN 747-1:2015-08 (bunk beds), 4.1.2.1, has no accessible hole or gap of more than 7 mm and less
than 12 mm. The 5 mm are from memory of EN 716 for cots and EN 14988 for high chairs. Look them up:
the tool claims no conformity.
"""

OF_FINGERS = (
    "DIN EN 747-1:2015-08, 4.1.2.1: none of more than 7 and less than 12 mm; from 5 mm on from "
    "memory of EN 716 and EN 14988; look them up. No conformity is claimed"
)

OF_HEADS = (
    "from memory of ASTM F1487 and the CPSC's Public Playground Safety Handbook, 3.5 to "
    "9 in; look them up. No conformity is claimed"
)

HEADS = (89.0, 229.0)
"""Widths in mm that let a child's body through and hold the head.

From memory: 3.5 and 9 in, of ASTM F1487 and the CPSC's handbook for playgrounds; EN 747 and EN 716
have narrower bounds of their own for beds. Look them up: the tool claims no conformity.
"""


@after(
    "head-trap",
    reason="An opening that lets a child's body through and not the head can strangle.",
    source=OF_HEADS,
    severity=Severity.WARNING,
)
def heads_free(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings that stay open and that hold a child's head.

    Gaps between pieces are not looked at, nor what is open to an edge.
    """
    if not settled.plan.for_children:
        return
    least, most = HEADS
    for part in settled.parts:
        for feature in part.features:
            width = min(feature.width.value, feature.length.value)
            open_one = feature.kind.opens and not feature.takes and not feature.kind.on_edge
            if open_one and feature.depth is None and least < width < most:
                name = named(f"{part.name}.{feature.name}")
                wide = length("width", width)
                message = said("{} {} is {} wide: it holds a head", feature.kind.name, name, wide)
                bounds = length("least", least), length("most", most)
                advice = said("Stay below {} or above {}, in both ways.", *bounds)
                what = about(settled, part, feature)
                yield warning("head-trap", message, feature.place, advice, **what)


@after(
    "finger-trap",
    reason="An opening as wide as a child's finger holds it.",
    source=OF_FINGERS,
    severity=Severity.WARNING,
)
def fingers_free(settled: SettledPlan) -> Iterator[Finding]:
    """Look for openings that stay open and are as wide as a child's finger.

    Slots that take a sheet, and holes that hardware fills, count as filled. Gaps between pieces
    are not looked at.
    """
    if not settled.plan.for_children:
        return
    least, most = TRAPS
    for part in settled.parts:
        filled = _filled(settled, part)
        for feature in part.features:
            open_one = feature.kind.opens and not feature.takes
            width = min(feature.width.value, feature.length.value)
            if open_one and feature.name.partition(".")[0] not in filled and least <= width <= most:
                name = named(f"{part.name}.{feature.name}")
                wide = length("width", width)
                message = said("{} {} is {} wide: a finger's width", feature.kind.name, name, wide)
                bounds = length("least", least), length("most", most)
                advice = said("Stay below {} or above {}.", *bounds)
                what = about(settled, part, feature)
                yield warning("finger-trap", message, feature.place, advice, **what)


def _filled(settled: SettledPlan, part: SettledPart) -> set[str]:
    stated = settled.plan.part(part.name)
    return {
        each.name
        for each in stated.features
        if isinstance(each.cutting, Hole) and (each.cutting.for_ or each.cutting.pilot)
    }
