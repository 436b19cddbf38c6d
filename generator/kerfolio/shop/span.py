"""What the plan's spans carry: sag and stress of shelves, rails and overhangs, or a leg's limits.

Everything here is an estimate from stated values and never a rating.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from kerfolio.basis.figures import figure
from kerfolio.basis.finding import Finding, note, warning
from kerfolio.basis.measures import mass
from kerfolio.basis.said import said
from kerfolio.model.span import Span
from kerfolio.settling.scope import FOLLOWS, SettlingError
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.assumption import COMMON_PRACTICE, Assumption
from kerfolio.shop.beam import G, loading, long_term, sag
from kerfolio.shop.leg import LegResult, leg_result
from kerfolio.shop.rigidity import rigidity
from kerfolio.shop.span_place import SpanPlace, load_kg, span_place

SPAN_CAUTIONS = (
    "An estimate from stated values, no rating: try it with care before you trust it, and do not "
    "climb on what was not made for it.",
    "Joints, fixings and what they are fixed to are not reckoned; they may give way long before. "
    "Knots, moisture and rough use change the figures too.",
    "Local codes and licensed practice come first.",
)
RACKING = (
    "What carries well downwards may still lean over sideways: a frame of two sides and a shelf "
    "needs a back, a rail deep enough or a brace that keeps its corners square."
)
"""What a downward load says nothing about; words to stand beside every span."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sag:
    """One way the ends and the joint may behave: ``ends`` ``free``, ``clamped`` or ``one``.

    ``joined`` is ``loose`` or ``glued`` where a part stands under it, else empty. Sag in mm on the
    first day, and after years (None where no creep is known). ``stress`` N/mm2 in the member that
    comes nearest to its ``strength`` (None where none is known).
    """

    ends: str
    joined: str
    first_day: float
    long_term: float | None
    stress: float
    strength: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SagResult:
    """A span that bends. ``length`` mm, loads kg, ``limit`` mm (``limit_words`` as stated).

    ``sags`` hold every bound: the first is the one that counts (free ends, joined as stated), the
    others tell how much better it may be. ``load_for_limit`` is what sags to the limit,
    ``load_for_strength`` what bends to the strength over the safety factor.
    """

    name: str
    carrier: str
    kind: str
    length: float
    load: float
    own_weight: float
    sags: tuple[Sag, ...]
    limit: float
    limit_words: str
    safety: float
    lasting: bool
    load_for_limit: float
    load_for_strength: float | None
    assumptions: tuple[Assumption, ...]

    @property
    def greatest_load(self) -> float:
        """The lesser of the two loads, kg: an estimate, never a rating."""
        strong = self.load_for_strength
        return self.load_for_limit if strong is None else min(self.load_for_limit, strong)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unreckoned:
    """A span without figures, and why, in words."""

    name: str
    carrier: str
    why: str


SpanResult = SagResult | LegResult | Unreckoned


def span_results(settled: SettledPlan) -> tuple[SpanResult, ...]:
    """Return a result for every span of the plan that is stated soundly, in its order."""
    return tuple(each for each in _every(settled) if not isinstance(each, Finding))


def span_findings(settled: SettledPlan) -> Iterator[Finding]:
    """Look for spans stated wrongly, without figures, or with more load than they bear."""
    for span, result in zip(settled.plan.spans, _every(settled), strict=True):
        if isinstance(result, Finding):
            if result.rule != FOLLOWS:
                yield result
        elif isinstance(result, Unreckoned):
            advice = "State `stiffness-along` and `strength-along` in your `stock/`."
            message, name = f"`{span.name}`: {result.why}", span.name
            yield note("span-unreckoned", message, span.place, advice, subject=name)
        elif result.load > result.greatest_load * (1 + 1e-9):
            loads = mass("greatest-load", result.greatest_load), mass("load", result.load)
            words = said("`{}` is reckoned for {}, not {}", span.name, *loads)
            advice = "Shorten it, make it thicker, put a rail under it, or state less."
            yield warning("span-overloaded", words, span.place, advice, subject=span.name)


@lru_cache(maxsize=8)
def _every(settled: SettledPlan) -> tuple[SpanResult | Finding, ...]:
    """Return what comes of each span; kept, since several rules and the edition ask for it."""
    return tuple(_tried(span, settled) for span in settled.plan.spans)


def _tried(span: Span, settled: SettledPlan) -> SpanResult | Finding:
    try:
        place = span_place(span, settled)
        if place is None:
            carrier = (span.part or span.board or span).name
            return Unreckoned(name=span.name, carrier=carrier, why="no stiffness of it is known")
        return leg_result(span, place) if span.kind == "leg" else _sag_result(span, place)
    except SettlingError as trouble:
        return trouble.about(span.name)


def _sag_result(span: Span, place: SpanPlace) -> SagResult:
    load, length = load_kg(span, place.length), place.length
    own = math.fsum(each.mean_mass for each in place.members) * length
    sags = tuple(_bounds(span, place, load, own))
    unit = next(_bounds(span, place, 1.0, 0.0))
    rest = next(_bounds(span, place, 0.0, own))
    limit, words = place.limit
    return SagResult(
        name=span.name,
        carrier=place.carrier,
        kind=span.kind,
        length=length,
        load=load,
        own_weight=own,
        sags=sags,
        limit=limit,
        limit_words=words,
        safety=span.safety,
        lasting=span.lasting,
        load_for_limit=max(0.0, (limit - _final(rest)) / _final(unit)),
        load_for_strength=_load_for_strength(unit, rest, span.safety),
        assumptions=_assumptions(span, place, own),
    )


def _final(found: Sag) -> float:
    return found.first_day if found.long_term is None else found.long_term


def _load_for_strength(unit: Sag, rest: Sag, safety: float) -> float | None:
    if unit.strength is None:
        return None
    return max(0.0, (unit.strength / safety - rest.stress) / unit.stress)


def _bounds(span: Span, place: SpanPlace, load: float, own: float) -> Iterator[Sag]:
    """Yield every bound, the one that counts first: free ends, joined as stated."""
    ends: tuple[str, ...] = ("one",) if span.kind == "overhang" else ("free", "clamped")
    joined: tuple[str, ...] = ("",)
    if span.web is not None:
        joined = ("loose", "glued") if span.web.joined == "loose" else ("glued", "loose")
    for join in joined:
        for end in ends:
            yield _bound(span, place, join, end, load, own)


def _bound(span: Span, place: SpanPlace, join: str, ends: str, load: float, own: float) -> Sag:
    laid, lies = loading(span.load.where, ends), loading("even", ends)
    rigid = rigidity(span, place, join)
    by_load = sag(laid, load * G, place.length, rigid.bending, rigid.shear)
    by_own = sag(lies, own * G, place.length, rigid.bending, rigid.shear)
    moment = (laid.moment * load + lies.moment * own) * G * place.length
    stress, strength = rigid.worst(moment)
    creeps = [each.fibre.creep for each in place.members]
    later = None
    if all(each is not None for each in creeps):
        creep = max(each or 0.0 for each in creeps)
        later = long_term(by_own, creep) + (long_term(by_load, creep) if span.lasting else by_load)
    return Sag(
        ends=ends,
        joined=join,
        first_day=by_load + by_own,
        long_term=later,
        stress=stress,
        strength=strength,
    )


_HANDBOOK = "Wood Handbook FPL-GTR-190, equation 9-2 and Table 9-1"


def _assumptions(span: Span, place: SpanPlace, own: float) -> tuple[Assumption, ...]:
    """Return all that the figures of a bending span rest on."""
    stated = "stated in the plan"
    facts = [
        ("Sag", "bending and shear; ends free to turn, and clamped as the other bound", _HANDBOOK),
        (
            "Section",
            "the part as cut, openings and recesses taken off, averaged by how much each place "
            "bends; the greatest stress where it is narrowest",
            "unit-load method, statics",
        ),
        ("Own weight", f"{figure(own, 2)} kg between the supports, lasting", "computed"),
        ("Lasting load", "yes" if span.lasting else "no", stated),
        ("Growth with time", "first day x (1 + kdef)", "EN 1995-1-1, 2.2.3"),
        ("Limit", place.limit[1], f"{stated}, else span/300; none for furniture is agreed on"),
        (
            "Safety factor",
            f"{figure(span.safety)} on the strength",
            f"{stated}, else 3; {COMMON_PRACTICE}",
        ),
        ("Strength", "of a short test; the safety factor covers lasting load", COMMON_PRACTICE),
    ]
    if span.kind == "overhang":
        facts[0] = ("Sag", "bending and shear; clamped at its first support", _HANDBOOK)
    if any(each.fibre.creep is None for each in place.members):
        facts.append(("Creep", "not known: the first day's sag is held against the limit", "-"))
    if any(each.fibre.strength is None for each in place.members):
        facts.append(("Strength", "not known: only the sag limits the load", "-"))
    if span.web is not None:
        facts.append(("Parts under it", _JOINED[span.web.joined], "statics of built-up sections"))
    materials = dict.fromkeys(fact for member in place.members for fact in member.fibre.assumptions)
    return (*materials, *(Assumption(label=a, value=b, source=c) for a, b, c in facts))


_JOINED = {
    "loose": "each bends by itself, the panel only lies on them; glued is the other bound",
    "glued": "glued along their whole length they bend as one, the glue line itself not reckoned; "
    "loose is the other bound",
}
