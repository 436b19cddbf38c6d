"""What the plan's spans carry: sag and stress of shelves, rails and overhangs, or a leg's limits.

Everything here is an estimate from stated values and never a rating.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from kerfolio.basis.finding import Finding, note, warning
from kerfolio.basis.measures import mass, number, own_mass
from kerfolio.basis.said import Text, phrase, said
from kerfolio.model.span import Span, SpanLoad
from kerfolio.settling.scope import FOLLOWS, SettlingError
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.assumption import Assumption, named_fact
from kerfolio.shop.beam import G, loading, long_term, sag
from kerfolio.shop.leg import LegResult, leg_result
from kerfolio.shop.lifting import Lifting, lifting_of
from kerfolio.shop.rigidity import Rigidity, Weak, rigidity
from kerfolio.shop.span_place import SpanPlace, load_kg, span_place
from kerfolio.shop.tab import TabResult, tab_results

SPAN_CAUTIONS = ("spans-estimate", "spans-not-reckoned", "spans-codes-first")
RACKING = "spans-racking"
"""What a downward load says nothing about; messages to stand beside every span."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sag:
    """One way the ends and the joints may behave: ``ends`` ``free``, ``clamped`` or ``one``.

    ``joined`` is ``loose`` or ``glued`` where all parts under it are, ``stated`` where they are
    joined as the plan states, one so and one so; empty where there are none. Sag in mm on the
    first day, and after years (None where no creep is known). ``stress`` N/mm2 where it comes
    nearest to its ``strength`` (None where none is known): in ``member``, at the share ``at`` of
    the length.
    """

    ends: str
    joined: str
    first_day: float
    long_term: float | None
    stress: float
    strength: float | None
    member: str
    at: float

    @property
    def final(self) -> float:
        """The sag held against the limit, mm: that after years, where it is known."""
        return self.first_day if self.long_term is None else self.long_term


@dataclass(frozen=True, slots=True, kw_only=True)
class SagResult:
    """A span that bends. ``length`` mm, loads kg, ``limit`` mm (``limit_words`` as stated).

    ``sags`` hold every bound: the first is the one that counts (free ends, joined as stated), the
    others tell how much better it may be. ``rest`` is that one under its own weight alone.
    ``load_for_limit`` is what sags to the limit, ``load_for_strength`` what bends to the strength
    over the safety factor, at ``weakest``. ``tabs`` are those that hold its ends, ``lifting`` is
    what lifts it where it only lies there. ``load_lies`` is where: ``even``, ``middle``, ``end``.
    """

    name: str
    carrier: str
    kind: str
    length: float
    load: float
    load_lies: str
    own_weight: float
    sags: tuple[Sag, ...]
    rest: Sag
    limit: float
    limit_words: str
    safety: float
    lasting: bool
    load_for_limit: float
    load_for_strength: float | None
    weakest: Weak
    tabs: tuple[TabResult, ...]
    lifting: Lifting | None
    assumptions: tuple[Assumption, ...]

    @property
    def greatest_load(self) -> float:
        """The least of all loads known, kg: an estimate, never a rating."""
        lifting = self.load_lifting if self.kind == "overhang" else None
        return self.load_borne if lifting is None else min(self.load_borne, lifting)

    @property
    def load_borne(self) -> float:
        """The least of the loads for its sag, its strength and its tabs, kg."""
        held = [load for each in self.tabs for load in (each.load_shear, each.load_bearing)]
        found = (self.load_for_limit, self.load_for_strength, *held)
        return min(each for each in found if each is not None)

    @property
    def load_lifting(self) -> float | None:
        """The load on its overhang that lifts the far end, kg; None where it is held down.

        Of an overhang where its load is stated to lie; of all else at its very end.
        """
        if self.lifting is None:
            return None
        even = self.kind == "overhang" and self.load_lies == "even"
        return self.lifting.load_even if even else self.lifting.load_end

    @property
    def lifts(self) -> bool:
        """Whether the load that is asked would lift the far end."""
        asked = self.lifting is not None and self.lifting.asked
        return asked and self.load > (self.load_lifting or 0.0) * (1 + 1e-9)

    @property
    def share_that_suits(self) -> int:
        """The greatest N for which a limit of ``span/N`` holds under the load that is asked."""
        return math.floor(self.length / self.sags[0].final)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unreckoned:
    """A span without figures, and why, in words."""

    name: str
    carrier: str
    why: Text


SpanResult = SagResult | LegResult | Unreckoned


def span_title(name: str) -> str:
    """Return what a span is called as a head."""
    return name.replace("-", " ").capitalize()


def span_results(settled: SettledPlan) -> tuple[SpanResult, ...]:
    """Return a result for every span of the plan that is stated soundly, in its order."""
    return tuple(each for each in _each(settled) if not isinstance(each, Finding))


def span_findings(settled: SettledPlan) -> Iterator[Finding]:
    """Look for spans stated wrongly, without figures, or with more load than they bear."""
    for span, result in zip(settled.plan.spans, _each(settled), strict=True):
        if isinstance(result, Finding):
            if result.rule != FOLLOWS:
                yield result
        elif isinstance(result, Unreckoned):
            advice = "State `stiffness-along` and `strength-along` in your `stock/`."
            message, name = f"`{span.name}`: " + said("{}", result.why), span.name
            yield note("span-unreckoned", message, span.place, advice, subject=name)
        else:
            laid = span.part is not None and settled.plan.laid(span.part.name) is not None
            yield from _too_much(span, result, laid=laid)


def _too_much(span: Span, result: SagResult | LegResult, *, laid: bool) -> Iterator[Finding]:
    """Yield what is to be said of a span that is asked for more than it is reckoned for."""
    if isinstance(result, SagResult) and result.lifts:
        yield _lifts(span, result, laid=laid)
    if overloaded(result):
        bears = result.load_borne if isinstance(result, SagResult) else result.greatest_load
        loads = mass("greatest-load", bears), mass("load", result.load)
        words = phrase("minded-overloaded", span=span.name, bears=loads[0], asked=loads[1])
        advice = _advice(result)
        yield warning("span-overloaded", words, span.place, advice, subject=span.name)


def overloaded(result: SagResult | LegResult) -> bool:
    """Tell whether a span is asked to carry more than it bears; what lifts it is told apart."""
    bears = result.load_borne if isinstance(result, SagResult) else result.greatest_load
    return result.load > bears * (1 + 1e-9)


def _lifts(span: Span, result: SagResult, *, laid: bool) -> Finding:
    assert result.load_lifting is not None, "asked for by the caller"
    spread = result.kind == "overhang" and result.load_lies == "even"
    loads = mass("lifting-load", result.load_lifting), mass("load", result.load)
    kind = "minded-lifts-spread" if spread else "minded-lifts"
    words = phrase(kind, span=span.name, lifts=loads[0], asked=loads[1])
    held = "`held: clamped` under `lies-on`" if laid else "`held: fixed`"
    advice = f"Hold its far end down and write {held}, or let it reach out less."
    return warning("span-lifts", words, span.place, advice, subject=span.name)


def _advice(result: SagResult | LegResult) -> str:
    """Return what to do, by what gives way first."""
    usual = "Shorten it, make it thicker, put a rail under it, or state less."
    if isinstance(result, LegResult):
        return usual
    if result.load_for_limit == 0:
        suits = result.share_that_suits
        return f"Its own weight alone sags beyond the limit; `limit: span/{suits}` would suit."
    weak = weak_tabs(result)
    if weak is not None:
        return f"The tabs of `{weak.member}` give way first: make them wider, or put more of them."
    return usual


def weak_tabs(result: SagResult) -> TabResult | None:
    """Return the tabs that give way before all else; None where something else does."""
    least = result.load_borne
    for each in result.tabs:
        if least in (each.load_shear, each.load_bearing) and least < result.load_for_limit:
            return each
    return None


def sat_on(settled: SettledPlan, part: str, kg: float) -> SagResult | None:
    """Return what a part does with somebody in its middle, by the first span stated of it.

    None where no span of it is stated that lies on two supports, or none can be reckoned.
    """
    for span in settled.plan.spans:
        if span.part is not None and span.part.name == part and span.kind == "shelf":
            load = SpanLoad(kg=kg, where="middle")
            found = _tried(replace(span, load=load, lasting=False, held="fixed"), settled)
            if isinstance(found, SagResult):
                return found
    return None


def _each(settled: SettledPlan) -> tuple[SpanResult | Finding, ...]:
    """Return what comes of each span; a plan without any is not looked at."""
    return _every(settled) if settled.plan.spans else ()


@lru_cache(maxsize=64)  # the edition asks when all plans have been proved
def _every(settled: SettledPlan) -> tuple[SpanResult | Finding, ...]:
    """Return what comes of each span; kept, since several rules and the edition ask for it."""
    return tuple(_tried(span, settled) for span in settled.plan.spans)


def _tried(span: Span, settled: SettledPlan) -> SpanResult | Finding:
    try:
        place = span_place(span, settled)
        if place is None:
            carrier = (span.part or span.board or span).name
            return Unreckoned(name=span.name, carrier=carrier, why=phrase("spans-no-stiffness"))
        return leg_result(span, place) if span.kind == "leg" else _sag_result(span, place, settled)
    except SettlingError as trouble:
        return trouble.about(span.name)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Beam:
    """A span that bends: ``ways`` are its rigidities by how its parts are joined, as stated first.

    ``own`` is what it weighs, kg.
    """

    span: Span
    place: SpanPlace
    ways: tuple[tuple[str, Rigidity], ...]
    own: float

    @property
    def hangs_out(self) -> bool:
        """Whether it has one end alone."""
        return self.span.kind == "overhang"


def _beam(span: Span, place: SpanPlace) -> _Beam:
    stated, hangs_out = place.glued, span.kind == "overhang"
    joined = {_joined(stated): stated}
    for each in ("loose", "glued") if stated else ():
        joined.setdefault(each, (each == "glued",) * len(stated))
    return _Beam(
        span=span,
        place=place,
        ways=tuple(
            (name, rigidity(place, span.load.where, glued, hangs_out=hangs_out))
            for name, glued in joined.items()
        ),
        own=math.fsum(each.mean_mass for each in place.members) * place.length,
    )


def _sag_result(span: Span, place: SpanPlace, settled: SettledPlan) -> SagResult:
    beam, load, length = _beam(span, place), load_kg(span, place.length), place.length
    sags = tuple(_bounds(beam, load, beam.own))
    unit = next(_bounds(beam, 1.0, 0.0))
    rest = next(_bounds(beam, 0.0, beam.own))
    limit, words = place.limit
    strong, weakest = _strong(beam)
    return SagResult(
        lifting=lifting_of(span, settled, place),
        name=span.name,
        carrier=place.carrier,
        kind=span.kind,
        length=length,
        load=load,
        load_lies=span.load.where,
        own_weight=beam.own,
        sags=sags,
        rest=rest,
        limit=limit,
        limit_words=words,
        safety=span.safety,
        lasting=span.lasting,
        load_for_limit=max(0.0, (limit - rest.final) / unit.final),
        load_for_strength=strong,
        weakest=weakest,
        tabs=() if beam.hangs_out else tuple(tab_results(place, beam.own, span.safety)),
        assumptions=_assumptions(span, place, beam.own),
    )


def _strong(beam: _Beam) -> tuple[float | None, Weak]:
    """Return the load that bends to the strength over the factor, and where it does."""
    ends, length = "one" if beam.hangs_out else "free", beam.place.length
    (_, rigid), *_ = beam.ways
    unit = rigid.moments(loading(beam.span.load.where, ends), G * length)
    rest = rigid.moments(loading("even", ends), beam.own * G * length)
    strong = rigid.load_for_strength(unit, rest, beam.span.safety)
    load = 1.0 if strong is None else strong
    return strong, rigid.worst([a * load + b for a, b in zip(unit, rest, strict=True)])


def _bounds(beam: _Beam, load: float, own: float) -> Iterator[Sag]:
    """Yield every bound, the one that counts first: free ends, joined as stated."""
    ends: tuple[str, ...] = ("one",) if beam.hangs_out else ("free", "clamped")
    for joined, rigid in beam.ways:
        for end in ends:
            yield _bound(beam, (joined, rigid), end, load, own)


def _joined(glued: tuple[bool, ...]) -> str:
    """Return how all parts under a span are joined, in a word."""
    if not glued:
        return ""
    return "stated" if len(set(glued)) > 1 else "glued" if glued[0] else "loose"


def _bound(beam: _Beam, way: tuple[str, Rigidity], ends: str, load: float, own: float) -> Sag:
    span, place = beam.span, beam.place
    laid, lies = loading(span.load.where, ends), loading("even", ends)
    joined, rigid = way
    by_load = sag(laid, load * G, place.length, rigid.bending, rigid.shear)
    by_own = sag(lies, own * G, place.length, rigid.bending, rigid.shear)
    bent = rigid.moments(laid, load * G * place.length)
    weak = rigid.worst(
        [a + b for a, b in zip(bent, rigid.moments(lies, own * G * place.length), strict=True)]
    )
    creeps = [each.fibre.creep for each in place.members]
    later = None
    if all(each is not None for each in creeps):
        creep = max(each or 0.0 for each in creeps)
        later = long_term(by_own, creep) + (long_term(by_load, creep) if span.lasting else by_load)
    return Sag(
        ends=ends,
        joined=joined,
        first_day=by_load + by_own,
        long_term=later,
        stress=weak.stress,
        strength=weak.strength,
        member=weak.member,
        at=weak.at,
    )


_HANDBOOK = "Wood Handbook FPL-GTR-190, equation 9-2 and Table 9-1"


def _assumptions(span: Span, place: SpanPlace, own: float) -> tuple[Assumption, ...]:
    """Return all that the figures of a bending span rest on."""
    sag = "sag-overhang" if span.kind == "overhang" else "sag-free"
    facts: list[tuple[str, Text, Text]] = [
        ("sag", phrase(f"grounds-{sag}"), _HANDBOOK),
        ("section", phrase("grounds-section-cut"), phrase("grounds-unit-load")),
        (
            "own-weight",
            phrase("grounds-own-weight-lasting", mass=own_mass(own)),
            phrase("grounds-computed"),
        ),
        ("lasting", phrase(f"grounds-{'yes' if span.lasting else 'no'}"), _STATED),
        ("growth", phrase("grounds-growth-is"), "EN 1995-1-1, 2.2.3"),
        ("limit", place.limit[1], phrase("grounds-limit-source")),
        (
            "safety",
            phrase("grounds-safety-strength", factor=number("safety", span.safety)),
            _SAFETY,
        ),
    ]
    if any(each.fibre.creep is None for each in place.members):
        facts.append(("no-creep", phrase("grounds-no-creep-told"), "-"))
    if any(each.fibre.strength is None for each in place.members):
        facts.append(("strength", phrase("grounds-no-strength"), "-"))
    if any(any(each.tabs) for each in place.members):
        facts.append(("tabs", phrase("grounds-tabs-told"), phrase("grounds-rectangle")))
    under = (
        Assumption(
            label=phrase("grounds-under", part=each.part.name),
            value=phrase(f"grounds-joined-{each.joined}"),
            source=phrase("grounds-built-up"),
        )
        for each in span.under
    )
    materials = dict.fromkeys(fact for member in place.members for fact in member.fibre.assumptions)
    return (*materials, *map(named_fact, facts), *under)


_STATED = phrase("grounds-stated")
_SAFETY = phrase("grounds-safety-source")
