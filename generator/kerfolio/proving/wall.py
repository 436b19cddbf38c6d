"""Checks of what is fixed to a wall: do its holes meet the studs in it?"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from kerfolio.assembly.building import Build
from kerfolio.assembly.wall_holes import (
    INCH_STUDS,
    METRIC_STUDS,
    FixingHole,
    fixing_holes,
    studs_met,
)
from kerfolio.basis.finding import Finding, Severity, note
from kerfolio.basis.measures import length
from kerfolio.basis.said import Words, enumerated, said
from kerfolio.model.use import WALL
from kerfolio.proving.rule import COMMON_PRACTICE, together

_MOST = 3
_APART = 0.5  # mm: holes over one another are at one place


@together(
    "holes-miss-studs",
    reason="A screw beside a stud holds in plaster alone.",
    source=f"{COMMON_PRACTICE}; 16 and 24 in: International Residential Code, table R602.3(5)",
    severity=Severity.NOTE,
)
def holes_meet_studs(build: Build) -> Iterator[Finding]:
    """Look for fixing holes of what hangs on a wall that meet no two studs as commonly spaced."""
    plan = build.settled.plan
    holes = fixing_holes(build.settled, build.drawn.assembled) if plan.placed == WALL else ()
    gaps = _gaps(holes)
    if not gaps or studs_met(holes):
        return
    first = holes[0]
    apart = enumerated([said("{}", length("apart", each)) for each in gaps[:_MOST]])
    message = said("holes for the wall are {} apart, and no two meet studs", apart)
    advice = said(
        "Studs stand {} apart by common practice, and {} by a building code: bore two that far "
        "apart, or fix a batten across the studs.",
        _listed(METRIC_STUDS),
        _listed(INCH_STUDS),
    )
    subject = f"{first.piece}.{first.feature}"
    yield note("holes-miss-studs", message, plan.place, advice, subject=subject)


def _gaps(holes: tuple[FixingHole, ...]) -> list[float]:
    """Return how far holes beside each other are apart, each distance once."""
    places = [holes[0].across] if holes else []
    for each in holes:
        if each.across - places[-1] > _APART:
            places.append(each.across)
    gaps = [b - a for a, b in pairwise(places)]
    return [gap for i, gap in enumerate(gaps) if all(abs(gap - g) > _APART for g in gaps[:i])]


def _listed(spacings: tuple[float, ...]) -> Words:
    return enumerated([said("{}", length("stud", each)) for each in spacings])
