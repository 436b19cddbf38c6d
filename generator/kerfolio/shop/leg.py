"""What a leg carries before it buckles or is crushed: estimates, never a rating."""

from __future__ import annotations

import math
from dataclasses import dataclass

from kerfolio.basis.measures import length, number
from kerfolio.basis.said import Text, phrase
from kerfolio.geometry.cross_section import Strip, squared
from kerfolio.model.span import Span
from kerfolio.shop.assumption import Assumption, named_fact
from kerfolio.shop.beam import G, buckling_load, rectangle_inertia
from kerfolio.shop.fibre import CRUSHING_SHARE
from kerfolio.shop.member import Member
from kerfolio.shop.span_place import SpanPlace, load_kg

HELD = 1.0
SWAYING = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LegResult:
    """A leg pressed lengthwise; ``length`` mm, loads kg over the safety factor.

    ``load_held``: both ends turn and neither moves sideways (K = 1). ``load_swaying``: the upper
    end is free to sway (K = 2), as in a frame that nothing braces. ``load_crushing``: compression
    alone, None without a strength. All for the narrowest section along its whole length.
    """

    name: str
    carrier: str
    length: float
    load: float
    area: float
    load_held: float
    load_swaying: float
    load_crushing: float | None
    safety: float
    assumptions: tuple[Assumption, ...]

    @property
    def greatest_load(self) -> float:
        """The least of the loads, kg: an estimate, never a rating."""
        crushing = self.load_crushing
        return self.load_swaying if crushing is None else min(self.load_swaying, crushing)


def leg_result(span: Span, place: SpanPlace) -> LegResult:
    """Return what a span of kind ``leg`` carries."""
    (member,) = place.members
    fibre, safety = member.fibre, span.safety
    sections = squared(member.sections, place.stations)
    inertia = min(map(_least_inertia, sections))
    area = min(map(_area, sections))
    held, swaying = (
        buckling_load(fibre.stiffness, inertia, place.length, k) / G / safety
        for k in (HELD, SWAYING)
    )
    crushing = None
    if fibre.strength is not None:
        crushing = area * fibre.strength * CRUSHING_SHARE / G / safety
    return LegResult(
        name=span.name,
        carrier=place.carrier,
        length=place.length,
        load=load_kg(span, place.length),
        area=area,
        load_held=held,
        load_swaying=swaying,
        load_crushing=crushing,
        safety=safety,
        assumptions=_assumptions(member, area, safety),
    )


def _area(strips: tuple[Strip, ...]) -> float:
    return math.fsum(each.width * each.thickness for each in strips)


def _least_inertia(strips: tuple[Strip, ...]) -> float:
    """Return the lesser inertia of a section; feet side by side each bend by themselves."""
    flat = math.fsum(rectangle_inertia(each.width, each.thickness) for each in strips)
    edge = math.fsum(rectangle_inertia(each.thickness, each.width) for each in strips)
    return min(flat, edge)


def _assumptions(member: Member, area: float, safety: float) -> tuple[Assumption, ...]:
    facts: tuple[tuple[str, Text, Text], ...] = (
        (
            "section",
            phrase("grounds-section-narrowest", area=length("narrowest", area / member.thickness)),
            phrase("grounds-part-as-cut"),
        ),
        ("buckling", phrase("grounds-buckling-is"), phrase("grounds-euler")),
        (
            "compression",
            phrase("grounds-compression-is", share=number("share", CRUSHING_SHARE)),
            phrase("grounds-compression-source"),
        ),
        ("load", phrase("grounds-load-is"), phrase("grounds-simplification")),
        (
            "safety",
            phrase("grounds-safety-buckling", factor=number("safety", safety)),
            phrase("grounds-safety-stated"),
        ),
    )
    return (
        *member.fibre.assumptions,
        *map(named_fact, facts),
    )
