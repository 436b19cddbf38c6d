"""The tabs that hold the ends of a span: what they bear before they shear off or are crushed.

Without glue the whole load passes through them. With R the force at an end, A the section of its
tabs at the root and B the ground they stand on: 1.5 R / A against the shear strength (rectangle,
statics), R / B against the bearing strength.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.shop.beam import RECTANGLE_PEAK, G
from kerfolio.shop.member import Member, TabSet
from kerfolio.shop.span_place import SpanPlace


@dataclass(frozen=True, slots=True, kw_only=True)
class TabResult:
    """The tabs at the weaker end of a member, all alike; ``share`` of the load that they hold.

    ``load_shear`` and ``load_bearing`` are loads of the whole span in kg over the safety factor,
    None where the strength is not known.
    """

    member: str
    count: int
    width: float
    share: float
    load_shear: float | None
    load_bearing: float | None


def tab_results(place: SpanPlace, own: float, safety: float) -> Iterator[TabResult]:
    """Yield what the tabs of each member bear; ``own`` weight kg, the load even or in the middle.

    Members that lie on one another share the load as their stiffnesses in the middle of the span.
    """
    layers = place.layers(len(place.stations) // 2)
    rigid = [each.stiffness * each.inertia for each in layers]
    for member, part in zip(place.members, rigid, strict=True):
        tabs = min(
            (each for each in member.tabs if each), key=lambda each: each.width, default=None
        )
        if tabs is not None:
            yield _result(member, tabs, part / sum(rigid), own, safety)


def _result(member: Member, tabs: TabSet, share: float, own: float, safety: float) -> TabResult:
    section = member.count * tabs.width * member.thickness
    ground = member.count * (tabs.width * tabs.depth)
    if member.on_edge:
        ground = member.count * tabs.count * member.thickness * tabs.depth

    def load(strength: float | None, area: float) -> float | None:
        if strength is None:
            return None
        return max(0.0, 2 * area * strength / safety / share / G - own)

    sheared = member.fibre.shear_strength
    return TabResult(
        member=member.what,
        count=member.count * tabs.count,
        width=tabs.width,
        share=share,
        load_shear=load(sheared, section / RECTANGLE_PEAK),
        load_bearing=load(member.bearing, ground),
    )
