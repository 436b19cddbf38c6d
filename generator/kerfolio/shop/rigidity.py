"""How stiff a span is as a whole, and how much stress a moment brings into each member."""

from __future__ import annotations

import math
from dataclasses import dataclass

from kerfolio.model.span import Span
from kerfolio.shop.beam import SHEAR_SHARE, apart, together
from kerfolio.shop.span_place import SpanPlace


@dataclass(frozen=True, slots=True, kw_only=True)
class Rigidity:
    """A span's E I weighted by where it bends (N mm2), its least G A' (N).

    ``stresses`` are each member's greatest stress under a moment of 1 N mm, and its strength.
    """

    bending: float
    shear: float
    stresses: tuple[tuple[float, float | None], ...]

    def worst(self, moment: float) -> tuple[float, float | None]:
        """Return the stress nearest to its strength, and that strength; N/mm2.

        The greatest stress and None where any strength is not known.
        """
        known = [(stress / strong, stress, strong) for stress, strong in self.stresses if strong]
        if len(known) < len(self.stresses):
            return moment * max(stress for stress, _ in self.stresses), None
        _, stress, strength = max(known)
        return moment * stress, strength


def rigidity(span: Span, place: SpanPlace, join: str) -> Rigidity:
    """Return the rigidity of all members, bending as one where ``join`` is ``glued``.

    The sag of a beam of changing section is the sum of M m / (E I) along it (unit-load method);
    the E I returned gives the same sag under the load as stated with ends free to turn.
    """
    combine = together if join == "glued" else apart
    members, stations = place.members, range(len(place.stations))
    sections = [combine(place.layers(station)) for station in stations]
    weights = [_weight(span, (station + 0.5) / len(stations)) for station in stations]
    bent = math.fsum(w / each.bending for w, each in zip(weights, sections, strict=True))
    shear = min(
        math.fsum(each.area(station) * each.fibre.shear for each in members) for station in stations
    )
    worst = [max(each.stresses[index] for each in sections) for index in range(len(members))]
    strengths = [each.fibre.strength for each in members]
    return Rigidity(
        bending=math.fsum(weights) / bent,
        shear=shear * SHEAR_SHARE,
        stresses=tuple(zip(worst, strengths, strict=True)),
    )


def _weight(span: Span, at: float) -> float:
    """Return the load's moment times a unit load's at a share of the span, up to a factor."""
    if span.kind == "overhang":
        unit = 1 - at
        return unit * (unit if span.load.where == "end" else unit**2)
    unit = min(at, 1 - at)
    return unit * (unit if span.load.where == "middle" else at * (1 - at))
