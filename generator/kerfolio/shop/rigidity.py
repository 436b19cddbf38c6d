"""How stiff a span is as a whole, and how much stress its moments bring into each member."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from kerfolio.basis.keeper import kept
from kerfolio.shop.beam import SHEAR_SHARE, Loading, built_up, loading
from kerfolio.shop.span_place import SpanPlace


@dataclass(frozen=True, slots=True, kw_only=True)
class Weak:
    """Where a span comes nearest to its strength: which member, at which share of its length.

    ``stress`` N/mm2, ``strength`` None where that of any member is not known.
    """

    member: str
    at: float
    stress: float
    strength: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Rigidity:
    """A span's E I weighted by where it bends (N mm2), its G A' by where it shears (N).

    ``stresses`` are those of each member at each station under a moment of 1 N mm; ``strengths``
    by member. Stations are equal steps; each counts with the moment that is there.
    """

    bending: float
    shear: float
    names: tuple[str, ...]
    stresses: tuple[tuple[float, ...], ...]
    strengths: tuple[float | None, ...]

    def moments(self, case: Loading, moment: float) -> list[float]:
        """Return the greatest moment in each station's step; ``moment`` is W L, N mm."""
        count = len(self.stresses)
        ends = [case.moment_at(index / count) * moment for index in range(count + 1)]
        return [max(each, key=abs) for each in pairwise(ends)]

    def worst(self, moments: Sequence[float]) -> Weak:
        """Return where the stress comes nearest to the strength under moments by station.

        Where any strength is not known: where the stress is greatest.
        """
        known = None not in self.strengths
        weights = [1 / each if known and each else 1.0 for each in self.strengths]
        _, station, member = max(
            (abs(moment) * stress * weight, -station, -index)
            for station, (moment, row) in enumerate(zip(moments, self.stresses, strict=True))
            for index, (stress, weight) in enumerate(zip(row, weights, strict=True))
        )
        station, member = -station, -member
        return Weak(
            member=self.names[member],
            at=(station + 0.5) / len(self.stresses),
            stress=abs(moments[station]) * self.stresses[station][member],
            strength=self.strengths[member] if known else None,
        )

    def load_for_strength(
        self, unit: Sequence[float], rest: Sequence[float], safety: float
    ) -> float | None:
        """Return how many times ``unit`` moments, over ``rest``, reach the strength over a factor.

        None where a strength is not known; 0 where the rest alone does.
        """
        if None in self.strengths:
            return None
        found = math.inf
        for one, own, row in zip(unit, rest, self.stresses, strict=True):
            for stress, strength in zip(row, self.strengths, strict=True):
                if stress and one and strength is not None:
                    found = min(found, (strength / safety / stress - abs(own)) / abs(one))
        return max(0.0, found)


@lru_cache(maxsize=256)  # of a plan that is being written most spans stay as they are
def rigidity(place: SpanPlace, lies: str, glued: tuple[bool, ...], *, hangs_out: bool) -> Rigidity:
    """Return the rigidity of all members; ``glued`` tells which hold to what is over them.

    ``lies`` is where the load is: ``even``, ``middle``, ``end``; what ``hangs_out`` has one end.

    The sag of a beam of changing section is the sum of M m / (E I) + V v / (G A') along it
    (unit-load method); the E I and G A' returned give the same sag under the load as stated with
    ends free to turn.
    """
    return kept(_rigidity, place, lies, glued, hangs_out)


def _rigidity(place: SpanPlace, lies: str, glued: tuple[bool, ...], hangs_out: bool) -> Rigidity:
    members, stations = place.members, range(len(place.stations))
    case = loading(lies, "one" if hangs_out else "free")
    probe = loading("end", "one") if hangs_out else loading("middle", "free")
    shares = [(station + 0.5) / len(stations) for station in stations]
    bent = [case.moment_at(each) * probe.moment_at(each) for each in shares]
    sheared = [case.force_at(each) * probe.force_at(each) for each in shares]
    sections = [built_up(place.layers(station), glued) for station in stations]
    stiff = [each.bending for each in sections]
    shear = [
        SHEAR_SHARE * math.fsum(each.area(station) * each.fibre.shear for each in members)
        for station in stations
    ]
    return Rigidity(
        bending=math.fsum(bent) / math.fsum(w / each for w, each in zip(bent, stiff, strict=True)),
        shear=math.fsum(sheared)
        / math.fsum(w / each for w, each in zip(sheared, shear, strict=True)),
        names=tuple(each.what for each in members),
        stresses=tuple(each.stresses for each in sections),
        strengths=tuple(each.fibre.strength for each in members),
    )
